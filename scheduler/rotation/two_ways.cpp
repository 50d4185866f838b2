// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/two_ways.h"

#include <algorithm>

#include "scheduler/rotation/price.h"
#include "scheduler/rotation/ring_descent.h"

namespace floorwheel {
namespace {

using Order = std::vector<StationIndex>;

constexpr std::int64_t looks = 100'000;  // at joints, for one layout

/// Where somebody starts on the way and which way round.
struct Seat {
  int start = 0, step = 1;
  int idle = 0;
};

bool alike(const Problem& p) {
  if (p.is_repair || p.from > 0 || p.members == 0 || p.stations < 3) return false;
  for (int m = 0; m < p.members; ++m) {
    if (p.slots_present(m) != p.slots || static_cast<int>(p.required[ix(m)].size()) != p.stations)
      return false;
    if (!p.mates[ix(m)].empty() || !p.foes[ix(m)].empty()) return false;
    for (int s = 0; s < p.stations; ++s)
      if (p.work(m, s).primary != p.work(0, s).primary || p.work(m, s).assisting != p.work(0, s).assisting)
        return false;
  }
  return true;
}

/// The places of the way: the n stations in their order, then the waiting places.
class Way {
 public:
  Way(const Problem& p, int size, int most, int parity) : p_(p), size_(size), slots_(size * p.laps) {
    for (int start = 0; start < size; ++start) {
      Seat seat{start, start % 2 == parity ? 1 : -1};
      seat.idle = idle(seat);
      seats_.insert(seats_.end(), ix(most), seat);
    }
    std::stable_sort(seats_.begin(), seats_.end(),
                     [](const Seat& a, const Seat& b) { return a.idle < b.idle; });
    seats_.resize(ix(p.members));
    count();
  }

  [[nodiscard]] OrderWeight weigh(const Joints& joints, const Order& order) const {
    OrderWeight w{};
    const std::size_t n = order.size();
    for (std::size_t k = 0; k < n; ++k) {
      const int a = order[k];
      const int b = order[(k + 1) % n];
      w[0] += joints.back_to_back(a, b) * in_a_row_[k];
      w[1] += joints.short_rest(a, order[(k + 2) % n]) * two_on_[k];
      w[2] += joints.assist(a, b) * in_a_row_[k];
      w[3] += joints.walk_cm(a, b) * walked_[k];
    }
    return w;
  }

  [[nodiscard]] Sheet fill(const Order& order) const {
    Sheet sheet(p_);
    for (int m = 0; m < p_.members; ++m)
      for (int t = 0; t < slots_; ++t)
        if (const int k = place(seats_[ix(m)], t); k >= 0) sheet.put(m, t, order[ix(k)]);
    return sheet;
  }

 private:
  /// Index into the order of stations in slot t, -1: waits.
  [[nodiscard]] int place(const Seat& seat, int t) const {
    const int at = (seat.start + seat.step * t) % size_;
    const int place = at < 0 ? at + size_ : at;
    return place < p_.stations ? place : -1;
  }

  [[nodiscard]] int idle(const Seat& seat) const {
    int waits = 0;
    int before_last = 0;
    for (int t = 0; t < slots_; ++t)
      if (place(seat, t) < 0)
        ++waits;
      else
        before_last = waits;
    return before_last;
  }

  /// By how many each joint is walked, and worked on both sides in a row; worked two slots apart.
  void count() {
    const int n = p_.stations;
    for (auto* list : {&walked_, &in_a_row_, &two_on_}) list->assign(ix(n), 0);
    const auto between = [&](int one, int other, int steps) {
      return (one + steps) % n == other ? one : other;
    };
    for (const Seat& seat : seats_) {
      int before = -1;
      int slot = -1;
      for (int t = 0; t < slots_; ++t) {
        const int k = place(seat, t);
        if (k < 0) continue;
        if (before >= 0) {
          const auto joint = ix(between(before, k, 1));
          ++walked_[joint];
          if (slot == t - 1) ++in_a_row_[joint];
        }
        if (const int two = t >= 2 ? place(seat, t - 2) : -1; two >= 0 && slot == t - 1)
          ++two_on_[ix(between(two, k, 2))];
        before = k;
        slot = t;
      }
    }
  }

  const Problem& p_;
  const int size_, slots_;
  std::vector<Seat> seats_;  // [member]
  std::vector<std::int64_t> walked_, in_a_row_, two_on_;
};

/// First-improvement descent by turning, moving and exchanging.
void descend(const Way& way, const Joints& joints, Order& order, std::int64_t& left, Random& random) {
  const int n = static_cast<int>(order.size());
  OrderWeight now = way.weigh(joints, order);
  for (bool better = true; better && left > 0;) {
    better = false;
    const int turn = random.below(n);
    for (int a = 0; a < n; ++a)
      for (int b = 0; b < n && left > 0; ++b) {
        const int i = (a + turn) % n;
        if (i == b) continue;
        for (int kind = 0; kind < 3; ++kind) {
          if (kind != 1 && b < i) continue;
          Order next = order;
          if (kind == 0) {
            std::reverse(next.begin() + i, next.begin() + b + 1);
          } else if (kind == 1) {
            next.erase(next.begin() + i);
            next.insert(next.begin() + b, order[ix(i)]);
          } else {
            std::swap(next[ix(i)], next[ix(b)]);
          }
          left -= n;
          const OrderWeight w = way.weigh(joints, next);
          if (!(w < now)) continue;
          now = w;
          order.swap(next);
          better = true;
        }
      }
  }
}

/// From every turn of the ring, since it matters which joints lie at the waiting places; then from the best
/// with some stations exchanged.
Order best_order(const Way& way, const Joints& joints, const Order& ring, Random& random) {
  const int n = static_cast<int>(ring.size());
  Order best = ring;
  std::int64_t left = looks;
  for (int i = 0; left > 0; ++i) {
    Order order = i < n ? ring : best;
    if (i < n) std::rotate(order.begin(), order.begin() + i, order.end());
    for (int k = i < n ? 0 : 3; k > 0; --k) std::swap(order[ix(random.below(n))], order[ix(random.below(n))]);
    descend(way, joints, order, left, random);
    if (way.weigh(joints, order) < way.weigh(joints, best)) best = order;
  }
  return best;
}

}  // namespace

std::optional<Sheet> two_ways(const Problem& p, const std::vector<StationIndex>& ring, Random& random) {
  if (!alike(p)) return std::nullopt;
  const int most = p.places_always();
  if (most < 1) return std::nullopt;
  int size = std::max(p.stations, (p.members + most - 1) / most);
  size += size % 2;
  if (size * p.laps > p.slots) return std::nullopt;
  const Joints joints(p);
  std::optional<Sheet> best;
  Cost least;
  for (const int parity : {0, 1}) {
    const Way way(p, size, most, parity);
    Sheet sheet = way.fill(best_order(way, joints, ring, random));
    if (!sheet.rooms_hold()) continue;
    const Cost cost = price(p, sheet);
    if (best && !(cost < least)) continue;
    best = std::move(sheet);
    least = cost;
  }
  return best;
}

}  // namespace floorwheel
