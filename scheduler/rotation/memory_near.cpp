// SPDX-License-Identifier: GPL-3.0-or-later
// True rows from the table of rows that forget: from the last visit back, never twice at a station. What
// comes before costs at least the least of the codes that hold nothing visited after.
#include <algorithm>

#include "scheduler/rotation/memory_table.h"

namespace floorwheel {

struct MemoryTable::Search {
  std::int32_t limit;
  std::size_t most;
  std::vector<std::vector<int>>& rows;
  std::vector<int> row;
  std::vector<char> after;          // [i] visited later
  std::int64_t looks = 20'000'000;  // codes looked at
};

/// Everything before a visit at `last`, the `visits`-th, after so many rests; `so_far`: from it on.
bool MemoryTable::back(Search& s, int visits, int rests, int last, std::int32_t so_far) const {
  const int slot = visits - 1 + rests;
  s.row[ix(slot)] = c_.list[ix(last)];
  const std::int32_t here = so_far + (*price_)(last, slot);
  if (here > s.limit) return true;
  if (visits == 1) {
    if (here + std::int64_t{c_.idle} * rests > s.limit) return true;
    std::fill(s.row.begin(), s.row.begin() + slot, nowhere);
    if (s.rows.size() == s.most) return false;
    s.rows.push_back(s.row);
    return true;
  }
  s.after[ix(last)] = 1;
  bool all = true;
  for (int i = 0; i < n_ && all; ++i) {
    if (s.after[ix(i)]) continue;
    Code free = 0;
    for (std::size_t b = 0; b < remembered_[ix(i)].size(); ++b)
      if (!s.after[ix(remembered_[ix(i)][b])]) free |= Code{1} << b;
    std::int32_t sum = here;
    for (int between = 0; between <= rests && all; ++between) {
      if (between > 0) {
        s.row[ix(slot - between)] = nowhere;
        sum = std::min(forbidden, sum + c_.idle);
      }
      const std::int32_t step = between == 0 ? c_.next(i, last) : c_.later(i, last);
      if (step >= forbidden || sum + step > s.limit) continue;
      const std::int32_t* costs = &worked_[cell(visits - 1, rests - between, i)];
      std::int32_t least = forbidden;
      for (Code code = free;; code = (code - 1) & free) {
        least = std::min(least, costs[code]);
        --s.looks;
        if (code == 0) break;
      }
      if (s.looks < 0)
        all = false;
      else if (least + sum + step <= s.limit)
        all = back(s, visits - 1, rests - between, i, sum + step);
    }
  }
  s.after[ix(last)] = 0;
  return all;
}

bool MemoryTable::near(std::int32_t more, std::size_t most, std::vector<std::vector<int>>& rows) const {
  Search s{std::min(forbidden - 1, least_ + std::min(more, row_cost_most)), most, rows, {}, {}};
  s.after.assign(ix(n_), 0);
  for (int e = 0; e <= c_.rests; ++e)
    for (int i = 0; i < n_; ++i) {
      const std::int32_t* costs = &worked_[cell(c_.visits, e, i)];
      if (*std::min_element(costs, costs + codes(i)) > s.limit) continue;
      s.row.assign(ix(c_.visits + c_.rests), nowhere);
      if (!back(s, c_.visits, e, i, 0)) return false;
    }
  return true;
}

}  // namespace floorwheel
