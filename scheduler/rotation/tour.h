// SPDX-License-Identifier: GPL-3.0-or-later
// Hamiltonian cycles and paths of least weight over a complete graph with small symmetric weights, exact by
// dynamic programming over sets of vertices (Bellman 1962; Held and Karp 1962). With weight 1 for two
// stations that do not get on and 0 for two that do, weight 0 means: there is a cycle (path) without a bad
// joint.
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/rotation/grid.h"

namespace floorwheel {

constexpr int tour_exact_most = 20;  // vertices; 2^19 · 19 entries of two bytes

struct Tour {
  std::int64_t weight = 0;
  std::vector<int> order;
};

/// 1 <= n <= tour_exact_most vertices. One vertex: weight 0; two: the joint counts twice.
Tour least_cycle(int n, const Grid<int>& weight);
Tour least_path(int n, const Grid<int>& weight);

}  // namespace floorwheel
