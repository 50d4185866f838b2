// SPDX-License-Identifier: GPL-3.0-or-later
// What rows remember where lists are too long for the exact table: at first the stations nearest by cost,
// then what the cheapest row forgot (dynamic ng-routes; Roberti and Mingozzi 2014).
#include <algorithm>

#include "scheduler/rotation/lagrange.h"

namespace floorwheel {
namespace {

constexpr int remembered_first = 6;  // stations, at each
constexpr int remembered_most = 12;
constexpr std::int64_t cells_most = 48'000'000;  // of all tables, 4 bytes each

/// [slot] slots since the row was last at the same station; 0: it was not, or is nowhere.
std::vector<std::size_t> ways_back(const std::vector<int>& row) {
  std::vector<std::size_t> out(row.size(), 0);
  for (std::size_t b = 0; b < row.size(); ++b)
    for (std::size_t a = 0; row[b] != nowhere && a < b; ++a)
      if (row[a] == row[b]) out[b] = b - a;
  return out;
}

}  // namespace

void Lagrange::first_memory() {
  Grid<std::int32_t> joint(p_.stations, p_.stations, forbidden);
  for (const RowKind& k : kinds_)
    for (int i = 0; i < static_cast<int>(k.costs.list.size()); ++i)
      for (int j = 0; j < static_cast<int>(k.costs.list.size()); ++j) {
        std::int32_t& sum = joint(k.costs.list[ix(i)], k.costs.list[ix(j)]);
        if (i != j) sum = std::min(sum, std::min(k.costs.next(i, j), k.costs.later(i, j)));
      }
  memory_.assign(ix(p_.stations), {});
  for (int s = 0; s < p_.stations; ++s) {
    std::vector<std::pair<std::int64_t, int>> by_cost;
    for (int r = 0; r < p_.stations; ++r)
      if (r != s) by_cost.emplace_back(std::int64_t{joint(s, r)} + joint(r, s), r);
    std::sort(by_cost.begin(), by_cost.end());
    for (int i = 0; i < remembered_first && i < static_cast<int>(by_cost.size()); ++i)
      memory_[ix(s)].push_back(by_cost[ix(i)].second);
    std::sort(memory_[ix(s)].begin(), memory_[ix(s)].end());
  }
}

std::vector<std::vector<int>> Lagrange::remembered(const RowKind& k) const {
  std::vector<std::vector<int>> out;
  for (int s : k.costs.list) {
    out.emplace_back();
    for (int j = 0; j < static_cast<int>(k.costs.list.size()); ++j)
      if (std::binary_search(memory_[ix(s)].begin(), memory_[ix(s)].end(), k.costs.list[ix(j)]))
        out.back().push_back(j);
  }
  return out;
}

bool Lagrange::memory_fits() const {
  std::int64_t cells = 0;
  for (const RowKind& k : kinds_) cells += MemoryTable::cells(k.costs, remembered(k));
  return cells <= cells_most;
}

void Lagrange::make_tables() {
  tables_.clear();
  for (const RowKind& k : kinds_) {
    if (memory_.empty())
      tables_.emplace_back(k.costs);
    else
      tables_.emplace_back(k.costs, remembered(k));
  }
}

/// Remembers what the cheapest rows, as last weighed, soonest came back to; false: nothing, or there is no
/// room.
bool Lagrange::remember_more() {
  if (memory_.empty()) return false;
  const std::vector<std::vector<int>> before = memory_;
  bool more = false;
  for (const RowPricer& table : tables_) {
    const std::vector<int> row = table.row();
    const std::vector<std::size_t> ways = ways_back(row);
    std::size_t shortest = 0;
    for (std::size_t way : ways)
      if (way > 0 && (shortest == 0 || way < shortest)) shortest = way;
    for (std::size_t b = 0; b < row.size(); ++b) {
      if (ways[b] == 0 || ways[b] > shortest + 1) continue;
      for (std::size_t t = b - ways[b] + 1; t < b; ++t) {
        if (row[t] == nowhere) continue;
        std::vector<int>& list = memory_[ix(row[t])];
        const auto at = std::lower_bound(list.begin(), list.end(), row[b]);
        if ((at != list.end() && *at == row[b]) || static_cast<int>(list.size()) >= remembered_most) continue;
        list.insert(at, row[b]);
        more = true;
      }
    }
  }
  if (!more) return false;
  if (!memory_fits()) {
    memory_ = before;
    return false;
  }
  make_tables();
  return true;
}

}  // namespace floorwheel
