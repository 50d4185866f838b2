// SPDX-License-Identifier: GPL-3.0-or-later
// Members who are alike in window, list and history, as one kind with a number: what the flow of visits
// starts from. Members of a team are kinds of their own, since rule 5 binds them one by one.
#pragma once

#include <vector>

#include "scheduler/rotation/problem.h"

namespace floorwheel {

struct VisitKind {
  std::vector<int> room;  // [station] visits that each can still make
  std::vector<int> members;
  int begin = 0;  // slots left to each: begin..last
  int last = -1;
  int beyond = 0;  // of each: missed beyond the window's own, if nothing more is worked
  int least = 0;   // and if all is worked that the window lets
  [[nodiscard]] std::int64_t count() const { return static_cast<std::int64_t>(members.size()); }
  [[nodiscard]] int supply() const { return beyond - least; }
};

std::vector<VisitKind> visit_kinds(const Problem&);

/// Visits that all members are still to make.
std::int64_t visits_to_come(const Problem&);

/// How many visits the members of a team can make at s together, by rule 5, where its places are fewer than
/// they; -1: no fewer than they like. `room`: [place in the team] what each could do alone.
std::int64_t team_room(const Problem&, const std::vector<int>& team, int s, const std::vector<int>& room);

}  // namespace floorwheel
