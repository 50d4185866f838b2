// SPDX-License-Identifier: GPL-3.0-or-later
// Rows still possible are kept as bits, cheapest first, so that the first bit bounds a member's cost. Placing
// a row strikes out the rows of others that no longer fit: no room, no units, rule 5. Members alike take
// rows in rising order.
#include "scheduler/rotation/exact.h"

#include <algorithm>
#include <bit>

#include "scheduler/rotation/engine.h"

namespace floorwheel {
namespace {

using Bits = std::vector<std::uint64_t>;

bool pair_holds(const Problem& p, int a, const Row& one, int b, const Row& other, bool together) {
  for (int t = p.from; t < p.slots; ++t) {
    const StationIndex s = one[ix(t)];
    const StationIndex u = other[ix(t)];
    if (!together) {
      if (s != nowhere && s == u) return false;
      continue;
    }
    if (s == u || !p.present(a, t) || !p.present(b, t)) continue;
    if (s != nowhere && u != nowhere) return false;
    const Row& waits = s == nowhere ? one : other;
    if (std::find(waits.begin(), waits.end(), s == nowhere ? u : s) != waits.end()) return false;
  }
  return true;
}

class Exhaustive {
 public:
  Exhaustive(const Problem& p, const RowLists& lists, int leading, const Cost& floor, Incumbent& best,
             std::int64_t& steps)
      : p_(p), lists_(lists), floor_(floor), best_(best), steps_(steps), sheet_(p) {
    const auto order = ranking(p);
    for (int i = 0; i < leading; ++i) compared_.push_back(order[ix(i)]);
    placed_.assign(ix(p.members), 0);
    for (int m = 0; m < p.members; ++m) {
      const std::size_t words = (lists[ix(m)].size() + 63) / 64;
      using_.emplace_back(ix(p.stations * p.slots), Bits(words, 0));
      Bits all(words, 0);
      for (std::size_t r = 0; r < lists[ix(m)].size(); ++r) {
        all[r / 64] |= std::uint64_t{1} << r % 64;
        for (int t = p.from; t < p.slots; ++t)
          if (const StationIndex s = lists[ix(m)][r].row[ix(t)]; s != nowhere)
            using_.back()[cell(s, t)][r / 64] |= std::uint64_t{1} << r % 64;
      }
      left_.push_back(std::move(all));
    }
    find_alike();
  }

  bool run() {
    if (!less(floor_, best_.cost)) return true;
    return descend(0, Cost{});
  }

 private:
  std::size_t cell(int s, int t) const { return ix(s * p_.slots + t); }

  bool less(const Cost& a, const Cost& b) const {
    for (Component c : compared_)
      if (a[c] != b[c]) return a[c] < b[c];
    return false;
  }

  bool alike(int a, int b) const {
    if (p_.teams[ix(p_.team_of[ix(a)])].size() > 1 || p_.teams[ix(p_.team_of[ix(b)])].size() > 1)
      return false;
    if (!p_.foes[ix(a)].empty() || !p_.foes[ix(b)].empty()) return false;
    if (lists_[ix(a)].size() != lists_[ix(b)].size()) return false;
    for (int s = 0; s < p_.stations; ++s)
      if (p_.work(a, s).load_hg != p_.work(b, s).load_hg) return false;
    return std::equal(
        lists_[ix(a)].begin(), lists_[ix(a)].end(), lists_[ix(b)].begin(),
        [](const PricedRow& x, const PricedRow& y) { return x.row == y.row && x.cost == y.cost; });
  }

  void find_alike() {
    after_.assign(ix(p_.members), -1);
    before_.assign(ix(p_.members), -1);
    for (int m = 0; m < p_.members; ++m)
      for (int other = m + 1; other < p_.members; ++other)
        if (alike(m, other)) {
          after_[ix(m)] = other;
          before_[ix(other)] = m;
          break;
        }
  }

  static int first_bit(const Bits& bits) {
    for (std::size_t w = 0; w < bits.size(); ++w)
      if (bits[w]) return static_cast<int>(w) * 64 + std::countr_zero(bits[w]);
    return -1;
  }

  /// The member to place next: the one with the fewest rows left, among alike the first.
  int next_member() const {
    int best = -1;
    int fewest = 0;
    for (int m = 0; m < p_.members; ++m) {
      if (placed_[ix(m)] || (before_[ix(m)] >= 0 && !placed_[ix(before_[ix(m)])])) continue;
      int count = 0;
      for (std::uint64_t w : left_[ix(m)]) count += std::popcount(w);
      if (best < 0 || count < fewest) {
        best = m;
        fewest = count;
      }
    }
    return best;
  }

  /// What the members still to place cost at least; false: one has no row left.
  bool rest(int except, Cost& sum) const {
    for (int m = 0; m < p_.members; ++m) {
      if (placed_[ix(m)] || m == except) continue;
      const int r = first_bit(left_[ix(m)]);
      if (r < 0) return false;
      add(sum, lists_[ix(m)][ix(r)].cost);
    }
    count_places(except, sum);
    return true;
  }

  /// Where the places left cannot take the visits hoped for, more is missed, at best evenly.
  void count_places(int except, Cost& sum) const {
    std::int64_t wanted = 0;
    std::int64_t forced = 0;
    std::int64_t members = 0;
    std::int64_t hoped = 0;
    for (int m = 0; m < p_.members; ++m) {
      if (placed_[ix(m)] || m == except) continue;
      ++members;
      wanted += p_.visits_wanted(m) - p_.visits_made(m);
      forced += p_.forced_missed(m);
      hoped += lists_[ix(m)][ix(first_bit(left_[ix(m)]))].cost[Component::missed];
    }
    if (members == 0) return;
    std::int64_t can = 0;
    for (int t = p_.from; t < p_.slots; ++t) {
      std::int64_t here = 0;
      for (int m = 0; m < p_.members; ++m)
        if (!placed_[ix(m)] && m != except && p_.present(m, t)) ++here;
      std::int64_t places = 0;
      for (int s = 0; s < p_.stations; ++s) places += std::max(0, sheet_.room(s, t));
      can += std::min(here, places);
    }
    const std::int64_t missed = wanted - can;
    if (missed <= hoped) return;
    const Cost placed_cost = placed_cost_;
    sum = placed_cost;
    sum[Component::missed] += missed;
    sum[Component::uneven] += least_squares(std::max<std::int64_t>(0, missed - forced), members);
  }

  bool descend(int depth, const Cost& so_far) {
    if (depth == p_.members) {
      finish(so_far);
      return true;
    }
    const int m = next_member();
    const Bits mine = left_[ix(m)];
    for (std::size_t w = 0; w < mine.size(); ++w)
      for (std::uint64_t bits = mine[w]; bits; bits &= bits - 1) {
        const std::size_t r = w * 64 + ix(std::countr_zero(bits));
        if (--steps_ < 0) return false;
        const PricedRow& row = lists_[ix(m)][r];
        Cost cost = so_far;
        add(cost, row.cost);
        placed_cost_ = cost;
        Cost bound = cost;
        if (!rest(m, bound)) return true;
        if (!less(bound, best_.cost)) return true;  // rows come in rising order
        const std::vector<Bits> saved = left_;
        place(m, row.row, static_cast<int>(r));
        placed_cost_ = cost;
        bound = cost;
        const bool ended = !rest(-1, bound) || !less(bound, best_.cost) || descend(depth + 1, cost);
        unplace(m);
        left_ = saved;
        if (!ended) return false;
        if (!less(floor_, best_.cost)) return true;
      }
    return true;
  }

  void finish(const Cost& so_far) {
    Cost cost = so_far;
    if (p_.has_loads)
      for (int s = 0; s < p_.stations; ++s)
        for (int t = 0; t + 1 < p_.slots; ++t) cost[Component::reload_hg] += price_reload(p_, sheet_, s, t);
    if (!less(cost, best_.cost)) return;
    best_.cost = cost;
    best_.rows = sheet_.rows();
  }

  void place(int m, const Row& row, int index) {
    placed_[ix(m)] = 1;
    sheet_.set_row(m, row.data());
    for (int t = p_.from; t < p_.slots; ++t) {
      const StationIndex mine = row[ix(t)];
      if (mine == nowhere) continue;
      for (int s = 0; s < p_.stations; ++s)
        if (p_.open(s, t) && sheet_.room(s, t) < 1) strike(s, t);
    }
    for (int other = 0; other < p_.members; ++other) {
      if (placed_[ix(other)]) continue;
      if (contains(p_.mates[ix(m)], other)) strike_pair(m, row, other, true);
      if (contains(p_.foes[ix(m)], other)) strike_pair(m, row, other, false);
    }
    if (const int next = after_[ix(m)]; next >= 0) {
      Bits& bits = left_[ix(next)];
      for (std::size_t w = 0; w < ix(index) / 64; ++w) bits[w] = 0;
      bits[ix(index) / 64] &= ~std::uint64_t{0} << ix(index) % 64;
    }
  }

  void unplace(int m) {
    placed_[ix(m)] = 0;
    sheet_.clear(m);
  }

  static bool contains(const std::vector<int>& list, int m) {
    return std::find(list.begin(), list.end(), m) != list.end();
  }

  void strike(int s, int t) {
    for (int m = 0; m < p_.members; ++m) {
      if (placed_[ix(m)]) continue;
      const Bits& out = using_[ix(m)][cell(s, t)];
      for (std::size_t w = 0; w < out.size(); ++w) left_[ix(m)][w] &= ~out[w];
    }
  }

  void strike_pair(int m, const Row& row, int other, bool together) {
    Bits& bits = left_[ix(other)];
    for (std::size_t w = 0; w < bits.size(); ++w)
      for (std::uint64_t some = bits[w]; some; some &= some - 1) {
        const std::size_t r = w * 64 + ix(std::countr_zero(some));
        if (!pair_holds(p_, m, row, other, lists_[ix(other)][r].row, together))
          bits[w] &= ~(std::uint64_t{1} << r % 64);
      }
  }

  const Problem& p_;
  const RowLists& lists_;
  const Cost floor_;
  Incumbent& best_;
  std::int64_t& steps_;
  Sheet sheet_;
  std::vector<Component> compared_;
  std::vector<std::uint8_t> placed_;
  Cost placed_cost_;
  std::vector<std::vector<Bits>> using_;  // [member][cell] rows that work there
  std::vector<Bits> left_;                // [member] rows still possible
  std::vector<int> after_, before_;       // the next and the last member alike
};

}  // namespace

bool search_all(const Problem& p, const RowLists& lists, int leading, const Cost& floor, Incumbent& best,
                std::int64_t& steps) {
  return Exhaustive(p, lists, leading, floor, best, steps).run();
}

}  // namespace floorwheel
