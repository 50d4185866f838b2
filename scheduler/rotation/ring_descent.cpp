// SPDX-License-Identifier: GPL-3.0-or-later
// A move is an order read through other positions; the joints and pairs two apart that it does not touch are
// the same ones before and after.
#include "scheduler/rotation/ring_descent.h"

#include <algorithm>

namespace floorwheel {
namespace {

using Order = std::vector<int>;

/// Positions, each once, in the range that the order has joints or pairs at.
class Places {
 public:
  Places(int n, bool closed) : n_(n), closed_(closed) {}
  /// The place of a joint (span 1) or of a pair two apart (span 2) that begins at i, if there is one.
  void add(int i, int span) {
    if (closed_)
      i = (i + n_) % n_;
    else if (i < 0 || i + span >= n_)
      return;
    if (std::find(at_.begin(), at_.begin() + size_, i) == at_.begin() + size_) at_[ix(size_++)] = i;
  }
  [[nodiscard]] const int* begin() const { return at_.data(); }
  [[nodiscard]] const int* end() const { return at_.data() + size_; }

 private:
  const int n_;
  const bool closed_;
  std::array<int, 6> at_{};
  int size_ = 0;
};

class Descent {
 public:
  Descent(const Joints& joints, Order& order, bool closed)
      : joints_(joints),
        order_(order),
        n_(static_cast<int>(order.size())),
        closed_(closed),
        now_(weigh(joints, order, closed)) {}

  [[nodiscard]] const OrderWeight& now() const { return now_; }

  /// Turns the part from i to b >= i round; true and done where that is better.
  bool turn(int i, int b) {
    const auto turned = [&](int k) { return order_[ix(k < i || k > b ? k : i + b - k)]; };
    Places joints(n_, closed_), pairs(n_, closed_);
    for (int k : {i - 1, b}) joints.add(k, 1);
    for (int k : {i - 2, i - 1, b - 1, b}) pairs.add(k, 2);
    if (!better(joints, pairs, joints, pairs, turned)) return false;
    std::reverse(order_.begin() + i, order_.begin() + b + 1);
    return true;
  }

  /// Takes the station at i out and puts it in at b.
  bool move(int i, int b) {
    const auto moved = [&](int k) {
      if (k == b) return order_[ix(i)];
      if (i < b) return order_[ix(k < i || k > b ? k : k + 1)];
      return order_[ix(k < b || k > i ? k : k - 1)];
    };
    const int gap = i < b ? b : b - 1;      // the joint that it comes into, before
    const int closing = i < b ? i - 1 : i;  // the joint that it leaves behind, after
    Places joints(n_, closed_), pairs(n_, closed_), then(n_, closed_), pairs_then(n_, closed_);
    for (int k : {i - 1, i, gap}) joints.add(k, 1);
    for (int k : {i - 2, i - 1, i, gap - 1, gap}) pairs.add(k, 2);
    for (int k : {b - 1, b, closing}) then.add(k, 1);
    for (int k : {b - 2, b - 1, b, closing - 1, closing}) pairs_then.add(k, 2);
    if (!better(joints, pairs, then, pairs_then, moved)) return false;
    const auto at = order_.begin();
    if (i < b)
      std::rotate(at + i, at + i + 1, at + b + 1);
    else
      std::rotate(at + b, at + i, at + i + 1);
    return true;
  }

 private:
  template <typename At>
  void add(OrderWeight& w, std::int64_t sign, const Places& joints, const Places& pairs, const At& at) const {
    for (int k : joints) {
      const int a = at(k);
      const int b = at((k + 1) % n_);
      w[0] += sign * joints_.back_to_back(a, b);
      w[2] += sign * joints_.assist(a, b);
      w[3] += sign * joints_.walk_cm(a, b);
    }
    for (int k : pairs) w[1] += sign * joints_.short_rest(at(k), at((k + 2) % n_));
  }

  template <typename At>
  bool better(const Places& joints, const Places& pairs, const Places& joints_then, const Places& pairs_then,
              const At& then) {
    OrderWeight w = now_;
    add(w, -1, joints, pairs, [&](int k) { return order_[ix(k)]; });
    add(w, 1, joints_then, pairs_then, then);
    if (!(w < now_)) return false;
    now_ = w;
    return true;
  }

  const Joints& joints_;
  Order& order_;
  const int n_;
  const bool closed_;
  OrderWeight now_;
};

}  // namespace

OrderWeight weigh(const Joints& joints, const Order& order, bool closed) {
  OrderWeight w{};
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

OrderWeight descend(const Joints& joints, Order& order, bool closed, Random& random, std::int64_t& left,
                    bool no_bad) {
  const int n = static_cast<int>(order.size());
  Descent descent(joints, order, closed);
  for (bool better = true; better && left > 0;) {
    better = false;
    const int start = random.below(n);
    for (int a = 0; a < n && left > 0; ++a)
      for (int b = 0; b < n && left > 0; ++b) {
        if (no_bad && descent.now()[0] == 0) return descent.now();
        const int i = (a + start) % n;
        if (i == b) continue;
        --left;
        if (i < b && descent.turn(i, b)) better = true;
        if (descent.move(i, b)) better = true;
      }
  }
  return descent.now();
}

}  // namespace floorwheel
