// SPDX-License-Identifier: GPL-3.0-or-later
// Prices rows and reloads; to be read beside the table of the rotation model.
#include "scheduler/rotation/price.h"

#include <algorithm>
#include <cstdlib>
#include <functional>

namespace floorwheel {

Cost price_row(const Problem& p, int m, const StationIndex* row) {
  const Work* works = p.works(m);
  std::int64_t visits = 0;
  std::int64_t back_to_back = 0;
  std::int64_t assist = 0;
  std::int64_t short_rest = 0;
  std::int64_t walk = 0;
  std::int64_t busy_present = 0;
  int before = -1;  // last worked slot so far
  const int level = p.level[ix(m)];
  for (int t = 0; t < p.slots; ++t) {
    const StationIndex s = row[t];
    if (s == nowhere) continue;
    const Work& now = works[s];
    visits += now.required ? 1 : 0;
    busy_present += p.present(m, t) ? 1 : 0;
    if (before >= 0) {
      walk += p.walk_cm(row[before], s);
      if (before == t - 1) {
        const Work& then = works[row[before]];
        if (now.primary & then.primary)
          ++back_to_back;
        else if ((now.primary & then.assisting) | (now.assisting & then.primary))
          ++assist;
      }
      for (int u = p.rest_from(level, t); u < t - 1; ++u)
        if (row[u] != nowhere && (works[row[u]].primary & now.primary)) ++short_rest;
    }
    before = t;
  }
  Cost cost;
  const std::int64_t missed = p.visits_wanted(m) - visits;
  const std::int64_t beyond = missed - p.forced_missed(m);
  cost[Component::missed] = missed;
  cost[Component::uneven] = beyond * beyond;
  cost[Component::back_to_back] = back_to_back;
  cost[Component::short_rest] = short_rest;
  if (before >= 0) {
    const int present_until = std::min(before, p.last[ix(m)]) - p.first[ix(m)] + 1;
    cost[Component::idle] = std::max<std::int64_t>(0, present_until - busy_present);
  }
  cost[Component::assist_overlap] = assist;
  cost[Component::walk_cm] = walk;
  if (p.is_repair && p.counts[ix(m)])
    for (int t = p.from; t < p.slots; ++t) cost[Component::moved] += row[t] != p.old(m, t) ? 1 : 0;
  return cost;
}

std::int64_t price_reload(const Problem& p, const Sheet& sheet, int s, int t) {
  if (t < 0 || t + 1 >= p.slots) return 0;
  std::vector<int> loads[2];
  for (int m = 0; m < p.members; ++m)
    for (int i = 0; i < 2; ++i)
      if (sheet.at(m, t + i) == s && p.work(m, s).load_hg >= 0) loads[i].push_back(p.work(m, s).load_hg);
  for (auto& list : loads) std::sort(list.begin(), list.end(), std::greater<>());
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < std::min(loads[0].size(), loads[1].size()); ++i)
    sum += std::abs(std::int64_t{loads[0][i]} - loads[1][i]);
  return sum;
}

Cost price_history(const Problem& p) {
  Cost sum = price(p, Sheet(p));
  for (Component c : {Component::missed, Component::uneven, Component::moved}) sum[c] = 0;
  return sum;
}

Cost price(const Problem& p, const Sheet& sheet) {
  Cost sum;
  for (int m = 0; m < p.members; ++m) add(sum, price_row(p, m, sheet.row(m)));
  if (p.has_loads)
    for (int s = 0; s < p.stations; ++s)
      for (int t = 0; t + 1 < p.slots; ++t) sum[Component::reload_hg] += price_reload(p, sheet, s, t);
  return sum;
}

}  // namespace floorwheel
