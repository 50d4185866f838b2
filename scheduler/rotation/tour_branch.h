// SPDX-License-Identifier: GPL-3.0-or-later
// Hamiltonian cycles and paths of least weight where the table of tour.h would be too large: branch and bound
// with 1-trees (Held and Karp, Operations Research 18 (1970) 1138-1162; Volgenant and Jonker, European J. of
// Operational Research 9 (1982) 83-89; both from memory). Weights are symmetric and at least 0.
#pragma once

#include "scheduler/rotation/tour.h"

namespace floorwheel {

constexpr int tour_branch_most = 40;  // vertices that are worth the steps

struct BranchedTour {
  Tour tour;               // the lightest found, never heavier than the start
  std::int64_t bound = 0;  // no tour is lighter
  [[nodiscard]] bool proven() const { return bound == tour.weight; }
};

/// `start`: an order of the n vertices, the better the sooner it is proven. `steps`: 1-trees at most, n²
/// each.
BranchedTour branched_cycle(int n, const Grid<int>& weight, std::vector<int> start, std::int64_t steps);
BranchedTour branched_path(int n, const Grid<int>& weight, std::vector<int> start, std::int64_t steps);

}  // namespace floorwheel
