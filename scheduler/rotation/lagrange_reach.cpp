// SPDX-License-Identifier: GPL-3.0-or-later
// From prices to a rotation: the rows that are nearly cheapest, and a choice among them.
#include <algorithm>

#include "scheduler/rotation/lagrange.h"
#include "scheduler/rotation/row_packing.h"

namespace floorwheel {

void Lagrange::add_near(std::size_t kind, std::vector<std::vector<int>>& near, Packing& packing) const {
  for (auto& row : near) {
    PackRow one;
    one.kind = static_cast<int>(kind);
    one.over = tables_[kind].cost(row) - tables_[kind].least();
    for (std::size_t t = 0; t < row.size(); ++t) {
      if (row[t] == nowhere) continue;
      const int slot = kinds_[kind].costs.first + static_cast<int>(t);
      one.limits.push_back(place_limit_(row[t], slot));
      for (int e : p_.takes[ix(row[t])]) one.limits.push_back(unit_limit_(e, slot));
    }
    one.row = std::move(row);
    packing.rows.push_back(std::move(one));
  }
}

Lagrange::Look Lagrange::reach(std::int64_t target, std::int64_t& steps, std::vector<Row>& rows) {
  constexpr std::size_t rows_most = 60'000;
  Packing packing;
  packing.budget = target * scale_ - best_;
  if (packing.budget < 0 || tables_.empty()) return Look::none;
  for (std::size_t l = 0; l < limits_.size(); ++l) {
    packing.room.push_back(limits_[l].room);
    packing.price.push_back(best_prices_[l]);
  }
  set_prices(best_prices_);
  weigh(nullptr);
  for (std::size_t k = 0; k < kinds_.size(); ++k) {
    packing.count.push_back(static_cast<int>(kinds_[k].members.size()));
    const std::int64_t most = packing.budget;
    std::vector<std::vector<int>> near;
    tables_[k].least(price_of_[k]);
    if (!tables_[k].near(static_cast<std::int32_t>(std::min<std::int64_t>(most, row_cost_most)), rows_most,
                         near)) {
      return Look::too_many;
    }
    add_near(k, near, packing);
  }
  std::stable_sort(packing.rows.begin(), packing.rows.end(),
                   [](const PackRow& a, const PackRow& b) { return a.over < b.over; });
  const std::vector<int> chosen = pack(packing, steps);
  if (chosen.empty()) return steps < 0 ? Look::unended : Look::none;
  rows.assign(ix(p_.members), Row(ix(p_.slots), nowhere));
  std::vector<std::size_t> next(kinds_.size(), 0);
  for (int r : chosen) {
    const PackRow& one = packing.rows[ix(r)];
    const RowKind& kind = kinds_[ix(one.kind)];
    Row& row = rows[ix(kind.members[next[ix(one.kind)]++])];
    std::copy(one.row.begin(), one.row.end(), row.begin() + kind.costs.first);
  }
  return Look::found;
}

}  // namespace floorwheel
