// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/store/training_sets.h"

#include <map>

namespace floorwheel::store {
namespace {

using training::SetRecord;

constexpr std::string_view columns =
    "SELECT id, corrects, member, exercise, local_day, civil_ms, done, load_hg, reps, rir FROM set_record ";

/// A row as kept, before corrections.
struct Kept {
  SetRecord set;
  bool done = false;
};

SetRecord set_in(const Statement& s) {
  SetRecord r;
  r.member = s.text(2);
  r.exercise = s.text(3);
  r.day = training::day_from(s.text(4)).value_or(training::Day{});
  r.instant_us = s.integer(5) * 1000;
  r.load = training::Mass::grams(100 * s.integer(7));
  r.reps = static_cast<int>(s.integer(8));
  if (!s.is_null(9)) r.rir = static_cast<int>(s.integer(9));
  return r;
}

/// Rows in the order they were kept, so that a correction comes after what it corrects.
std::vector<SetRecord> sets_from(Statement s) {
  std::vector<Kept> kept;
  std::map<Uuid, std::size_t> place;
  while (s.step()) {
    Kept row{set_in(s), s.integer(6) != 0};
    const auto earlier = s.is_null(1) ? place.end() : place.find(s.uuid(1));
    if (earlier == place.end()) {
      place.emplace(s.uuid(0), kept.size());
      kept.push_back(std::move(row));
      continue;
    }
    const std::size_t at = earlier->second;
    row.set.day = kept[at].set.day;
    row.set.instant_us = kept[at].set.instant_us;
    kept[at] = std::move(row);
    place.emplace(s.uuid(0), at);  // a correction may be corrected
  }
  std::vector<SetRecord> sets;
  for (Kept& k : kept)
    if (k.done && k.set.reps > 0) sets.push_back(std::move(k.set));
  return sets;
}

}  // namespace

std::vector<SetRecord> sets_of_member(Database& db, const std::string& member, std::int64_t from_ms) {
  Statement s =
      db.statement(std::string(columns) + "WHERE member = ? AND civil_ms >= ? ORDER BY civil_ms, seq");
  s.bind(member, from_ms);
  return sets_from(std::move(s));
}

std::vector<SetRecord> sets_of_week(Database& db, const std::string& iso_week) {
  // A correction kept in a later week belongs to the week of what it corrects.
  Statement s =
      db.statement(std::string(columns) +
                   "WHERE iso_week = ?1 OR corrects IN (SELECT id FROM set_record WHERE iso_week = ?1)"
                   " ORDER BY civil_ms, seq");
  s.bind(iso_week);
  std::vector<SetRecord> sets = sets_from(std::move(s));
  std::erase_if(sets, [&](const SetRecord& r) { return text_of(training::iso_week_of(r.day)) != iso_week; });
  return sets;
}

std::vector<std::string> members_since(Database& db, const std::string& day) {
  Statement s = db.statement(
      "SELECT DISTINCT i.member FROM check_in i JOIN seat s ON s.class = i.class AND s.member = i.member"
      " WHERE i.local_day >= ? AND NOT s.guest ORDER BY i.member");
  s.bind(day);
  std::vector<std::string> members;
  while (s.step()) members.push_back(s.text(0));
  return members;
}

std::optional<training::Day> day_of_check_in(Database& db, const Uuid& class_id, const std::string& member) {
  Statement s = db.statement("SELECT local_day FROM check_in WHERE class = ? AND member = ?");
  s.bind(class_id, member);
  if (!s.step()) return std::nullopt;
  return training::day_from(s.text(0));
}

}  // namespace floorwheel::store
