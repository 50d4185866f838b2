// SPDX-License-Identifier: GPL-3.0-or-later
// A whole-number program: minimise cost · x, where each row is a sum of columns; every column and every row
// lies between two whole bounds.
#pragma once

#include <limits>
#include <utility>
#include <vector>

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

}  // namespace floorwheel::training
