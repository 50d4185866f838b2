// SPDX-License-Identifier: GPL-3.0-or-later
// The cheapest ring where everybody goes round alike: each walks every joint of the ring but the one behind
// the own first station, and as many can start at one station as the smallest station holds. Exact, by a
// table over sets of stations (Held and Karp 1962).
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/rotation/problem.h"

namespace floorwheel {

/// What a joint weighs in each component; short rests are left out.
struct JointWeights {
  std::int64_t back_to_back = 0, assist = 0, walk_cm = 0;
};

struct RingWalk {
  std::int64_t least = 0;           // weighed, over all members, on any ring
  std::vector<StationIndex> order;  // a ring that has it
};

/// Table entries that it takes; 0: not everybody is alike, or there are too many stations.
std::int64_t ring_walk_entries(const Problem&);
/// Precondition: ring_walk_entries() > 0.
RingWalk cheapest_ring(const Problem&, const JointWeights&);

/// Weights by which an earlier component comes before any sum of later ones, up to `last`.
JointWeights in_order(const Problem&, Component last);

}  // namespace floorwheel
