// SPDX-License-Identifier: GPL-3.0-or-later
// Branch and bound for one goal (Land and Doig 1960): a node is bounded by the program without whole numbers,
// split at a sum that has to be whole and is not, and a node whose exercises are all decided is counted
// exactly, its rings included. So the answer is exact when no node is left open.
#pragma once

#include "scheduler/training/week_best.h"
#include "scheduler/training/week_program.h"

namespace floorwheel::training {

struct BranchAnswer {
  std::int64_t bound = 0;  // of the goal, over plans whose earlier goals are as held
  bool proven = false;     // the best plan has the bound; without a goal: there is a plan or there is none
  std::int64_t work = 0;   // table entries recomputed
};

/// The best plan is bettered in passing. Ends early if it becomes better in a goal before `goal`.
BranchAnswer branch(WeekBest&, int goal, std::int64_t work_most);

}  // namespace floorwheel::training
