// SPDX-License-Identifier: GPL-3.0-or-later
// Sets in rising order; from each set its row of the table is spread over all stations at once, four a step.
#include "scheduler/rotation/row_prices.h"

#include <algorithm>
#include <bit>
#include <cstring>

namespace floorwheel {

std::int32_t row_cost(const RowCosts& c, const Grid<std::int32_t>& price, const std::vector<int>& row) {
  std::int32_t sum = 0;
  int last = -1;
  int last_slot = -1;
  for (int t = 0; t < static_cast<int>(row.size()); ++t) {
    if (row[ix(t)] == nowhere) continue;
    const int i = static_cast<int>(std::find(c.list.begin(), c.list.end(), row[ix(t)]) - c.list.begin());
    sum += price(i, t);
    if (t - last_slot > 1) sum += c.idle * (t - last_slot - 1);
    if (last >= 0) sum += t - last_slot == 1 ? c.next(last, i) : c.later(last, i);
    last = i;
    last_slot = t;
  }
  return sum;
}

RowTable::RowTable(const RowCosts& c)
    : c_(c), n_(static_cast<int>(c.list.size())), width_((n_ + lanes - 1) / lanes * lanes) {
  const std::size_t cells = ix((c.rests + 1) * c.laps) * (std::size_t{1} << n_) * ix(width_);
  worked_.assign(cells, forbidden);
  if (c.rests > 0) rested_.assign(cells, forbidden);
}

std::int64_t RowTable::entries(const RowCosts& c) {
  const auto n = static_cast<std::int64_t>(c.list.size());
  return c.laps * (std::int64_t{1} << n) * (n * n / 4 + n) * (1 + 2 * c.rests);
}

/// Sets of one station more, from `set` with so many rests; from the full set those of the next lap.
void RowTable::spread(int rests, int lap, std::uint32_t set) {
  Lane best[list_most / lanes];
  const int parts = width_ / lanes;
  for (int i = 0; i < parts; ++i) best[i] = Lane{} + forbidden;
  const auto take = [&](const std::int32_t* from, const Grid<std::int32_t>& step) {
    for (std::uint32_t left = set; left; left &= left - 1) {
      const int j = std::countr_zero(left);
      if (from[j] >= forbidden) continue;
      const Lane so_far = Lane{} + from[j];
      const std::int32_t* steps = step.row(j);
      for (int i = 0; i < parts; ++i) {
        Lane one;
        std::memcpy(&one, steps + ix(i) * lanes, sizeof one);
        one += so_far;
        best[i] = one < best[i] ? one : best[i];
      }
    }
  };
  take(&worked_[cell(rests, lap, set, 0)], c_.next);
  if (rests > 0) take(&rested_[cell(rests, lap, set, 0)], c_.later);
  const int slot = lap * n_ + std::popcount(set) + rests;
  const std::uint32_t full = (std::uint32_t{1} << n_) - 1;
  const int to_lap = set == full ? lap + 1 : lap;
  const std::uint32_t had = set == full ? 0 : set;
  for (std::uint32_t left = full & ~had; left; left &= left - 1) {
    const int i = std::countr_zero(left);
    const std::int32_t value = best[i / lanes][i % lanes] + (*price_)(i, slot);
    worked_[cell(rests, to_lap, had | (left & -left), i)] = std::min(value, forbidden);
  }
}

std::int32_t RowTable::least(const Grid<std::int32_t>& price) {
  price_ = &price;
  least_ = forbidden;
  const std::uint32_t sets = std::uint32_t{1} << n_;
  for (int e = 0; e <= c_.rests; ++e) {
    for (int i = 0; i < n_; ++i) {
      const std::int64_t start = std::int64_t{price(i, e)} + std::int64_t{c_.idle} * e;
      worked_[cell(e, 0, std::uint32_t{1} << i, i)] =
          static_cast<std::int32_t>(std::min<std::int64_t>(start, forbidden));
    }
    for (std::uint32_t k = 0; k < sets * static_cast<std::uint32_t>(c_.laps); ++k) {
      const std::uint32_t set = k % sets;
      const int lap = static_cast<int>(k / sets);
      const int size = lap * n_ + std::popcount(set);  // visits so far
      if (set == 0 || size > c_.visits) continue;
      if (e > 0)
        for (int j = 0; j < n_; ++j) {
          const std::size_t before = cell(e - 1, lap, set, j);
          rested_[cell(e, lap, set, j)] =
              std::min(forbidden, std::min(worked_[before], rested_[before]) + c_.idle);
        }
      if (size < c_.visits) {
        spread(e, lap, set);
        continue;
      }
      for (std::uint32_t left = set; left; left &= left - 1) {
        const int last = std::countr_zero(left);
        if (worked_[cell(e, lap, set, last)] >= least_) continue;
        least_ = worked_[cell(e, lap, set, last)];
        end_rests_ = e;
        end_lap_ = lap;
        end_set_ = set;
        end_last_ = last;
      }
    }
  }
  return least_;
}

bool RowTable::back(int rests, int lap, std::uint32_t set, int last, bool resting, std::int32_t so_far,
                    std::int32_t limit, std::size_t most, std::vector<int>& row,
                    std::vector<std::vector<int>>& rows) const {
  const int slot = lap * n_ + std::popcount(set) - 1 + rests;
  if (resting) {  // not worked in `slot`
    if (rests == 0) return true;
    row[ix(slot)] = nowhere;
    const std::size_t before = cell(rests - 1, lap, set, last);
    const std::int32_t sum = std::min(forbidden, so_far + c_.idle);
    if (worked_[before] + sum <= limit &&
        !back(rests - 1, lap, set, last, false, sum, limit, most, row, rows))
      return false;
    return rested_[before] + sum > limit ||
           back(rests - 1, lap, set, last, true, sum, limit, most, row, rows);
  }
  row[ix(slot)] = c_.list[ix(last)];
  const std::int32_t here = so_far + (*price_)(last, slot);
  std::uint32_t rest = set & ~(std::uint32_t{1} << last);
  if (rest == 0 && lap > 0) {
    rest = (std::uint32_t{1} << n_) - 1;
    --lap;
  }
  if (rest == 0) {
    if (here + std::int64_t{c_.idle} * rests > limit) return true;
    for (int t = 0; t < slot; ++t) row[ix(t)] = nowhere;
    if (rows.size() == most) return false;
    rows.push_back(row);
    return true;
  }
  for (std::uint32_t left = rest; left; left &= left - 1) {
    const int j = std::countr_zero(left);
    const std::int32_t next = here + c_.next(j, last);
    if (next < forbidden && worked_[cell(rests, lap, rest, j)] + next <= limit &&
        !back(rests, lap, rest, j, false, next, limit, most, row, rows))
      return false;
    const std::int32_t later = here + c_.later(j, last);
    if (rests > 0 && later < forbidden && rested_[cell(rests, lap, rest, j)] + later <= limit &&
        !back(rests, lap, rest, j, true, later, limit, most, row, rows))
      return false;
  }
  return true;
}

bool RowTable::near(std::int32_t more, std::size_t most, std::vector<std::vector<int>>& rows) const {
  const std::int32_t limit = std::min(forbidden - 1, least_ + std::min(more, row_cost_most));
  const int lap = c_.laps - 1;
  for (int e = 0; e <= c_.rests; ++e)
    for (std::uint32_t set = 1; set < std::uint32_t{1} << n_; ++set) {
      if (lap * n_ + std::popcount(set) != c_.visits) continue;
      for (std::uint32_t left = set; left; left &= left - 1) {
        const int last = std::countr_zero(left);
        if (worked_[cell(e, lap, set, last)] > limit) continue;
        std::vector<int> row(ix(c_.visits + c_.rests), nowhere);
        if (!back(e, lap, set, last, false, 0, limit, most, row, rows)) return false;
      }
    }
  return true;
}

std::vector<int> RowTable::row() const {
  std::vector<int> row(ix(c_.visits + c_.rests), nowhere);
  std::vector<std::vector<int>> rows;
  if (least_ < forbidden) back(end_rests_, end_lap_, end_set_, end_last_, false, 0, least_, 1, row, rows);
  return rows.empty() ? row : rows.front();
}

}  // namespace floorwheel
