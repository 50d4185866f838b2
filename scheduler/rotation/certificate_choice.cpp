// SPDX-License-Identifier: GPL-3.0-or-later
// Rows still possible are bits, cheapest first as costs are compared, so that the first bit of each member
// adds up to a bound. Members alike take rows in rising order. Rows that leave the others too little are
// struck out before.
#include "scheduler/rotation/certificate_choice.h"

#include <algorithm>
#include <bit>
#include <functional>

namespace floorwheel::certify {
namespace {

using Bits = std::vector<std::uint64_t>;

class Choice {
 public:
  Choice(const Facts& f, const Certificate& all, const Claim& claim, RowsOfAll rows, std::int64_t& steps)
      : f_(f), all_(all), claim_(claim), rows_(std::move(rows)), steps_(steps), members_(rows_.size()) {
    for (Component c : order()) {
      if (c == Component::reload_hg) break;
      compared_.push_back(c);
      if (c == claim.component) break;
    }
  }

  Chosen run() {
    // What one row may have beyond the least depends on what all have; once more, since that has changed.
    for (int again = 0; again < 2; ++again)
      if (!strike_too_dear()) return Chosen::nothing;
    prepare();
    std::vector<Bits> alive;
    for (const auto& list : rows_) {
      Bits bits((list.size() + 63) / 64, 0);
      for (std::size_t r = 0; r < list.size(); ++r) bits[r / 64] |= std::uint64_t{1} << r % 64;
      alive.push_back(std::move(bits));
    }
    return place(alive, Cost{}, 0);
  }

 private:
  struct Pair {
    std::size_t one, other;
    PairRule rule;
  };

  /// The most that is allowed of a component: as given, or less than claimed.
  [[nodiscard]] std::int64_t most(Component c) const {
    return c == claim_.component ? claim_.bound - 1 : all_.cost[c];
  }

  /// False: somebody is left without a row.
  bool strike_too_dear() {
    Cost spare;
    std::vector<Cost> least(members_);
    if (std::any_of(rows_.begin(), rows_.end(), [](const auto& list) { return list.empty(); })) return false;
    for (Component c : compared_) {
      spare[c] = most(c);
      for (std::size_t m = 0; m < members_; ++m) {
        least[m][c] = rows_[m].front().cost[c];
        for (const PricedRow& row : rows_[m]) least[m][c] = std::min(least[m][c], row.cost[c]);
        spare[c] -= least[m][c];
      }
    }
    for (std::size_t m = 0; m < members_; ++m)
      std::erase_if(rows_[m], [&](const PricedRow& row) {
        return std::any_of(compared_.begin(), compared_.end(),
                           [&](Component c) { return row.cost[c] - least[m][c] > spare[c]; });
      });
    return std::none_of(rows_.begin(), rows_.end(), [](const auto& list) { return list.empty(); });
  }

  void prepare() {
    std::size_t words = 0;
    for (std::size_t m = 0; m < members_; ++m) {
      auto& list = rows_[m];
      std::sort(list.begin(), list.end(), [](const auto& a, const auto& b) {
        return a.cost != b.cost ? a.cost < b.cost : a.at < b.at;
      });
      words += (list.size() + 63) / 64;
      uses_.emplace_back(at(f_.stations * f_.slots), Bits((list.size() + 63) / 64, 0));
      for (std::size_t r = 0; r < list.size(); ++r)
        for (int t = 0; t < f_.slots; ++t)
          if (const int s = list[r].at[at(t)]; s >= 0)
            uses_[m][cell(s, t)][r / 64] |= std::uint64_t{1} << r % 64;
    }
    price_of_step_ = 1 + static_cast<std::int64_t>(words) / 64;
    for (const PairSpec& pair : f_.spec.pairs)
      for (std::size_t one = 0; one < members_; ++one)
        for (std::size_t other = 0; other < members_; ++other)
          if (one != other && f_.spec.members[one].id == pair.a && f_.spec.members[other].id == pair.b)
            pairs_.push_back({one, other, pair.rule});
    follows_.assign(members_, members_);
    for (std::size_t m = 0; m < members_; ++m)
      for (std::size_t earlier = m; earlier-- > 0;)
        if (alike(earlier, m)) {
          follows_[m] = earlier;
          break;
        }
    used_.assign(at(f_.stations), std::vector<int>(at(f_.slots), 0));
    units_.assign(at(f_.kinds), std::vector<int>(at(f_.slots), 0));
    chosen_.assign(members_, nullptr);
    index_.assign(members_, 0);
  }

  [[nodiscard]] bool alike(std::size_t a, std::size_t b) const {
    for (const Pair& pair : pairs_)
      if (pair.one == a || pair.one == b || pair.other == a || pair.other == b) return false;
    return f_.people[a].load_hg == f_.people[b].load_hg &&
           std::equal(rows_[a].begin(), rows_[a].end(), rows_[b].begin(), rows_[b].end(),
                      [](const auto& x, const auto& y) { return x.at == y.at && x.cost == y.cost; });
  }

  [[nodiscard]] std::size_t cell(int s, int t) const { return at(s * f_.slots + t); }

  [[nodiscard]] int room(int s, int t) const {
    int left = f_.places(s, t) - used_[at(s)][at(t)];
    for (int e : f_.takes[at(s)])
      left = std::min(left, f_.spec.equipment[at(e)].units - units_[at(e)][at(t)]);
    return std::max(0, left);
  }

  Chosen place(const std::vector<Bits>& alive, const Cost& so_far, std::size_t depth) {
    if (depth == members_) return is_less(so_far) ? Chosen::less : Chosen::nothing;
    if (!can_be_less(alive, so_far)) return Chosen::nothing;
    const std::size_t m = next(alive);
    for (std::size_t w = 0; w < alive[m].size(); ++w)
      for (std::uint64_t bits = alive[m][w]; bits; bits &= bits - 1) {
        if ((steps_ -= price_of_step_) < 0) return Chosen::no_end;
        const std::size_t r = w * 64 + at(std::countr_zero(bits));
        const PricedRow& row = rows_[m][r];
        Cost cost = so_far;
        for (Component c : compared_) cost[c] += row.cost[c];
        chosen_[m] = &row;
        index_[m] = r;
        count(row, 1);
        const Chosen found = place(struck(alive, m), cost, depth + 1);
        count(row, -1);
        chosen_[m] = nullptr;
        if (found != Chosen::nothing) return found;
      }
    return Chosen::nothing;
  }

  void count(const PricedRow& row, int by) {
    for (int t = 0; t < f_.slots; ++t) {
      const int s = row.at[at(t)];
      if (s < 0) continue;
      used_[at(s)][at(t)] += by;
      for (int e : f_.takes[at(s)]) units_[at(e)][at(t)] += by;
    }
  }

  /// Who has the fewest rows left; of members alike the first.
  [[nodiscard]] std::size_t next(const std::vector<Bits>& alive) const {
    std::size_t best = members_;
    int fewest = 0;
    for (std::size_t m = 0; m < members_; ++m) {
      if (chosen_[m] || (follows_[m] < members_ && !chosen_[follows_[m]])) continue;
      int n = 0;
      for (std::uint64_t word : alive[m]) n += std::popcount(word);
      if (best == members_ || n < fewest) {
        best = m;
        fewest = n;
      }
    }
    return best;
  }

  /// What the others can still have beside the row that m has taken.
  [[nodiscard]] std::vector<Bits> struck(std::vector<Bits> alive, std::size_t m) const {
    const PricedRow& row = *chosen_[m];
    for (int t = 0; t < f_.slots; ++t) {
      const int mine = row.at[at(t)];
      if (mine < 0) continue;
      for (int s = 0; s < f_.stations; ++s) {
        if (s != mine && f_.takes[at(s)].empty()) continue;
        if (room(s, t) > 0) continue;
        for (std::size_t other = 0; other < members_; ++other)
          if (!chosen_[other])
            for (std::size_t w = 0; w < alive[other].size(); ++w)
              alive[other][w] &= ~uses_[other][cell(s, t)][w];
      }
    }
    for (const Pair& pair : pairs_) {
      if (pair.one != m && pair.other != m) continue;
      const std::size_t other = pair.one == m ? pair.other : pair.one;
      if (chosen_[other]) continue;
      for (std::size_t w = 0; w < alive[other].size(); ++w)
        for (std::uint64_t bits = alive[other][w]; bits; bits &= bits - 1) {
          const std::size_t r = w * 64 + at(std::countr_zero(bits));
          if (!keeps(pair.rule, m, row.at, other, rows_[other][r].at))
            alive[other][w] &= ~(std::uint64_t{1} << r % 64);
        }
    }
    for (std::size_t other = m + 1; other < members_; ++other)
      if (follows_[other] == m) {
        for (std::size_t w = 0; w < index_[m] / 64; ++w) alive[other][w] = 0;
        alive[other][index_[m] / 64] &= ~std::uint64_t{0} << index_[m] % 64;
      }
    return alive;
  }

  /// Rule 5.
  [[nodiscard]] bool keeps(PairRule rule, std::size_t m, const std::vector<int>& a, std::size_t other,
                           const std::vector<int>& b) const {
    for (int t = 0; t < f_.slots; ++t) {
      const int at_a = a[at(t)];
      const int at_b = b[at(t)];
      if (rule == PairRule::apart) {
        if (at_a >= 0 && at_a == at_b) return false;
        continue;
      }
      if (at_a == at_b || !f_.people[m].there(t) || !f_.people[other].there(t)) continue;
      if (at_a >= 0 && at_b >= 0) return false;
      const std::vector<int>& waits = at_a < 0 ? a : b;
      if (std::find(waits.begin(), waits.end(), at_a < 0 ? at_b : at_a) != waits.end()) return false;
    }
    return true;
  }

  /// Compared in order, what all cost at least must stay below what is given and claimed.
  [[nodiscard]] bool can_be_less(const std::vector<Bits>& alive, const Cost& so_far) const {
    Cost least = so_far;
    std::int64_t wanted = 0;
    std::vector<int> people(at(f_.slots), 0);
    for (std::size_t m = 0; m < members_; ++m) {
      if (chosen_[m]) continue;
      std::size_t w = 0;
      while (w < alive[m].size() && alive[m][w] == 0) ++w;
      if (w == alive[m].size()) return false;
      const PricedRow& row = rows_[m][w * 64 + at(std::countr_zero(alive[m][w]))];
      for (Component c : compared_) least[c] += row.cost[c];
      wanted += f_.wanted(f_.people[m]);
      for (int t = f_.people[m].first; t <= f_.people[m].last; ++t) ++people[at(t)];
    }
    // Those still without a row find no more than the places left.
    for (int t = 0; t < f_.slots; ++t) {
      int places = 0;
      for (int s = 0; s < f_.stations && places < people[at(t)]; ++s) places += room(s, t);
      wanted -= std::min(places, people[at(t)]);
    }
    if (so_far[Component::missed] + wanted > most(Component::missed)) return false;
    for (Component c : compared_)
      if (least[c] != most(c)) return least[c] < most(c);
    return true;
  }

  [[nodiscard]] bool is_less(Cost cost) const {
    for (Component c : compared_) {
      if (c == claim_.component) return cost[c] < claim_.bound;
      if (cost[c] != all_.cost[c]) return false;
    }
    return reloads() < claim_.bound;
  }

  [[nodiscard]] std::int64_t reloads() const {
    std::int64_t sum = 0;
    for (int s = 0; s < f_.stations; ++s) {
      std::vector<int> before;
      for (int t = 0; t < f_.slots; ++t) {
        std::vector<int> now;
        for (std::size_t m = 0; m < members_; ++m)
          if (chosen_[m]->at[at(t)] == s && f_.people[m].load_hg[at(s)] >= 0)
            now.push_back(f_.people[m].load_hg[at(s)]);
        std::sort(now.begin(), now.end(), std::greater<>());
        for (std::size_t i = 0; i < std::min(now.size(), before.size()); ++i)
          sum += std::abs(std::int64_t{now[i]} - before[i]);
        before.swap(now);
      }
    }
    return sum;
  }

  const Facts& f_;
  const Certificate& all_;
  const Claim& claim_;
  RowsOfAll rows_;
  std::int64_t& steps_;
  const std::size_t members_;
  std::int64_t price_of_step_ = 1;
  std::vector<Component> compared_;      // up to the claim's own, reloads apart
  std::vector<std::vector<Bits>> uses_;  // [member][cell] rows that work there
  std::vector<Pair> pairs_;
  std::vector<std::size_t> follows_;  // [member] the last one alike before; how many there are: none
  std::vector<std::vector<int>> used_, units_;
  std::vector<const PricedRow*> chosen_;
  std::vector<std::size_t> index_;
};

}  // namespace

Chosen choose_less(const Facts& f, const Certificate& all, const Claim& claim, RowsOfAll rows,
                   std::int64_t& steps) {
  return Choice(f, all, claim, std::move(rows), steps).run();
}

}  // namespace floorwheel::certify
