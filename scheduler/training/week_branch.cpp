// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/week_branch.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "scheduler/training/week_cuts.h"
#include "scheduler/training/week_program.h"
#include "scheduler/training/week_simplex.h"

namespace floorwheel::training {
namespace {

struct Split {
  std::size_t variable;
  int low, high;
};

struct Node {
  std::vector<Split> path;
  std::int64_t bound = 0;
  int turns = 0;  // times the farther side was taken
};

/// The lower bound first, then the fewer turns away from what the program proposed (limited discrepancy:
/// Harvey and Ginsberg 1995, from memory), then the one opened last.
struct Later {
  bool operator()(const Node& a, const Node& b) const {
    if (a.bound != b.bound) return a.bound > b.bound;
    if (a.turns != b.turns) return a.turns > b.turns;
    return a.path.size() < b.path.size();
  }
};

constexpr double whole_enough = 1e-5;

class Brancher {
 public:
  Brancher(WeekBest& best, int goal, std::int64_t work_most)
      : best_(best),
        goal_(goal),
        held_(best.any() ? best.values() : WeekValues{}),
        week_(program_of(best.floor(), goal, held_)),
        cut_work_(goal == no_goal ? 0 : tighten(week_.program, work_most / 4)),
        simplex_(week_.program) {}

  BranchAnswer run(std::int64_t work_most) {
    open_.push_back({});
    while (!open_.empty() && work() < work_most && !ended_early()) {
      const Node node = take();
      if (node.bound < to_beat()) look_at(node);
    }
    std::int64_t bound = std::min(to_beat(), unresolved_);
    for (const Node& n : open_) bound = std::min(bound, n.bound);
    const bool all = open_.empty() && unresolved_ >= to_beat();
    return {bound, !ended_early() && (all || bound >= to_beat()), work()};
  }

 private:
  [[nodiscard]] std::int64_t work() const { return cut_work_ + simplex_.work(); }
  /// The best plan's value of the goal; without a goal 0 once there is a plan.
  [[nodiscard]] std::int64_t to_beat() const {
    if (!best_.any()) return BoundedSimplex::nothing;
    return goal_ == no_goal ? 0 : best_.values()[static_cast<std::size_t>(goal_)];
  }
  [[nodiscard]] bool ended_early() const {
    if (!best_.any()) return false;
    for (int g = 0; g < goal_; ++g)
      if (best_.values()[static_cast<std::size_t>(g)] != held_[static_cast<std::size_t>(g)]) return true;
    return false;
  }
  [[nodiscard]] std::int64_t in_steps(std::int64_t bound) const {
    return bound <= 0 ? 0 : (bound + week_.step - 1) / week_.step * week_.step;
  }

  /// The child just split off as long as there is one, else the most promising of all.
  Node take() {
    if (!dives_) std::pop_heap(open_.begin(), open_.end(), Later{});
    dives_ = false;
    Node node = std::move(open_.back());
    open_.pop_back();
    return node;
  }

  void look_at(const Node& node) {
    low_ = week_.program.low;
    high_ = week_.program.high;
    for (const Split& s : node.path) {
      low_[s.variable] = s.low;
      high_[s.variable] = s.high;
    }
    const double enough = static_cast<double>(to_beat()) - week_.step + 0.01;
    simplex_.solve(low_, high_, enough);
    const std::int64_t proven = simplex_.proven();
    if (proven == BoundedSimplex::nothing) return;
    const std::int64_t bound = std::max(node.bound, in_steps(proven));
    if (bound >= to_beat()) return;
    const Offer answer = offer();
    if (bound >= to_beat()) return;
    if (const auto v = most_broken()) return split(node, bound, *v);
    if (const auto v = undecided()) return split_off(node, bound, *v);
    if (answer == Offer::not_known) unresolved_ = std::min(unresolved_, bound);
  }

  /// Offers the node's exercises where they are whole.
  Offer offer() {
    WeekCounts counts;
    for (const auto& columns : week_.column) {
      auto& row = counts.emplace_back();
      for (const int column : columns) {
        const auto v = static_cast<std::size_t>(column);
        const double x = low_[v] == high_[v] ? low_[v] : simplex_.value(v);
        row.push_back(static_cast<int>(std::lround(x)));
        if (std::abs(x - row.back()) > whole_enough) return Offer::no_ring;
      }
    }
    return best_.offer(counts);
  }

  std::optional<std::size_t> most_broken() const {
    std::optional<std::size_t> found;
    double most = whole_enough;
    int rank = 1 << 20;
    for (std::size_t v = 0; v < week_.program.rank.size(); ++v) {
      const int r = week_.program.rank[v];
      if (r == 0 || r > rank || low_[v] == high_[v]) continue;
      const double x = simplex_.value(v);
      const double off = std::abs(x - std::round(x));
      if (off <= whole_enough || x < low_[v] || x > high_[v]) continue;
      if (r == rank && off <= most) continue;
      rank = r;
      most = off;
      found = v;
    }
    return found;
  }

  std::optional<std::size_t> undecided() const {
    for (const auto& columns : week_.column)
      for (const int column : columns)
        if (const auto v = static_cast<std::size_t>(column); low_[v] < high_[v]) return v;
    return {};
  }

  /// The nearest child is opened last and looked at next.
  void open(const Node& parent, std::int64_t bound, Split s, bool nearest) {
    if (s.low > s.high) return;
    Node& child = open_.emplace_back(parent);
    child.bound = bound;
    child.path.push_back(s);
    child.turns += nearest ? 0 : 1;
    dives_ = nearest;
    if (!nearest) std::push_heap(open_.begin(), open_.end(), Later{});
  }

  void split(const Node& node, std::int64_t bound, std::size_t v) {
    const double x = simplex_.value(v);
    const int below = static_cast<int>(std::floor(x));
    const Split down{v, low_[v], below}, up{v, below + 1, high_[v]};
    const bool up_first = x - below > 0.5;
    open(node, bound, up_first ? down : up, false);
    open(node, bound, up_first ? up : down, true);
  }

  void split_off(const Node& node, std::int64_t bound, std::size_t v) {
    const int x = std::clamp(static_cast<int>(std::lround(simplex_.value(v))), low_[v], high_[v]);
    open(node, bound, {v, low_[v], x - 1}, false);
    open(node, bound, {v, x + 1, high_[v]}, false);
    open(node, bound, {v, x, x}, true);
  }

  WeekBest& best_;
  int goal_;
  WeekValues held_;
  WeekProgram week_;
  std::int64_t cut_work_;
  BoundedSimplex simplex_;
  std::vector<Node> open_;  // a heap by Later, but for the last while dives_
  bool dives_ = true;
  std::vector<int> low_, high_;
  std::int64_t unresolved_ = BoundedSimplex::nothing;
};

}  // namespace

BranchAnswer branch(WeekBest& best, int goal, std::int64_t work_most) {
  return Brancher(best, goal, work_most).run(work_most);
}

}  // namespace floorwheel::training
