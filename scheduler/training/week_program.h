// SPDX-License-Identifier: GPL-3.0-or-later
// A whole-number program: minimise cost · x, where each row is a sum of columns; every column and every row
// lies between two whole bounds. And the program of one goal of a week, those before it held at their values.
#pragma once

#include <array>
#include <cstdint>
#include <limits>
#include <utility>
#include <vector>

#include "scheduler/training/week_floor.h"

namespace floorwheel::training {

struct WholeProgram {
  struct Row {
    std::vector<std::pair<int, int>> terms;  // column, factor
  };
  int columns = 0;
  std::vector<int> cost;  // by column
  std::vector<Row> rows;
  // By variable: the columns, then the rows.
  std::vector<int> low, high;
  /// 0: may be broken; else whole in every solution, and the search splits lower ranks first.
  std::vector<int> rank;

  /// Columns are all added before the first row.
  int add_column(int low, int high, int cost, int rank);
  /// Bounds are drawn in to what the columns allow.
  void add_row(std::vector<std::pair<int, int>> terms, int low, int high, int rank);
  void remove_row(std::size_t index);
};

/// Above any row; rows are drawn in to what the columns allow.
inline constexpr int most_of_any_row = std::numeric_limits<int>::max();

struct WeekProgram {
  WholeProgram program;
  std::vector<std::vector<int>> column;  // of each type of each class
  int step = 1;                          // the goal's value is a multiple of it
};

/// `held`: the values of the goals before `goal`. Without a goal: any plan, cost 0.
WeekProgram program_of(const WeekFloor&, int goal, const WeekValues& held);
inline constexpr int no_goal = -1;

}  // namespace floorwheel::training
