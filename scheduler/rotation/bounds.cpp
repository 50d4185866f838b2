// SPDX-License-Identifier: GPL-3.0-or-later
// What bounds make of an answer.
#include "scheduler/rotation/bounds.h"

#include <algorithm>

#include "scheduler/rotation/engine.h"

namespace floorwheel {
void prove(const Problem& p, Found& found) {
  const std::vector<Component> order = ranking(p);
  const auto raise = [&](Component c, std::int64_t to) { found.bound[c] = std::max(found.bound[c], to); };
  const auto meets = [&](Component c) { return found.cost[c] == found.bound[c]; };
  const VisitFlow flow = bound_visits(p);
  raise(Component::missed, flow.missed);
  if (found.cost[Component::missed] == flow.missed) raise(Component::uneven, flow.uneven);
  if (p.from == 0) {
    const bool to_tell = found.cost[Component::back_to_back] > 0;  // else the bound is 0 anyhow
    if (to_tell && meets(Component::missed) && found.cost[Component::uneven] == 0) {
      raise(Component::back_to_back, bound_back_to_back(p));
      if (found.style == Style::ring && found.bad_joints > 0 && found.cost[Component::missed] == 0)
        raise(Component::back_to_back, bound_on_ring(p, found.bad_joints));
    }
  } else {
    const Cost past = price_history(p);
    for (Component c : order)
      if (c != Component::missed && c != Component::uneven && c != Component::moved) raise(c, past[c]);
  }
  if (p.is_repair) {  // not kept from before: the second holds for this `missed` and `uneven` only
    std::int64_t& moved = found.bound[Component::moved];
    moved = bound_moved(p);
    if (moved < found.cost[Component::moved])
      moved = std::max(
          moved, bound_moved_by_shares(p, found.cost[Component::missed], found.cost[Component::uneven]));
    if (leading_equal(found.cost, found.bound)) moved = std::max(moved, found.moved_least);
  }
  for (int i = 0; i < found.exhausted; ++i) raise(order[ix(i)], found.cost[order[ix(i)]]);
  found.proven = 0;
  for (Component c : order) {
    if (!meets(c)) break;
    ++found.proven;
  }
}

}  // namespace floorwheel
