// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/cheapest_flow.h"

#include <deque>
#include <limits>

#include "scheduler/rotation/grid.h"

namespace floorwheel {

std::size_t CheapestFlow::join(int from, int to, int most, std::int64_t cost) {
  auto& there = arcs_of_[ix(from)];
  auto& back = arcs_of_[ix(to)];
  there.push_back({to, most, most, cost, back.size()});
  back.push_back({from, 0, 0, -cost, there.size() - 1});
  return there.size() - 1;
}

bool CheapestFlow::send(int from, int to) {
  constexpr std::int64_t far = std::numeric_limits<std::int64_t>::max();
  std::vector<std::int64_t> cost(arcs_of_.size(), far);
  std::vector<std::pair<int, std::size_t>> came(arcs_of_.size(), {-1, 0});
  std::vector<std::uint8_t> waits(arcs_of_.size(), 0);
  std::deque<int> queue{from};
  cost[ix(from)] = 0;
  while (!queue.empty()) {
    const int v = queue.front();
    queue.pop_front();
    waits[ix(v)] = 0;
    for (std::size_t a = 0; a < arcs_of_[ix(v)].size(); ++a) {
      const Arc& arc = arcs_of_[ix(v)][a];
      if (arc.left == 0 || cost[ix(v)] + arc.cost >= cost[ix(arc.to)]) continue;
      cost[ix(arc.to)] = cost[ix(v)] + arc.cost;
      came[ix(arc.to)] = {v, a};
      if (!waits[ix(arc.to)]) queue.push_back(arc.to);
      waits[ix(arc.to)] = 1;
    }
  }
  if (cost[ix(to)] == far) return false;
  for (int v = to; v != from; v = came[ix(v)].first) {
    Arc& arc = arcs_of_[ix(came[ix(v)].first)][came[ix(v)].second];
    --arc.left;
    ++arcs_of_[ix(v)][arc.back].left;
  }
  return true;
}

}  // namespace floorwheel
