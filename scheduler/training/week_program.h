// SPDX-License-Identifier: GPL-3.0-or-later
// The whole-number program of one goal of a week, the goals before it held at their values.
#pragma once

#include "scheduler/training/week_floor.h"
#include "scheduler/training/week_whole_program.h"

namespace floorwheel::training {

struct WeekProgram {
  WholeProgram program;
  std::vector<std::vector<int>> column;  // of each type of each class
  int step = 1;                          // the goal's value is a multiple of it
};

/// `held`: the values of the goals before `goal`. Without a goal: any plan, cost 0.
WeekProgram program_of(const WeekFloor&, int goal, const WeekValues& held);
inline constexpr int no_goal = -1;

}  // namespace floorwheel::training
