// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/week_whole_program.h"

#include <algorithm>

namespace floorwheel::training {

int WholeProgram::add_column(int least, int most, int price, int split_rank) {
  low.push_back(least);
  high.push_back(most);
  cost.push_back(price);
  rank.push_back(split_rank);
  return columns++;
}

void WholeProgram::add_row(std::vector<std::pair<int, int>> terms, int least, int most, int split_rank) {
  int reach_low = 0, reach_high = 0;
  for (const auto& [column, factor] : terms) {
    const auto c = static_cast<std::size_t>(column);
    reach_low += factor > 0 ? factor * low[c] : factor * high[c];
    reach_high += factor > 0 ? factor * high[c] : factor * low[c];
  }
  rows.push_back({std::move(terms)});
  low.push_back(std::max(least, reach_low));
  high.push_back(std::min(most, reach_high));
  rank.push_back(split_rank);
}

void WholeProgram::remove_row(std::size_t index) {
  const auto at = static_cast<std::ptrdiff_t>(index), variable = columns + at;
  rows.erase(rows.begin() + at);
  low.erase(low.begin() + variable);
  high.erase(high.begin() + variable);
  rank.erase(rank.begin() + variable);
}

}  // namespace floorwheel::training
