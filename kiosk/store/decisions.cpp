// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/store/decisions.h"

#include <tuple>

namespace floorwheel::store {
namespace {

using training::Change;
using training::Mass;
using training::Override;

Change change_from(const std::string& id) {
  for (const Change c : {Change::up, Change::down, Change::first})
    if (id_of(c) == id) return c;
  return Change::same;
}

}  // namespace

void add_decision(Database& db, const Override& o, std::int64_t seq) {
  std::optional<int> low;
  std::optional<int> top;
  if (o.reps) std::tie(low, top) = std::pair(o.reps->front(), o.reps->back());
  db.statement(
        "INSERT INTO load_decision(seq, member, exercise, civil_ms, local_day, decided_by, load_g, reps_low,"
        " reps_top, sets, suggested_g, suggested_change) VALUES(?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
      .bind(seq, o.member, o.exercise, o.instant_us.value_or(0) / 1000, text_of(o.day), o.decided_by,
            o.load.whole_grams(), low, top, o.sets, o.suggested.whole_grams(), id_of(o.suggested_change))
      .run();
}

std::vector<Override> decisions_of_member(Database& db, const std::string& member) {
  Statement s = db.statement(
      "SELECT exercise, local_day, decided_by, load_g, reps_low, reps_top, sets, suggested_g,"
      " suggested_change, civil_ms FROM load_decision WHERE member = ? ORDER BY seq");
  s.bind(member);
  std::vector<Override> out;
  while (s.step()) {
    Override o;
    o.member = member;
    o.exercise = s.text(0);
    o.day = training::day_from(s.text(1)).value_or(training::Day{});
    o.decided_by = s.text(2);
    o.load = Mass::grams(s.integer(3));
    if (!s.is_null(4)) o.reps = {static_cast<int>(s.integer(4)), static_cast<int>(s.integer(5))};
    if (!s.is_null(6)) o.sets = static_cast<int>(s.integer(6));
    o.suggested = Mass::grams(s.integer(7));
    o.suggested_change = change_from(s.text(8));
    o.instant_us = s.integer(9) * 1000;
    out.push_back(std::move(o));
  }
  return out;
}

}  // namespace floorwheel::store
