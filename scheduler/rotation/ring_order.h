// SPDX-License-Identifier: GPL-3.0-or-later
// The order of the stations on a ring: joints between stations that share a primary group are to be few,
// then pairs two apart within the recovery time, then assisting overlaps, then walking.
#pragma once

#include "scheduler/rotation/problem.h"
#include "scheduler/rotation/random.h"
#include "scheduler/rotation/tour.h"

namespace floorwheel {

/// What each joint costs, counted over the members who are to visit both stations.
struct Joints {
  explicit Joints(const Problem&);
  Grid<int> back_to_back, short_rest, assist;
  const Grid<int>& walk_cm;
};

struct RingOrder {
  std::vector<StationIndex> order;
  std::int64_t bad = 0;  // back-to-back weight of the joints, the closing one included
};

/// Orders worth trying, the best cycle first; at least one. `exact`: the first has the least weight of bad
/// joints there is; so it is up to tour_exact_most stations, and to tour_branch_most unless steps run out.
struct RingOrders {
  std::vector<RingOrder> list;
  bool exact = false;
};
RingOrders find_ring_orders(const Problem&, Random&);

/// The first order without bad joints that descent comes to, or where it ends.
std::vector<StationIndex> first_ring_order(const Problem&, Random&);

}  // namespace floorwheel
