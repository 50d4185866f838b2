// SPDX-License-Identifier: GPL-3.0-or-later
// The table over sets of vertices and the way back through it.
#include "scheduler/rotation/tour.h"

#include <algorithm>
#include <bit>

namespace floorwheel {
namespace {

constexpr std::uint32_t unreached = 0xffff;

/// Weights of paths that start at the last vertex, n - 1, and visit a set of the others.
class Sets {
 public:
  Sets(int n, const Grid<int>& weight)
      : k_(n - 1), weight_(weight), table_((std::size_t{1} << k_) * ix(k_ ? k_ : 1), 0xffff) {
    for (int v = 0; v < k_; ++v) at(1u << v, v) = clipped(weight(k_, v));
    const std::uint32_t all = (1u << k_) - 1;
    for (std::uint32_t set = 1; set <= all; ++set)
      for (std::uint32_t lasts = set; lasts; lasts &= lasts - 1) {
        const int last = std::countr_zero(lasts);
        const std::uint32_t so_far = at(set, last);
        if (so_far == unreached) continue;
        for (std::uint32_t rest = all & ~set; rest; rest &= rest - 1) {
          const int next = std::countr_zero(rest);
          std::uint16_t& cell = at(set | (rest & -rest), next);
          const std::uint32_t sum = so_far + static_cast<std::uint32_t>(weight(last, next));
          if (sum < cell) cell = static_cast<std::uint16_t>(sum);
        }
      }
  }

  [[nodiscard]] std::uint32_t whole(int last) { return at((1u << k_) - 1, last); }

  /// The path that ends at `last` and visits all, from its start on.
  std::vector<int> path(int last) {
    std::vector<int> order;
    std::uint32_t set = (1u << k_) - 1;
    while (set) {
      order.push_back(last);
      const std::uint32_t here = at(set, last);
      const std::uint32_t before = set & ~(1u << last);
      int from = -1;
      for (std::uint32_t lasts = before; lasts && from < 0; lasts &= lasts - 1) {
        const int v = std::countr_zero(lasts);
        if (at(before, v) != unreached && at(before, v) + ix(weight_(v, last)) == here) from = v;
      }
      set = before;
      last = from;
    }
    order.push_back(k_);
    std::reverse(order.begin(), order.end());
    return order;
  }

 private:
  std::uint16_t& at(std::uint32_t set, int last) { return table_[std::size_t{set} * ix(k_) + ix(last)]; }
  static std::uint16_t clipped(int w) { return static_cast<std::uint16_t>(std::min(w, 0xfffe)); }

  const int k_;
  const Grid<int>& weight_;
  std::vector<std::uint16_t> table_;
};

/// Large weights are scaled down so that sums fit two bytes. Then weight 0 stays 0 and 1 stays 1 only if
/// nothing had to be scaled, which is so for fewer than 3,000 members.
int divisor(int n, const Grid<int>& weight) {
  int most = 1;
  for (int a = 0; a < n; ++a)
    for (int b = 0; b < n; ++b) most = std::max(most, weight(a, b));
  return most * (n + 1) / 0xffff + 1;
}

Grid<int> scaled(int n, const Grid<int>& weight) {
  const int by = divisor(n, weight);
  Grid<int> out(n + 1, n + 1, 0);
  for (int a = 0; a < n; ++a)
    for (int b = 0; b < n; ++b) out(a, b) = (weight(a, b) + by - 1) / by;
  return out;
}

std::int64_t weigh(const std::vector<int>& order, const Grid<int>& weight, bool closed) {
  std::int64_t sum = 0;
  for (std::size_t i = 1; i < order.size(); ++i) sum += weight(order[i - 1], order[i]);
  if (closed && order.size() > 1) sum += weight(order.back(), order.front());
  return sum;
}

}  // namespace

Tour least_cycle(int n, const Grid<int>& weight) {
  if (n == 1) return {0, {0}};
  const Grid<int> small = scaled(n, weight);
  Sets sets(n, small);
  int best = 0;
  for (int v = 1; v < n - 1; ++v)
    if (sets.whole(v) + ix(small(v, n - 1)) < sets.whole(best) + ix(small(best, n - 1))) best = v;
  Tour tour{0, sets.path(best)};
  tour.weight = weigh(tour.order, weight, true);
  return tour;
}

Tour least_path(int n, const Grid<int>& weight) {
  if (n == 1) return {0, {0}};
  const Grid<int> small = scaled(n, weight);  // one vertex more, at no distance from any, is both ends
  Sets sets(n + 1, small);
  int best = 0;
  for (int v = 1; v < n; ++v)
    if (sets.whole(v) < sets.whole(best)) best = v;
  Tour tour{0, sets.path(best)};
  tour.order.erase(tour.order.begin());
  tour.weight = weigh(tour.order, weight, false);
  return tour;
}

}  // namespace floorwheel
