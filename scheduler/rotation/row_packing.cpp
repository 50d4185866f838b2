// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/row_packing.h"

#include <algorithm>
#include <bit>

#include "scheduler/rotation/grid.h"

namespace floorwheel {
namespace {

using Bits = std::vector<std::uint64_t>;

class Packer {
 public:
  Packer(const Packing& p, std::int64_t& steps)
      : p_(p),
        steps_(steps),
        words_((p.rows.size() + 63) / 64),
        price_of_step_(1 + static_cast<std::int64_t>(words_) / 16),
        room_(p.room),
        count_(p.count) {
    uses_.assign(p.room.size(), Bits(words_, 0));
    of_kind_.assign(p.count.size(), Bits(words_, 0));
    for (std::size_t r = 0; r < p.rows.size(); ++r) {
      for (int l : p.rows[r].limits) set(uses_[ix(l)], r);
      set(of_kind_[ix(p.rows[r].kind)], r);
    }
    for (int n : p.count) left_ += n;
    least_in_.assign(ix(1 + (p.slot.empty() ? 0 : *std::max_element(p.slot.begin(), p.slot.end()))), 0);
    ways_.assign(p.room.size(), 0);
    taken_.assign(p.room.size(), 0);
    last_ = p.rows.size();
  }

  std::vector<int> run() {
    Bits alive(words_, 0);
    for (std::size_t r = 0; r < p_.rows.size(); ++r) set(alive, r);
    return place(std::move(alive), p_.budget) ? chosen_ : std::vector<int>{};
  }

 private:
  static void set(Bits& bits, std::size_t i) { bits[i / 64] |= std::uint64_t{1} << i % 64; }

  /// Where to go on: rows of which one must be among those to come, as few as possible, and what these may
  /// cost above the cheapest.
  struct Branch {
    const Bits* among = nullptr;  // null: there is no way on
    std::int64_t most = 0;
  };

  /// In every slot each place left is taken, by a row that costs at least what the cheapest that takes it
  /// does, or left over at its price.
  Branch narrowest(const Bits& alive, std::int64_t budget) {
    std::fill(least_in_.begin(), least_in_.end(), 0);
    for (std::size_t l = 0; l < room_.size(); ++l) {
      if (room_[l] == 0) continue;
      const Bits& rows = uses_[l];
      std::int64_t n = 0;
      std::size_t first = p_.rows.size();
      for (std::size_t w = 0; w < words_; ++w) {
        const std::uint64_t bits = alive[w] & rows[w];
        if (bits && n == 0) first = w * 64 + static_cast<std::size_t>(std::countr_zero(bits));
        n += std::popcount(bits);
      }
      ways_[l] = n;
      taken_[l] = n > 0 ? p_.rows[first].over : p_.price[l];
      if (p_.slot[l] >= 0)
        least_in_[ix(p_.slot[l])] += room_[l] * std::min<std::int64_t>(taken_[l], p_.price[l]);
    }
    Branch best;
    std::int64_t fewest = 0;
    for (std::int64_t least : least_in_)
      if (least > budget) return best;
    for (std::size_t l = 0; l < room_.size(); ++l) {
      if (room_[l] == 0) continue;
      const std::int64_t others =
          p_.slot[l] < 0 ? 0 : least_in_[ix(p_.slot[l])] - std::min<std::int64_t>(taken_[l], p_.price[l]);
      if (others + p_.price[l] <= budget) continue;  // it may be left over
      if (ways_[l] == 0) return {};
      if (!best.among || ways_[l] < fewest) {
        best = {&uses_[l], budget - others};
        fewest = ways_[l];
      }
    }
    if (best.among) return best;
    for (std::size_t k = 0; k < count_.size(); ++k) {
      if (count_[k] == 0) continue;
      std::int64_t n = 0;
      for (std::size_t w = 0; w < words_; ++w) n += std::popcount(alive[w] & of_kind_[k][w]);
      if (n == 0) return {};
      if (!best.among || n < fewest) {
        best = {&of_kind_[k], budget};
        fewest = n;
      }
    }
    return best;
  }

  bool place(Bits alive, std::int64_t budget) {
    if (left_ == 0) return left_over() <= budget;
    while (last_ > 0 && p_.rows[last_ - 1].over > budget) --last_;  // too dear from here on
    for (std::size_t r = last_; r < words_ * 64; r = (r / 64 + 1) * 64)
      alive[r / 64] &= r % 64 == 0 ? 0 : ~std::uint64_t{0} >> (64 - r % 64);
    const Branch branch = narrowest(alive, budget);
    if (!branch.among) return false;
    for (std::size_t w = 0; w < words_; ++w)
      for (std::uint64_t bits = alive[w] & (*branch.among)[w]; bits; bits &= bits - 1) {
        if ((steps_ -= price_of_step_) < 0) return false;
        const std::size_t r = w * 64 + static_cast<std::size_t>(std::countr_zero(bits));
        const PackRow& row = p_.rows[r];
        if (row.over > branch.most) return false;  // rows come cheapest first
        if (take(alive, row, static_cast<int>(r), budget)) return true;
        alive[w] &= ~(std::uint64_t{1} << r % 64);
      }
    return false;
  }

  bool take(const Bits& alive, const PackRow& row, int r, std::int64_t budget) {
    chosen_.push_back(r);
    --left_;
    --count_[ix(row.kind)];
    Bits next = alive;
    for (int l : row.limits)
      if (--room_[ix(l)] == 0)
        for (std::size_t w = 0; w < words_; ++w) next[w] &= ~uses_[ix(l)][w];
    if (count_[ix(row.kind)] == 0)
      for (std::size_t w = 0; w < words_; ++w) next[w] &= ~of_kind_[ix(row.kind)][w];
    const std::size_t last = last_;
    if (place(std::move(next), budget - row.over)) return true;
    last_ = last;
    for (int l : row.limits) ++room_[ix(l)];
    ++count_[ix(row.kind)];
    ++left_;
    chosen_.pop_back();
    return false;
  }

  std::int64_t left_over() const {
    std::int64_t sum = 0;
    for (std::size_t l = 0; l < room_.size(); ++l) sum += std::int64_t{room_[l]} * p_.price[l];
    return sum;
  }

  const Packing& p_;
  std::int64_t& steps_;
  const std::size_t words_;
  const std::int64_t price_of_step_;  // wide rows of bits take longer
  std::vector<Bits> uses_;            // [limit] rows that take one
  std::vector<Bits> of_kind_;         // [kind]
  std::vector<int> room_, count_;
  int left_ = 0;
  std::size_t last_ = 0;                // rows from here on are too dear
  std::vector<std::int64_t> least_in_;  // [slot]
  std::vector<std::int64_t> ways_;      // [limit] rows that take it
  std::vector<std::int64_t> taken_;     // [limit] what the cheapest of them costs above its kind's cheapest
  std::vector<int> chosen_;
};

}  // namespace

std::vector<int> pack(const Packing& p, std::int64_t& steps) { return Packer(p, steps).run(); }

}  // namespace floorwheel
