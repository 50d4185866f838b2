// SPDX-License-Identifier: GPL-3.0-or-later
// Descent by moving and turning parts of the order, from several starts; where that leaves a bad joint, the
// exact table of tour.h or the branching of tour_branch.h says what is best.
#include "scheduler/rotation/ring_order.h"

#include <algorithm>
#include <array>
#include <numeric>

#include "scheduler/rotation/tour_branch.h"

namespace floorwheel {

Joints::Joints(const Problem& p)
    : back_to_back(p.stations, p.stations),
      short_rest(p.stations, p.stations),
      assist(p.stations, p.stations),
      walk_cm(p.walk_cm) {
  for (int m = 0; m < p.members; ++m) {
    int reach = 0;  // somewhere in the class, two slots apart are too near
    for (int t = 2; t < p.slots; ++t) reach += p.rest_from(p.level[ix(m)], t) <= t - 2 ? 1 : 0;
    for (int a : p.required[ix(m)])
      for (int b : p.required[ix(m)]) {
        if (a == b) continue;
        const Work& one = p.work(m, a);
        const Work& other = p.work(m, b);
        if (one.primary & other.primary) {
          ++back_to_back(a, b);
          if (reach * 2 > p.slots - 2) ++short_rest(a, b);
        } else if ((one.primary & other.assisting) | (one.assisting & other.primary)) {
          ++assist(a, b);
        }
      }
  }
}

namespace {

using Order = std::vector<int>;
using Weight = std::array<std::int64_t, 4>;

Weight weigh(const Joints& joints, const Order& order, bool closed) {
  Weight w{};
  const std::size_t n = order.size();
  const std::size_t ends = closed ? n : n - 1;
  for (std::size_t i = 0; i < ends; ++i) {
    const int a = order[i];
    const int b = order[(i + 1) % n];
    w[0] += joints.back_to_back(a, b);
    w[2] += joints.assist(a, b);
    w[3] += joints.walk_cm(a, b);
    if (n > 2 && (closed || i + 2 < n)) w[1] += joints.short_rest(a, order[(i + 2) % n]);
  }
  return w;
}

/// First-improvement descent over segment turns and moves; `left` counts weighings. `no_bad` is enough: it
/// ends as soon as there is no bad joint.
void descend(const Joints& joints, Order& order, bool closed, Random& random, std::int64_t& left,
             bool no_bad = false) {
  const int n = static_cast<int>(order.size());
  Weight now = weigh(joints, order, closed);
  for (bool better = true; better && left > 0;) {
    better = false;
    if (no_bad && now[0] == 0) return;
    const int turn = random.below(n);
    for (int a = 0; a < n && left > 0; ++a)
      for (int b = 0; b < n && left > 0; ++b) {
        const int i = (a + turn) % n;
        if (i == b) continue;
        for (int kind = 0; kind < 2; ++kind) {
          Order next = order;
          if (kind == 0) {
            if (b < i) continue;
            std::reverse(next.begin() + i, next.begin() + b + 1);
          } else {
            next.erase(next.begin() + i);
            next.insert(next.begin() + b, order[ix(i)]);
          }
          --left;
          const Weight w = weigh(joints, next, closed);
          if (!(w < now)) continue;
          now = w;
          order.swap(next);
          better = true;
          if (no_bad && now[0] == 0) return;
        }
      }
  }
}

Order best_by_descent(const Joints& joints, int n, bool closed, Random& random, std::int64_t weighings) {
  Order best(ix(n));
  std::iota(best.begin(), best.end(), 0);
  Order order = best;
  for (std::int64_t left = weighings; left > 0;) {
    descend(joints, order, closed, random, left);
    if (weigh(joints, order, closed) < weigh(joints, best, closed)) best = order;
    for (int i = n - 1; i > 0; --i) std::swap(order[ix(i)], order[ix(random.below(i + 1))]);
    if (n <= 3) break;
  }
  return best;
}

/// Where bad joints are left: an order with the fewest there are, by the table while it is small enough, then
/// by branching. `exact`: there are none fewer.
Order fewest_bad(const Joints& joints, int n, bool closed, const Order& best, bool& exact) {
  const Grid<int>& bad = joints.back_to_back;
  exact = true;
  if (n <= tour_exact_most - (closed ? 0 : 1))
    return (closed ? least_cycle(n, bad) : least_path(n, bad)).order;
  if (n > tour_branch_most) {
    exact = false;
    return best;
  }
  constexpr std::int64_t trees = 6000;
  const BranchedTour found =
      closed ? branched_cycle(n, bad, best, trees) : branched_path(n, bad, best, trees);
  exact = found.proven();
  return found.tour.order;
}

/// A best order by descent, mended where bad joints are left.
Order best_order(const Joints& joints, int n, bool closed, Random& random, std::int64_t weighings,
                 bool& exact) {
  Order best = best_by_descent(joints, n, closed, random, weighings);
  const std::int64_t bad = weigh(joints, best, closed)[0];
  exact = bad == 0;
  if (exact) return best;
  Order fewest = fewest_bad(joints, n, closed, best, exact);
  if (weigh(joints, fewest, closed)[0] == bad) return best;
  std::int64_t left = weighings / 4;
  descend(joints, fewest, closed, random, left);
  return fewest;
}

}  // namespace

std::vector<StationIndex> first_ring_order(const Problem& p, Random& random) {
  const Joints joints(p);
  Order order(ix(p.stations));
  std::iota(order.begin(), order.end(), 0);
  for (int i = p.stations - 1; i > 0; --i) std::swap(order[ix(i)], order[ix(random.below(i + 1))]);
  std::int64_t left = 200'000;
  descend(joints, order, true, random, left, true);
  return order;
}

RingOrders find_ring_orders(const Problem& p, Random& random) {
  const Joints joints(p);
  const int n = p.stations;
  RingOrders out;
  const std::int64_t weighings = std::max<std::int64_t>(2000, 600'000 / n);
  const auto take = [&](Order order) {
    for (const RingOrder& known : out.list)
      if (known.order == order) return;
    const std::int64_t bad = weigh(joints, order, true)[0];
    out.list.push_back({std::move(order), bad});
  };
  take(best_order(joints, n, true, random, weighings, out.exact));
  if (out.list.front().bad > 0) {
    bool exact = false;
    take(best_order(joints, n, false, random, weighings, exact));
  }
  return out;
}

}  // namespace floorwheel
