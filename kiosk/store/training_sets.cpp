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

/// Rows in the order they were kept, so that a correction comes after what it corrects. A correction of what
/// is not among them is left out with it.
std::vector<SetRecord> sets_from(Statement s) {
  std::vector<Kept> kept;
  std::map<Uuid, std::size_t> place;
  while (s.step()) {
    Kept row{set_in(s), s.integer(6) != 0};
    if (s.is_null(1)) {
      place.emplace(s.uuid(0), kept.size());
      kept.push_back(std::move(row));
      continue;
    }
    const auto earlier = place.find(s.uuid(1));
    if (earlier == place.end()) continue;
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

/// A day before the week's Monday in UTC: no local time is further from it.
std::int64_t well_before(training::IsoWeek week) {
  return (std::int64_t{training::monday_of(week).number} - 1) * 86'400'000;
}

}  // namespace

std::vector<SetRecord> sets_of_member(Database& db, const std::string& member, std::int64_t from_ms) {
  Statement s = db.statement(std::string(columns) + "WHERE member = ? AND civil_ms >= ? ORDER BY seq");
  s.bind(member, from_ms);
  return sets_from(std::move(s));
}

std::vector<SetRecord> sets_of_week(Database& db, training::IsoWeek week, const std::string& member) {
  if (!member.empty()) {
    std::vector<SetRecord> sets = sets_of_member(db, member, well_before(week));
    std::erase_if(sets, [&](const SetRecord& r) { return training::iso_week_of(r.day) != week; });
    return sets;
  }
  // A correction belongs to the week of what it corrects, whenever it was kept.
  std::string sql =
      "WITH RECURSIVE part(id) AS (SELECT id FROM set_record WHERE iso_week = ? AND corrects IS NULL"
      " UNION ALL SELECT r.id FROM part JOIN set_record r ON r.corrects = part.id) ";
  sql.append(columns).append("WHERE id IN part ORDER BY seq");
  Statement s = db.statement(sql);
  s.bind(text_of(week));
  return sets_from(std::move(s));
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
