// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/flow.h"

#include <algorithm>

#include "scheduler/rotation/grid.h"

namespace floorwheel {

int Flow::add_node() {
  arcs_of_.emplace_back();
  return static_cast<int>(arcs_of_.size()) - 1;
}

void Flow::join(int from, int to, std::int64_t most) {
  auto& there = arcs_of_[ix(from)];
  auto& back = arcs_of_[ix(to)];
  there.push_back({to, most, back.size(), most});
  back.push_back({from, 0, there.size() - 1, 0});
}

std::int64_t Flow::send(int from, int to, std::int64_t most) {
  came_.assign(arcs_of_.size(), {-1, 0});
  queue_.assign(1, from);
  came_[ix(from)] = {from, 0};
  for (std::size_t head = 0; head < queue_.size() && came_[ix(to)].first < 0; ++head) {
    const auto& arcs = arcs_of_[ix(queue_[head])];
    for (std::size_t a = 0; a < arcs.size(); ++a) {
      if (arcs[a].left == 0 || came_[ix(arcs[a].to)].first >= 0) continue;
      came_[ix(arcs[a].to)] = {queue_[head], a};
      queue_.push_back(arcs[a].to);
    }
  }
  if (came_[ix(to)].first < 0) return 0;
  std::int64_t amount = most;
  for (int v = to; v != from; v = came_[ix(v)].first)
    amount = std::min(amount, arcs_of_[ix(came_[ix(v)].first)][came_[ix(v)].second].left);
  for (int v = to; v != from; v = came_[ix(v)].first) {
    Arc& arc = arcs_of_[ix(came_[ix(v)].first)][came_[ix(v)].second];
    arc.left -= amount;
    arcs_of_[ix(v)][arc.back].left += amount;
  }
  return amount;
}

std::vector<std::uint8_t> Flow::reached(const std::vector<int>& from) const {
  std::vector<std::uint8_t> seen(arcs_of_.size(), 0);
  std::vector<int> queue;
  const auto visit = [&](int v) {
    if (seen[ix(v)]) return;
    seen[ix(v)] = 1;
    queue.push_back(v);
  };
  for (int v : from) visit(v);
  for (std::size_t head = 0; head < queue.size(); ++head)
    for (const Arc& arc : arcs_of_[ix(queue[head])])
      if (arc.left > 0) visit(arc.to);
  return seen;
}

}  // namespace floorwheel
