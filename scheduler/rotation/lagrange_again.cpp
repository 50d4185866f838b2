// SPDX-License-Identifier: GPL-3.0-or-later
// A few members choose again among all that the others leave them (large neighbourhood search; Shaw 1998):
// under the prices, so that what is left over is worth as much as elsewhere.
#include <algorithm>

#include "scheduler/rotation/lagrange.h"
#include "scheduler/rotation/row_packing.h"

namespace floorwheel {

bool Lagrange::again(const std::vector<int>& members, std::int64_t& steps, std::vector<Row>& rows) {
  constexpr std::size_t rows_most = 4'000;
  if (tables_.empty()) return false;
  Packing packing;
  for (std::size_t l = 0; l < limits_.size(); ++l) {
    packing.room.push_back(limits_[l].room);
    packing.price.push_back(best_prices_[l]);
  }
  const auto take = [&](int m, int by, std::vector<int>& room) {
    for (int t = 0; t < p_.slots; ++t)
      if (const int s = rows[ix(m)][ix(t)]; s != nowhere) {
        room[ix(place_limit_(s, t))] -= by;
        for (int e : p_.takes[ix(s)]) room[ix(unit_limit_(e, t))] -= by;
      }
  };
  for (int m = 0; m < p_.members; ++m)
    if (std::find(members.begin(), members.end(), m) == members.end()) take(m, 1, packing.room);
  std::vector<int> left = packing.room;
  for (int m : members) take(m, 1, left);
  for (std::size_t l = 0; l < limits_.size(); ++l) {
    if (left[l] < 0) return false;
    packing.budget += std::int64_t{left[l]} * best_prices_[l];
  }
  packing.budget -= scale_;
  set_prices(best_prices_);
  std::vector<std::vector<int>> who(kinds_.size());
  for (std::size_t k = 0; k < kinds_.size(); ++k) {
    const RowCosts& c = kinds_[k].costs;
    for (int m : kinds_[k].members)
      if (std::find(members.begin(), members.end(), m) != members.end()) who[k].push_back(m);
    packing.count.push_back(static_cast<int>(who[k].size()));
    if (who[k].empty()) continue;
    for (int i = 0; i < static_cast<int>(c.list.size()); ++i)
      for (int t = 0; t < c.visits + c.rests; ++t) {
        const int limit = place_limit_(c.list[ix(i)], c.first + t);
        bool taken = limit >= 0 && packing.room[ix(limit)] == 0;
        for (int e : p_.takes[ix(c.list[ix(i)])])
          taken = taken || packing.room[ix(unit_limit_(e, c.first + t))] == 0;
        if (taken) price_of_[k](i, t) = forbidden;
      }
    const std::int32_t least = tables_[k].least(price_of_[k]);
    if (least >= forbidden) return false;
    for (int m : who[k]) {
      const auto from = rows[ix(m)].begin() + c.first;
      packing.budget += tables_[k].cost({from, from + c.visits + c.rests}) - least;
    }
  }
  steps -= entries() / 1'000;
  if (packing.budget < 0) return false;
  for (std::size_t k = 0; k < kinds_.size(); ++k) {
    std::vector<std::vector<int>> near;
    for (std::int64_t more = packing.budget; !who[k].empty(); more /= 2) {
      near.clear();
      if (tables_[k].near(static_cast<std::int32_t>(std::min<std::int64_t>(more, row_cost_most)), rows_most,
                          near))
        break;
      if (more == 0) return false;  // too many that cost the same
    }
    add_near(k, near, packing);
  }
  std::stable_sort(packing.rows.begin(), packing.rows.end(),
                   [](const PackRow& a, const PackRow& b) { return a.over < b.over; });
  std::int64_t mine = std::min<std::int64_t>(steps, 5'000);
  const std::int64_t given = mine;
  const std::vector<int> chosen = pack(packing, mine);
  steps -= given - mine;
  if (chosen.empty()) return false;
  for (int r : chosen) {
    const PackRow& one = packing.rows[ix(r)];
    const int m = who[ix(one.kind)].back();
    who[ix(one.kind)].pop_back();
    std::copy(one.row.begin(), one.row.end(), rows[ix(m)].begin() + kinds_[ix(one.kind)].costs.first);
  }
  return true;
}

}  // namespace floorwheel
