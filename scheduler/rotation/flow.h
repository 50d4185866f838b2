// SPDX-License-Identifier: GPL-3.0-or-later
// The largest flow through a small network, a path at a time, and the cut that it leaves. Shortest paths
// first (Edmonds and Karp, J. ACM 19 (1972) 248-264), so it comes to its end whatever the numbers.
#pragma once

#include <cstdint>
#include <vector>

namespace floorwheel {

class Flow {
 public:
  struct Arc {
    int to = 0;
    std::int64_t left = 0;  // what still fits
    std::size_t back = 0;   // index of the arc that takes it back
    std::int64_t most = 0;  // 0 for an arc that takes back
  };

  int add_node();
  void join(int from, int to, std::int64_t most);
  /// Sends up to `most` along one path; how much it was, 0: there is no path.
  std::int64_t send(int from, int to, std::int64_t most);

  [[nodiscard]] const std::vector<Arc>& arcs(int node) const {
    return arcs_of_[static_cast<std::size_t>(node)];
  }
  /// [node] whether more could flow there from any of these.
  [[nodiscard]] std::vector<std::uint8_t> reached(const std::vector<int>& from) const;

 private:
  std::vector<std::vector<Arc>> arcs_of_;
  std::vector<std::pair<int, std::size_t>> came_;  // node and arc before, on the path looked for
  std::vector<int> queue_;
};

}  // namespace floorwheel
