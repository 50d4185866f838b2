// SPDX-License-Identifier: GPL-3.0-or-later
// Visit by visit; for each pair of stations all codes of the one are spread over those of the other. What a
// code becomes is looked up in two halves.
#include "scheduler/rotation/memory_table.h"

#include <algorithm>

namespace floorwheel {
namespace {

constexpr int half = MemoryTable::memory_most / 2;  // bits
constexpr std::uint32_t parts = 1U << half;

std::int32_t capped(std::int64_t cost) {
  return static_cast<std::int32_t>(std::min<std::int64_t>(cost, forbidden));
}

}  // namespace

MemoryTable::MemoryTable(const RowCosts& c, std::vector<std::vector<int>> remembered)
    : c_(c),
      n_(static_cast<int>(c.list.size())),
      remembered_(std::move(remembered)),
      bit_(n_, std::max(1, n_), -1) {
  for (int i = 0; i < n_; ++i) {
    begin_.push_back(states_);
    states_ += codes(i);
    for (std::size_t b = 0; b < remembered_[ix(i)].size(); ++b)
      bit_(i, remembered_[ix(i)][b]) = static_cast<int>(b);
  }
  then_.assign(ix(n_) * ix(n_) * 2 * parts, 0);
  for (int i = 0; i < n_; ++i)
    for (int j = 0; j < n_; ++j) {
      Code* table = &then_[(ix(i) * ix(n_) + ix(j)) * 2 * parts];
      const int own = bit_(j, i);
      for (Code part = 0; part < parts; ++part) {
        Code low = own >= 0 ? Code{1} << own : 0;
        Code high = 0;
        for (std::size_t b = 0; b < remembered_[ix(i)].size(); ++b) {
          const int to = bit_(j, remembered_[ix(i)][b]);
          if (to < 0) continue;
          if (b < half && (part >> b & 1U)) low |= Code{1} << to;
          if (b >= half && (part >> (b - half) & 1U)) high |= Code{1} << to;
        }
        table[part] = low;
        table[parts + part] = high;
      }
    }
  const std::size_t cells = ix(c.rests + 1) * ix(c.visits + 1) * states_;
  worked_.assign(cells, forbidden);
  if (c.rests > 0) rested_.assign(cells, forbidden);
}

MemoryTable::Code MemoryTable::then(int i, Code code, int j) const {
  const Code* table = &then_[(ix(i) * ix(n_) + ix(j)) * 2 * parts];
  return table[code & (parts - 1)] | table[parts + (code >> half)];
}

void MemoryTable::spread(int visits, int rests) {
  const int slot = visits + rests;
  for (int i = 0; i < n_; ++i)
    for (int j = 0; j < n_; ++j) {
      const std::int32_t place = (*price_)(j, slot);
      if (i == j || place >= forbidden) continue;
      const Code* low = &then_[(ix(i) * ix(n_) + ix(j)) * 2 * parts];
      const Code* high = low + parts;
      const int own = bit_(i, j);
      const Code visited = own < 0 ? 0 : Code{1} << own;
      std::int32_t* to = &worked_[cell(visits + 1, rests, j)];
      const auto from = [&](const std::int32_t* costs, std::int32_t step) {
        if (step >= forbidden) return;
        for (Code code = 0; code < codes(i); ++code) {
          if (code & visited) continue;
          std::int32_t& cost = to[low[code & (parts - 1)] | high[code >> half]];
          cost = std::min(cost, costs[code] + step);
        }
      };
      from(&worked_[cell(visits, rests, i)], c_.next(i, j) >= forbidden ? forbidden : c_.next(i, j) + place);
      if (rests > 0)
        from(&rested_[cell(visits, rests, i)],
             c_.later(i, j) >= forbidden ? forbidden : c_.later(i, j) + place);
    }
}

std::int32_t MemoryTable::least(const Grid<std::int32_t>& price) {
  price_ = &price;
  least_ = forbidden;
  std::fill(worked_.begin(), worked_.end(), forbidden);
  for (int e = 0; e <= c_.rests; ++e) {
    for (int i = 0; i < n_; ++i) worked_[cell(1, e, i)] = capped(price(i, e) + std::int64_t{c_.idle} * e);
    for (int v = 1; v <= c_.visits; ++v) {
      if (e > 0)
        for (std::size_t k = 0; k < states_; ++k) {
          const std::size_t before = cell(v, e - 1, 0) + k;
          rested_[cell(v, e, 0) + k] =
              std::min(forbidden, std::min(worked_[before], rested_[before]) + c_.idle);
        }
      if (v < c_.visits) spread(v, e);
    }
    for (int i = 0; i < n_; ++i)
      for (Code code = 0; code < codes(i); ++code) {
        const std::int32_t cost = worked_[cell(c_.visits, e, i) + code];
        if (cost >= least_) continue;
        least_ = cost;
        end_rests_ = e;
        end_last_ = i;
        end_code_ = code;
      }
  }
  return least_;
}

std::vector<int> MemoryTable::row() const {
  std::vector<int> row(ix(c_.visits + c_.rests), nowhere);
  if (least_ >= forbidden) return row;
  int rests = end_rests_;
  int last = end_last_;
  Code code = end_code_;
  for (int v = c_.visits;; --v) {
    row[ix(v - 1 + rests)] = c_.list[ix(last)];
    if (v == 1) return row;
    const std::int32_t before = worked_[cell(v, rests, last) + code] - (*price_)(last, v - 1 + rests);
    bool found = false;
    for (int i = 0; i < n_ && !found; ++i) {
      if (i == last) continue;
      const int own = bit_(i, last);
      for (Code c = 0; c < codes(i) && !found; ++c) {
        if ((own >= 0 && (c >> own & 1U)) || then(i, c, last) != code) continue;
        const std::size_t k = cell(v - 1, rests, i) + c;
        int back = 0;  // slots not worked between
        if (worked_[k] + c_.next(i, last) != before) {
          if (rests == 0 || rested_[k] + c_.later(i, last) != before) continue;
          std::int32_t here = rested_[k];
          do {
            ++back;
            here -= c_.idle;
          } while (worked_[cell(v - 1, rests - back, i) + c] != here);
        }
        rests -= back;
        last = i;
        code = c;
        found = true;
      }
    }
    if (!found) return row;
  }
}

std::int64_t MemoryTable::cells(const RowCosts& c, const std::vector<std::vector<int>>& remembered) {
  std::int64_t states = 0;
  for (const auto& list : remembered) states += std::int64_t{1} << list.size();
  const auto n = static_cast<std::int64_t>(c.list.size());
  return (states * (c.visits + 1) * (c.rests + 1)) * (c.rests > 0 ? 2 : 1) + n * n * 2 * parts;
}

std::int64_t MemoryTable::entries(const RowCosts& c, const std::vector<std::vector<int>>& remembered) {
  std::int64_t states = 0;
  for (const auto& list : remembered) states += std::int64_t{1} << list.size();
  const auto n = static_cast<std::int64_t>(c.list.size());
  return states * (n + 2) * c.visits * (1 + 2 * c.rests);
}

}  // namespace floorwheel
