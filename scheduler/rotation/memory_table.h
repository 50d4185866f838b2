// SPDX-License-Identifier: GPL-3.0-or-later
// The cheapest row of one member alone for lists too long for RowTable, with a memory that forgets: at each
// station only some of those visited before are remembered, and a row may come back to one that was not
// remembered since (ng-routes; Baldacci, Mingozzi and Roberti 2011). More rows than there are: never dearer.
// With all remembered the rows are true ones. Whole numbers, as in row_prices.h; slots count from 0.
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/rotation/row_prices.h"

namespace floorwheel {

class MemoryTable {
 public:
  static constexpr int list_most = 64;
  static constexpr int memory_most = 16;

  /// remembered[i]: places in the list, ascending, without i, that are remembered at i.
  MemoryTable(const RowCosts&, std::vector<std::vector<int>> remembered);
  std::int32_t least(const Grid<std::int32_t>& price);
  [[nodiscard]] std::int32_t least() const { return least_; }
  /// A row of that cost, which may come back to stations.
  [[nodiscard]] std::vector<int> row() const;
  [[nodiscard]] std::int32_t cost(const std::vector<int>& row) const { return row_cost(c_, *price_, row); }
  /// True rows only; false also where the search for them takes too long.
  bool near(std::int32_t more, std::size_t most, std::vector<std::vector<int>>& rows) const;

  /// What one least() takes, in nanoseconds or so.
  [[nodiscard]] static std::int64_t entries(const RowCosts&, const std::vector<std::vector<int>>& remembered);

  /// Numbers of 32 bits that a table holds.
  [[nodiscard]] static std::int64_t cells(const RowCosts&, const std::vector<std::vector<int>>& remembered);

 private:
  using Code = std::uint32_t;  // the remembered that were visited, by bit as in remembered_[i]
  struct Search;

  [[nodiscard]] std::size_t cell(int visits, int rests, int last) const {
    return (ix(rests) * ix(c_.visits + 1) + ix(visits)) * states_ + begin_[ix(last)];
  }
  [[nodiscard]] Code codes(int i) const { return Code{1} << remembered_[ix(i)].size(); }
  [[nodiscard]] Code then(int i, Code code, int j) const;
  void spread(int visits, int rests);
  bool back(Search&, int visits, int rests, int last, std::int32_t so_far) const;

  const RowCosts c_;
  const int n_;
  const std::vector<std::vector<int>> remembered_;
  Grid<int> bit_;                   // (i, j) j's bit in a code of i, -1: not remembered
  std::vector<std::size_t> begin_;  // [i] of i's codes among the states
  std::size_t states_ = 0;
  std::vector<Code> then_;  // [i][j][half][part of i's code]: that of j after i
  const Grid<std::int32_t>* price_ = nullptr;
  std::vector<std::int32_t> worked_;  // [rests][visits][state]
  std::vector<std::int32_t> rested_;  // the same, not worked in the last slot
  std::int32_t least_ = forbidden;
  int end_rests_ = 0, end_last_ = 0;
  Code end_code_ = 0;
};

}  // namespace floorwheel
