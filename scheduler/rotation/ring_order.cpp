// SPDX-License-Identifier: GPL-3.0-or-later
// Descent from several starts; where that leaves a bad joint, the
// exact table of tour.h or the branching of tour_branch.h says what is best.
#include "scheduler/rotation/ring_order.h"

#include <algorithm>
#include <numeric>

#include "scheduler/rotation/ring_descent.h"
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
constexpr int shuffled_most = 20;  // stations; more than that start again near the best

void shuffle(Order& order, Random& random) {
  for (int i = static_cast<int>(order.size()) - 1; i > 0; --i)
    std::swap(order[ix(i)], order[ix(random.below(i + 1))]);
}

/// Two neighbouring parts change places: what turning and moving does not undo at once (Martin, Otto and
/// Felten 1991, from memory).
void kick(Order& order, Random& random) {
  const int n = static_cast<int>(order.size());
  const int part = std::min(n / 3, 12);
  const int a = random.below(n - 2 * part);
  const int b = a + 1 + random.below(part);
  const int c = b + 1 + random.below(part);
  std::rotate(order.begin() + a, order.begin() + b, order.begin() + c);
}

Order best_by_descent(const Joints& joints, int n, bool closed, Random& random, std::int64_t moves) {
  Order best(ix(n));
  std::iota(best.begin(), best.end(), 0);
  Order order = best;
  OrderWeight least = weigh(joints, best, closed);
  for (std::int64_t left = moves; left > 0;) {
    const OrderWeight w = descend(joints, order, closed, random, left);
    if (w < least) {
      least = w;
      best = order;
    }
    if (n <= 3) break;
    if (n <= shuffled_most) {
      shuffle(order, random);
    } else {
      order = best;
      kick(order, random);
    }
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
Order best_order(const Joints& joints, int n, bool closed, Random& random, std::int64_t moves, bool& exact) {
  Order best = best_by_descent(joints, n, closed, random, moves);
  const std::int64_t bad = weigh(joints, best, closed)[0];
  exact = bad == 0;
  if (exact) return best;
  Order fewest = fewest_bad(joints, n, closed, best, exact);
  if (weigh(joints, fewest, closed)[0] == bad) return best;
  std::int64_t left = moves / 4;
  descend(joints, fewest, closed, random, left);
  return fewest;
}

}  // namespace

std::vector<StationIndex> first_ring_order(const Problem& p, Random& random) {
  const Joints joints(p);
  Order order(ix(p.stations));
  std::iota(order.begin(), order.end(), 0);
  shuffle(order, random);
  std::int64_t left = 200'000;
  descend(joints, order, true, random, left, true);
  return order;
}

RingOrders find_ring_orders(const Problem& p, Random& random) {
  const Joints joints(p);
  const int n = p.stations;
  RingOrders out;
  const std::int64_t moves = std::min<std::int64_t>(250 * std::int64_t{n} * n, 1'000'000);
  const auto take = [&](Order order) {
    for (const RingOrder& known : out.list)
      if (known.order == order) return;
    const std::int64_t bad = weigh(joints, order, true)[0];
    out.list.push_back({std::move(order), bad});
  };
  take(best_order(joints, n, true, random, moves, out.exact));
  if (out.list.front().bad > 0) {
    bool exact = false;
    take(best_order(joints, n, false, random, moves, exact));
  }
  return out;
}

}  // namespace floorwheel
