// SPDX-License-Identifier: GPL-3.0-or-later
// Prices go on rising inside: where every row that takes a limit costs something, so much of it is the
// limit's whatever is chosen, and is paid for all its room at once (dual ascent; Fisher and Kedia 1990, from
// memory). What is left over of the budget strikes out rows, and children inherit both.
#include "scheduler/rotation/row_packing.h"

#include <algorithm>
#include <numeric>

#include "scheduler/rotation/grid.h"

namespace floorwheel {
namespace {

class Packer {
 public:
  Packer(const Packing& p, std::int64_t& steps)
      : p_(p), steps_(steps), room_(p.room), count_(p.count), limits_(p.room.size()) {
    for (int n : p.count) left_ += n;
    row_begin_.push_back(0);
    for (const PackRow& row : p.rows) {
      limit_of_.insert(limit_of_.end(), row.limits.begin(), row.limits.end());
      limit_of_.push_back(static_cast<int>(limits_) + row.kind);
      row_begin_.push_back(limit_of_.size());
    }
    words_ = (limits_ + count_.size() + 63) / 64;
    takes_.assign(p.rows.size() * words_, 0);
    for (std::size_t r = 0; r < p.rows.size(); ++r)
      for (std::size_t i = row_begin_[r]; i < row_begin_[r + 1]; ++i)
        takes_[r * words_ + ix(limit_of_[i]) / 64] |= std::uint64_t{1} << limit_of_[i] % 64;
    full_.assign(words_, 0);
  }

  std::vector<int> run() {
    Node root;
    root.alive.resize(p_.rows.size());
    std::iota(root.alive.begin(), root.alive.end(), 0);
    for (const PackRow& row : p_.rows) root.over.push_back(row.over);
    root.spare.assign(p_.price.begin(), p_.price.end());
    root.budget = p_.budget;
    return place(std::move(root)) ? chosen_ : std::vector<int>{};
  }

 private:
  struct Node {
    std::vector<int> alive;           // rows still possible
    std::vector<std::int32_t> over;   // [of alive] above what limits have been paid for
    std::vector<std::int32_t> spare;  // [limit] the same for room left over
    std::int64_t budget = 0;
  };
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
    steps_ -= 1 + static_cast<std::int64_t>(users_.size()) / 256;
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

  bool place(Node node) {
    if (left_ == 0) return left_over(node) <= node.budget;
    index(node);
    for (;;) {
      if (!pay(node)) return false;
      const std::size_t before = node.alive.size();
      const std::size_t out = strike(node);
      if (out > 0) index(node);
      if (out * 8 <= before) break;
    }
    if (steps_ < 0) return false;
    // What must be filled and has the fewest rows; where all may stay empty, a kind.
    int best = -1;
    for (std::size_t l = 0; l < limits_ + count_.size(); ++l) {
      if (needed(l) == 0 || (l < limits_ && node.spare[l] <= node.budget)) continue;
      const int here = static_cast<int>(l);
      if (best < 0 || users_of(here) < users_of(best)) best = here;
    }
    if (best < 0) return false;
    std::vector<int> ways(users_.begin() + static_cast<std::ptrdiff_t>(begin_[ix(best)]),
                          users_.begin() + static_cast<std::ptrdiff_t>(begin_[ix(best) + 1]));
    std::stable_sort(ways.begin(), ways.end(),
                     [&](int a, int b) { return node.over[ix(a)] < node.over[ix(b)]; });
    std::vector<std::uint8_t> tried(node.alive.size(), 0);
    for (int a : ways) {
      if (steps_ < 0) return false;
      if (take(node, ix(a), tried)) return true;
      tried[ix(a)] = 1;
    }
    return false;
  }

  bool take(const Node& node, std::size_t a, const std::vector<std::uint8_t>& tried) {
    const int r = node.alive[a];
    const PackRow& row = p_.rows[ix(r)];
    chosen_.push_back(r);
    --left_;
    for (int l : row.limits) --room_[ix(l)];
    --count_[ix(row.kind)];
    for (std::size_t i = row_begin_[ix(r)]; i < row_begin_[ix(r) + 1]; ++i)
      if (needed(ix(limit_of_[i])) == 0)
        full_[ix(limit_of_[i]) / 64] |= std::uint64_t{1} << limit_of_[i] % 64;
    Node next;
    next.budget = node.budget - node.over[a];
    next.spare = node.spare;
    next.alive.reserve(node.alive.size());
    next.over.reserve(node.alive.size());
    for (std::size_t b = 0; b < node.alive.size(); ++b)
      if (!tried[b] && node.over[b] <= next.budget && fits(node.alive[b])) {
        next.alive.push_back(node.alive[b]);
        next.over.push_back(node.over[b]);
      }
    if (place(std::move(next))) return true;
    for (std::size_t i = row_begin_[ix(r)]; i < row_begin_[ix(r) + 1]; ++i)
      full_[ix(limit_of_[i]) / 64] &= ~(std::uint64_t{1} << limit_of_[i] % 64);
    for (int l : row.limits) ++room_[ix(l)];
    ++count_[ix(row.kind)];
    ++left_;
    chosen_.pop_back();
    return false;
  }

  [[nodiscard]] bool fits(int r) const {
    for (std::size_t w = 0; w < words_; ++w)
      if ((takes_[ix(r) * words_ + w] & full_[w]) != 0) return false;
    return true;
  }

  [[nodiscard]] std::int64_t left_over(const Node& node) const {
    std::int64_t sum = 0;
    for (std::size_t l = 0; l < limits_; ++l) sum += std::int64_t{room_[l]} * node.spare[l];
    return sum;
  }

  const Packing& p_;
  std::int64_t& steps_;
  std::vector<int> room_, count_;
  const std::size_t limits_;
  int left_ = 0;
  std::vector<std::size_t> row_begin_;  // [row] in limit_of_
  std::vector<int> limit_of_;           // limits of each row, and its kind behind all limits
  std::size_t words_ = 0;
  std::vector<std::uint64_t> takes_;  // [row][word] the same as bits
  std::vector<std::uint64_t> full_;   // limits and kinds of which no more can be taken
  std::vector<std::size_t> begin_, next_;
  std::vector<int> users_;
  std::vector<int> chosen_;
};

}  // namespace

std::vector<int> pack(const Packing& p, std::int64_t& steps) { return Packer(p, steps).run(); }

}  // namespace floorwheel
