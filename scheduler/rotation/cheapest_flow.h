// SPDX-License-Identifier: GPL-3.0-or-later
// The cheapest flow that sends one unit from each of many sources, by successive shortest paths (Ford and
// Fulkerson 1962; Busacker and Gowen 1961, from memory). Whole numbers; costs may be negative, cycles of
// negative cost may not.
#pragma once

#include <cstdint>
#include <vector>

namespace floorwheel {

class CheapestFlow {
 public:
  explicit CheapestFlow(int nodes) : arcs_of_(static_cast<std::size_t>(nodes)) {}

  /// Index of the arc among those of `from`.
  std::size_t join(int from, int to, int most, std::int64_t cost);
  /// Sends one unit along a path that is cheapest now; false: there is none.
  bool send(int from, int to);

  [[nodiscard]] bool used(int from, std::size_t arc) const {
    const Arc& a = arcs_of_[static_cast<std::size_t>(from)][arc];
    return a.left < a.most;
  }

 private:
  struct Arc {
    int to = 0;
    int left = 0;
    int most = 0;
    std::int64_t cost = 0;
    std::size_t back = 0;
  };
  std::vector<std::vector<Arc>> arcs_of_;
};

}  // namespace floorwheel
