// SPDX-License-Identifier: GPL-3.0-or-later
// Prices go on rising inside: where every row that takes a limit costs something, so much of it is the
// limit's whatever is chosen, and is paid for all its room at once (dual ascent; Fisher and Kedia 1990, from
// memory). What is left over of the budget strikes out rows, and children inherit both.
#include "scheduler/rotation/row_packing.h"

#include <algorithm>
#include <bit>
#include <numeric>

#include "scheduler/rotation/grid.h"

namespace floorwheel {
namespace {

constexpr std::int64_t steps_unasked = 4'096;  // between questions whether to stop
constexpr std::int64_t steps_in_turn = 6'000;  // for a row of the first kind, at first

class Packer {
 public:
  Packer(const Packing& p, std::int64_t& steps, const std::function<bool()>& stop, std::vector<int>* without)
      : p_(p),
        steps_(steps),
        stop_(stop),
        without_(without),
        room_(p.room),
        count_(p.count),
        limits_(p.room.size()) {
    for (int n : p.count) left_ += n;
    row_begin_.push_back(0);
    for (const PackRow& row : p.rows) {
      limit_of_.insert(limit_of_.end(), row.limits.begin(), row.limits.end());
      limit_of_.push_back(static_cast<int>(limits_) + row.kind);
      row_begin_.push_back(limit_of_.size());
    }
  }

  std::vector<int> run() {
    Node root;
    root.alive.resize(p_.rows.size());
    std::iota(root.alive.begin(), root.alive.end(), 0);
    for (const PackRow& row : p_.rows) root.over.push_back(row.over);
    root.spare.assign(p_.price.begin(), p_.price.end());
    root.budget = p_.budget;
    const bool found = place(std::move(root));
    if (stopped_) steps_ = -1;
    return found ? chosen_ : std::vector<int>{};
  }

 private:
  struct Node {
    std::vector<int> alive;           // rows still possible
    std::vector<std::int32_t> over;   // [of alive] above what limits have been paid for
    std::vector<std::int32_t> spare;  // [limit] the same for room left over
    std::int64_t budget = 0;
    // Of which limits and kinds just one more can be taken, and [of these][word] a bit for each of alive that
    // takes it.
    std::vector<std::size_t> last;
    std::vector<std::uint64_t> last_of;
    std::vector<std::uint64_t> tried;  // a bit for each of alive
    [[nodiscard]] std::size_t words() const { return (alive.size() + 63) / 64; }
  };
  static std::uint64_t bit(std::size_t a) { return std::uint64_t{1} << a % 64; }
  /// Limits and, behind them, kinds: of each so many must be taken.
  [[nodiscard]] int needed(std::size_t l) const { return l < limits_ ? room_[l] : count_[l - limits_]; }

  /// Rows of `node` by the limits and kinds they take; [begin_[l], begin_[l + 1]) of users_.
  void index(const Node& node) {
    begin_.assign(limits_ + count_.size() + 1, 0);
    for (int r : node.alive)
      for (std::size_t i = row_begin_[ix(r)]; i < row_begin_[ix(r) + 1]; ++i) ++begin_[ix(limit_of_[i]) + 1];
    std::partial_sum(begin_.begin(), begin_.end(), begin_.begin());
    users_.resize(begin_.back());
    next_.assign(begin_.begin(), begin_.end() - 1);
    for (std::size_t a = 0; a < node.alive.size(); ++a) {
      const std::size_t r = ix(node.alive[a]);
      for (std::size_t i = row_begin_[r]; i < row_begin_[r + 1]; ++i)
        users_[next_[ix(limit_of_[i])]++] = static_cast<int>(a);
    }
    const std::int64_t taken = 1 + static_cast<std::int64_t>(users_.size()) / 256;
    steps_ -= taken;
    unasked_ += taken;
    if (unasked_ < steps_unasked) return;
    unasked_ = 0;
    if (stop_ && stop_()) stopped_ = true;
  }

  /// False: the budget does not last.
  bool pay(Node& node) {
    for (int l = 0; l < static_cast<int>(limits_ + count_.size()); ++l) {
      if (needed(ix(l)) == 0) continue;
      std::int32_t least = ix(l) < limits_ ? node.spare[ix(l)] : INT32_MAX;
      for (std::size_t u = begin_[ix(l)]; u < begin_[ix(l) + 1] && least > 0; ++u)
        least = std::min(least, node.over[ix(users_[u])]);
      if (least <= 0) continue;
      if (least == INT32_MAX) return false;  // a kind without rows
      for (std::size_t u = begin_[ix(l)]; u < begin_[ix(l) + 1]; ++u) node.over[ix(users_[u])] -= least;
      if (ix(l) < limits_) node.spare[ix(l)] -= least;
      node.budget -= std::int64_t{least} * needed(ix(l));
      if (node.budget < 0) return false;
    }
    return true;
  }
  [[nodiscard]] std::size_t users_of(int l) const { return begin_[ix(l) + 1] - begin_[ix(l)]; }
  [[nodiscard]] std::vector<int> users(int l) const {
    return {users_.begin() + static_cast<std::ptrdiff_t>(begin_[ix(l)]),
            users_.begin() + static_cast<std::ptrdiff_t>(begin_[ix(l) + 1])};
  }

  /// Strikes out what is too dear; how many.
  static std::size_t strike(Node& node) {
    std::size_t kept = 0;
    for (std::size_t a = 0; a < node.alive.size(); ++a) {
      if (node.over[a] > node.budget) continue;
      node.alive[kept] = node.alive[a];
      node.over[kept++] = node.over[a];
    }
    const std::size_t out = node.alive.size() - kept;
    node.alive.resize(kept);
    node.over.resize(kept);
    return out;
  }

  [[nodiscard]] bool is_time() const { return stopped_ || steps_ < enough_; }

  /// Pays and strikes out; false: nothing can come of it.
  bool settle(Node& node) {
    index(node);
    for (;;) {
      if (!pay(node)) return false;
      const std::size_t before = node.alive.size();
      const std::size_t out = strike(node);
      if (out > 0) index(node);
      if (out * 8 <= before) return true;
    }
  }

  bool place(Node node) {
    if (left_ == 0) return left_over(node) <= node.budget;
    if (!settle(node) || is_time()) return false;
    if (p_.first_kind >= 0 && count_[ix(p_.first_kind)] > 0) return place_in_turn(node);
    // What must be filled and has the fewest rows; where all may stay empty, a kind.
    int best = -1;
    for (std::size_t l = 0; l < limits_ + count_.size(); ++l) {
      if (needed(l) == 0 || (l < limits_ && node.spare[l] <= node.budget)) continue;
      const int here = static_cast<int>(l);
      if (best < 0 || users_of(here) < users_of(best)) best = here;
    }
    if (best < 0) return false;
    std::vector<int> ways = users(best);
    std::stable_sort(ways.begin(), ways.end(),
                     [&](int a, int b) { return node.over[ix(a)] < node.over[ix(b)]; });
    mark(node);
    for (int a : ways) {
      if (is_time()) return false;
      if (take(node, ix(a), [&](Node next) { return place(std::move(next)); })) return true;
      node.tried[ix(a) / 64] |= bit(ix(a));
    }
    return false;
  }

  /// The rows of the first kind, those that leave most of the budget first: a little of each, then more of
  /// those that came to no end.
  bool place_in_turn(Node node) {
    std::vector<std::pair<std::int64_t, int>> ways;  // what is above the cheapest with it, place in alive
    mark(node);
    const std::vector<std::vector<int>> cheapest = rising(node);
    for (int a : users(static_cast<int>(limits_) + p_.first_kind)) {
      const std::int64_t above = least_with(node, ix(a), cheapest);
      if (above <= node.budget)
        ways.emplace_back(above, a);
      else
        is_without(node, a);
    }
    std::stable_sort(ways.begin(), ways.end());
    for (std::int64_t most = steps_in_turn; !ways.empty(); most *= 4) {
      std::vector<std::pair<std::int64_t, int>> unended;
      for (const auto& way : ways) {
        enough_ = std::max<std::int64_t>(0, steps_ - most);
        if (take(node, ix(way.second), [&](Node next) { return place(std::move(next)); })) return true;
        const bool ended = !is_time();
        enough_ = 0;
        if (is_time()) return false;
        if (ended)
          is_without(node, way.second);
        else
          unended.push_back(way);
      }
      ways.swap(unended);
    }
    return false;
  }

  /// [kind but the first] places in alive, the cheapest first.
  [[nodiscard]] std::vector<std::vector<int>> rising(const Node& node) const {
    std::vector<std::vector<int>> out(count_.size());
    for (std::size_t k = 0; k < count_.size(); ++k) {
      if (static_cast<int>(k) == p_.first_kind || count_[k] == 0) continue;
      out[k] = users(static_cast<int>(limits_ + k));
      std::stable_sort(out[k].begin(), out[k].end(),
                       [&](int a, int b) { return node.over[ix(a)] < node.over[ix(b)]; });
    }
    return out;
  }

  /// What is above the cheapest at least once row `a` of alive is taken: everybody's cheapest that is left.
  [[nodiscard]] std::int64_t least_with(const Node& node, std::size_t a,
                                        const std::vector<std::vector<int>>& cheapest) const {
    const std::vector<std::uint64_t> out = taken_with(node, a);
    std::int64_t sum = node.over[a];
    for (std::size_t k = 0; k < cheapest.size(); ++k) {
      if (cheapest[k].empty()) continue;
      const auto left = std::find_if(cheapest[k].begin(), cheapest[k].end(),
                                     [&](int b) { return (out[ix(b) / 64] & bit(ix(b))) == 0; });
      if (left == cheapest[k].end()) return INT64_MAX;
      sum += std::int64_t{node.over[ix(*left)]} * count_[k];
    }
    return sum;
  }

  void is_without(const Node& node, int a) const {
    if (without_) without_->push_back(node.alive[ix(a)]);
  }

  void mark(Node& node) const {
    const std::size_t words = node.words();
    node.tried.assign(words, 0);
    for (std::size_t l = 0; l < limits_ + count_.size(); ++l)
      if (needed(l) == 1) node.last.push_back(l);
    node.last_of.assign(node.last.size() * words, 0);
    for (std::size_t i = 0; i < node.last.size(); ++i)
      for (std::size_t u = begin_[node.last[i]]; u < begin_[node.last[i] + 1]; ++u)
        node.last_of[i * words + ix(users_[u]) / 64] |= bit(ix(users_[u]));
  }

  /// Takes row `a` of alive and goes on with `then`; what it took, it gives back where that was in vain.
  template <class Then>
  bool take(const Node& node, std::size_t a, Then then) {
    const int r = node.alive[a];
    const PackRow& row = p_.rows[ix(r)];
    Node next = without(node, a);
    chosen_.push_back(r);
    --left_;
    for (int l : row.limits) --room_[ix(l)];
    --count_[ix(row.kind)];
    if (then(std::move(next))) return true;
    for (int l : row.limits) ++room_[ix(l)];
    ++count_[ix(row.kind)];
    ++left_;
    chosen_.pop_back();
    return false;
  }

  /// A bit for each of alive that cannot be taken any more once row `a` is.
  [[nodiscard]] std::vector<std::uint64_t> taken_with(const Node& node, std::size_t a) const {
    const std::size_t words = node.words();
    std::vector<std::uint64_t> out = node.tried;
    for (std::size_t i = 0; i < node.last.size(); ++i)
      if ((node.last_of[i * words + a / 64] & bit(a)) != 0)
        for (std::size_t w = 0; w < words; ++w) out[w] |= node.last_of[i * words + w];
    return out;
  }

  /// What is left when row `a` of alive is taken.
  [[nodiscard]] Node without(const Node& node, std::size_t a) const {
    const std::vector<std::uint64_t> out = taken_with(node, a);
    Node next;
    next.budget = node.budget - node.over[a];
    next.spare = node.spare;
    for (std::size_t w = 0; w < out.size(); ++w)
      for (std::uint64_t left = ~out[w]; left; left &= left - 1) {
        const std::size_t b = w * 64 + ix(std::countr_zero(left));
        if (b >= node.alive.size()) break;
        if (node.over[b] > next.budget) continue;
        next.alive.push_back(node.alive[b]);
        next.over.push_back(node.over[b]);
      }
    return next;
  }

  [[nodiscard]] std::int64_t left_over(const Node& node) const {
    std::int64_t sum = 0;
    for (std::size_t l = 0; l < limits_; ++l) sum += std::int64_t{room_[l]} * node.spare[l];
    return sum;
  }

  const Packing& p_;
  std::int64_t& steps_;
  const std::function<bool()>& stop_;
  std::vector<int>* without_;
  std::int64_t unasked_ = 0;
  bool stopped_ = false;
  std::int64_t enough_ = 0;  // steps that are to be left over
  std::vector<int> room_, count_;
  const std::size_t limits_;
  int left_ = 0;
  std::vector<std::size_t> row_begin_;  // [row] in limit_of_
  std::vector<int> limit_of_;           // limits of each row, and its kind behind all limits
  std::vector<std::size_t> begin_, next_;
  std::vector<int> users_;
  std::vector<int> chosen_;
};

}  // namespace

std::vector<int> pack(const Packing& p, std::int64_t& steps, const std::function<bool()>& stop,
                      std::vector<int>* without) {
  return Packer(p, steps, stop, without).run();
}

}  // namespace floorwheel
