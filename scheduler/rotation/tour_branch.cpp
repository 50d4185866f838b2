// SPDX-License-Identifier: GPL-3.0-or-later
// Depth-first branching. The bound of a node is the heaviest spanning 1-tree over vertex penalties that a
// short ascent finds (Held and Karp 1970), in whole numbers; a node is split at a vertex of degree above two
// (Volgenant and Jonker 1982).
#include "scheduler/rotation/tour_branch.h"

#include <algorithm>
#include <array>
#include <limits>

namespace floorwheel {
namespace {

using Value = std::int64_t;
constexpr Value scale = 4096;  // a weight in units of penalties
constexpr Value never = std::numeric_limits<Value>::max() / 8;

enum class Edge : std::uint8_t { free, in, out };

/// What is decided so far. Kept closed under what it implies: two edges in at a vertex put the others out,
/// two left at a vertex put both in, and no cycle closes before it has all vertices.
class Decisions {
 public:
  explicit Decisions(int n) : n_(n), state_(n, n, Edge::free) {
    for (int v = 0; v < n; ++v) state_(v, v) = Edge::out;
    in_.assign(ix(n), 0);
    left_.assign(ix(n), n - 1);
    end_.resize(ix(n));
    length_.assign(ix(n), 1);
    for (int v = 0; v < n; ++v) end_[ix(v)] = v;
  }

  [[nodiscard]] Edge at(int a, int b) const { return state_(a, b); }

  /// False: there is no tour any more.
  bool put_in(int a, int b) {
    if (state_(a, b) == Edge::in) return true;
    if (state_(a, b) == Edge::out || in_[ix(a)] == 2 || in_[ix(b)] == 2) return false;
    if (end_[ix(a)] == b && length_[ix(a)] < n_) return false;  // closes too early
    state_(a, b) = state_(b, a) = Edge::in;
    ++in_[ix(a)];
    ++in_[ix(b)];
    const int tail = end_[ix(a)];
    const int head = end_[ix(b)];
    const int length = length_[ix(a)] + length_[ix(b)];
    if (tail != b) {  // two pieces become one
      end_[ix(tail)] = head;
      end_[ix(head)] = tail;
      length_[ix(tail)] = length_[ix(head)] = length;
      if (length < n_ && length > 2 && !put_out(tail, head)) return false;
    }
    for (const int v : {a, b})
      if (in_[ix(v)] == 2)
        for (int u = 0; u < n_; ++u)
          if (state_(v, u) == Edge::free && !put_out(v, u)) return false;
    return true;
  }

  bool put_out(int a, int b) {
    if (state_(a, b) == Edge::out) return true;
    if (state_(a, b) == Edge::in) return false;
    state_(a, b) = state_(b, a) = Edge::out;
    --left_[ix(a)];
    --left_[ix(b)];
    for (const int v : {a, b}) {
      if (left_[ix(v)] < 2) return false;
      if (left_[ix(v)] == 2)
        for (int u = 0; u < n_; ++u)
          if (state_(v, u) == Edge::free && !put_in(v, u)) return false;
    }
    return true;
  }

 private:
  int n_;
  Grid<Edge> state_;
  std::vector<int> in_, left_;     // edges in and not out, by vertex
  std::vector<int> end_, length_;  // of the piece of path that a vertex ends
};

struct OneTree {
  Value weight = 0;  // without what the penalties add
  std::vector<int> degree;
  std::vector<std::array<int, 2>> edges;
};

class Branching {
 public:
  Branching(int n, const Grid<int>& weight, std::vector<int> start, std::int64_t steps)
      : n_(n), weight_(weight), steps_(steps) {
    best_.order = std::move(start);
    best_.weight = weigh(best_.order);
  }

  BranchedTour run() {
    std::vector<Value> penalties(ix(n_), 0);
    const Decisions none(n_);
    lowest_open_ = never;
    look_at(none, penalties, 200 + 40 * n_, scale / 8, 0);
    const std::int64_t bound = lowest_open_ == never ? best_.weight : std::min(best_.weight, lowest_open_);
    return {best_, bound};
  }

 private:
  [[nodiscard]] std::int64_t weigh(const std::vector<int>& order) const {
    std::int64_t sum = weight_(order.back(), order.front());
    for (std::size_t i = 1; i < order.size(); ++i) sum += weight_(order[i - 1], order[i]);
    return sum;
  }

  [[nodiscard]] Value priced(const Decisions& d, const std::vector<Value>& pi, int a, int b) const {
    switch (d.at(a, b)) {
      case Edge::in:
        return -never / 1024;
      case Edge::out:
        return never / 1024;
      case Edge::free:
        break;
    }
    return scale * weight_(a, b) + pi[ix(a)] + pi[ix(b)];
  }

  /// The lightest spanning tree over all vertices but 0 (Prim), and the two lightest edges at 0.
  OneTree one_tree(const Decisions& d, const std::vector<Value>& pi) {
    OneTree tree;
    tree.degree.assign(ix(n_), 0);
    std::vector<Value> cost(ix(n_), std::numeric_limits<Value>::max());
    std::vector<int> from(ix(n_), -1);
    std::vector<std::uint8_t> reached(ix(n_), 0);
    const auto add = [&](int a, int b) {
      tree.edges.push_back({a, b});
      ++tree.degree[ix(a)];
      ++tree.degree[ix(b)];
      tree.weight += d.at(a, b) == Edge::out ? never / 1024 : scale * weight_(a, b) + pi[ix(a)] + pi[ix(b)];
    };
    for (int last = 1, done = 1; done < n_ - 1; ++done) {
      reached[ix(last)] = 1;
      int next = -1;
      for (int v = 1; v < n_; ++v) {
        if (reached[ix(v)]) continue;
        if (const Value w = priced(d, pi, last, v); w < cost[ix(v)]) {
          cost[ix(v)] = w;
          from[ix(v)] = last;
        }
        if (next < 0 || cost[ix(v)] < cost[ix(next)]) next = v;
      }
      add(from[ix(next)], next);
      last = next;
    }
    int first = 1;
    int second = 2;
    if (priced(d, pi, 0, second) < priced(d, pi, 0, first)) std::swap(first, second);
    for (int v = 3; v < n_; ++v) {
      if (priced(d, pi, 0, v) < priced(d, pi, 0, first)) {
        second = first;
        first = v;
      } else if (priced(d, pi, 0, v) < priced(d, pi, 0, second)) {
        second = v;
      }
    }
    add(0, first);
    add(0, second);
    for (const Value p : pi) tree.weight -= 2 * p;
    return tree;
  }

  static std::int64_t whole_up(Value scaled) {
    return scaled <= 0 ? -(-scaled / scale) : (scaled + scale - 1) / scale;
  }

  void take_if_tour(const OneTree& tree) {
    if (std::any_of(tree.degree.begin(), tree.degree.end(), [](int d) { return d != 2; })) return;
    std::vector<std::vector<int>> next(ix(n_));
    for (const auto& [a, b] : tree.edges) {
      next[ix(a)].push_back(b);
      next[ix(b)].push_back(a);
    }
    std::vector<int> order{0};
    for (int before = -1, now = 0; static_cast<int>(order.size()) < n_;) {
      const int step = next[ix(now)][0] == before ? next[ix(now)][1] : next[ix(now)][0];
      before = now;
      now = step;
      order.push_back(now);
    }
    if (const std::int64_t w = weigh(order); w < best_.weight) best_ = {w, std::move(order)};
  }

  /// Edges that no tour lighter than the best one can have go out. False: no tour is left.
  bool put_heavy_out(Decisions& d) const {
    for (int a = 0; a < n_; ++a)
      for (int b = 0; b < a; ++b)
        if (d.at(a, b) == Edge::free && weight_(a, b) >= best_.weight && !d.put_out(a, b)) return false;
    return true;
  }

  /// Raises the penalties of vertices with too many edges, lowers those with too few, keeping the best.
  /// `floor`: a bound from further up.
  void look_at(Decisions d, std::vector<Value> pi, int rounds, Value first_step, std::int64_t floor) {
    if (!put_heavy_out(d)) return;
    OneTree best_tree;
    std::vector<Value> best_pi = pi;
    Value highest = std::numeric_limits<Value>::min();
    std::vector<int> before(ix(n_), 2);  // degrees of the round before
    for (Value left = rounds; left > 0 && steps_ > 0; --left) {
      --steps_;
      OneTree tree = one_tree(d, pi);
      if (tree.weight > highest) {
        highest = tree.weight;
        best_pi = pi;
        best_tree = tree;
      }
      take_if_tour(tree);
      if (whole_up(highest) >= best_.weight) return;
      // Steps fall with the square of the rounds that are left. Where many edges weigh the same, one vertex
      // after the other has too many, so the round before counts as well.
      const Value step = 1 + first_step * left * left / (Value{rounds} * rounds);
      for (int v = 0; v < n_; ++v)
        pi[ix(v)] += step * (7 * (tree.degree[ix(v)] - 2) + 3 * (before[ix(v)] - 2)) / 10;
      before = tree.degree;
    }
    if (!best_tree.edges.empty()) floor = std::max(floor, whole_up(highest));
    if (floor >= best_.weight) return;
    if (best_tree.edges.empty() || steps_ <= 0) {
      lowest_open_ = std::min(lowest_open_, floor);
      return;
    }
    split(d, best_pi, best_tree, floor);
  }

  /// At the vertex of degree above two that has the most decided: two of its edges in; one in and the other
  /// out; the first out.
  void split(const Decisions& d, const std::vector<Value>& pi, const OneTree& tree, std::int64_t floor) {
    int at = -1;
    for (int v = 0; v < n_; ++v)
      if (tree.degree[ix(v)] > 2 && (at < 0 || tree.degree[ix(v)] < tree.degree[ix(at)])) at = v;
    if (at < 0) return;  // a tour, taken already
    std::vector<int> free;
    bool has_one = false;
    for (const auto& [a, b] : tree.edges)
      if (a == at || b == at) {
        const int other = a == at ? b : a;
        if (d.at(at, other) == Edge::free) free.push_back(other);
        if (d.at(at, other) == Edge::in) has_one = true;
      }
    if (free.empty()) {  // not looked into
      lowest_open_ = std::min(lowest_open_, floor);
      return;
    }
    std::sort(free.begin(), free.end(), [&](int a, int b) { return weight_(at, a) < weight_(at, b); });
    const int rounds = n_ + 10;
    const auto with = [&](auto decide) {
      if (Decisions next = d; decide(next)) look_at(std::move(next), pi, rounds, scale / 16, floor);
    };
    if (has_one || free.size() < 2) {
      with([&](Decisions& next) { return next.put_in(at, free[0]); });
    } else {
      with([&](Decisions& next) { return next.put_in(at, free[0]) && next.put_in(at, free[1]); });
      with([&](Decisions& next) { return next.put_in(at, free[0]) && next.put_out(at, free[1]); });
    }
    with([&](Decisions& next) { return next.put_out(at, free[0]); });
  }

  const int n_;
  const Grid<int>& weight_;
  std::int64_t steps_;
  Tour best_;
  std::int64_t lowest_open_ = never;  // bound of what was not looked into
};

}  // namespace

BranchedTour branched_cycle(int n, const Grid<int>& weight, std::vector<int> start, std::int64_t steps) {
  if (n < 4) {
    Tour tour{0, std::move(start)};
    if (n > 1)
      for (std::size_t i = 0; i < tour.order.size(); ++i)
        tour.weight += weight(tour.order[i], tour.order[(i + 1) % tour.order.size()]);
    return {tour, tour.weight};
  }
  return Branching(n, weight, std::move(start), steps).run();
}

BranchedTour branched_path(int n, const Grid<int>& weight, std::vector<int> start, std::int64_t steps) {
  Grid<int> closed(n + 1, n + 1, 0);  // one vertex more, at no distance from any
  for (int a = 0; a < n; ++a)
    for (int b = 0; b < n; ++b) closed(a, b) = weight(a, b);
  start.push_back(n);
  BranchedTour found = branched_cycle(n + 1, closed, std::move(start), steps);
  auto& order = found.tour.order;
  std::rotate(order.begin(), std::find(order.begin(), order.end(), n), order.end());
  order.erase(order.begin());
  return found;
}

}  // namespace floorwheel
