// SPDX-License-Identifier: GPL-3.0-or-later
// Prices and more: a rotation with less than claimed leaves its rows, beyond the cheapest under the prices,
// and its places left over, at theirs, so much together at most. All rows within that are listed from a table
// of what a row still costs, and every choice of them is looked at. One lap, everything remembered; rule 5
// is left out, which only weakens what is shown.
#include <algorithm>
#include <bit>
#include <functional>
#include <limits>

#include "scheduler/rotation/certificate_pack.h"

namespace floorwheel::certify {
namespace {

constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max() / 4;
constexpr int list_most = 20;

/// What a member's row costs at least from a slot on, and all rows that cost little.
class RowsToGo {
 public:
  RowsToGo(const Facts& f, const Person& p, const PriceList& prices)
      : f_(f), p_(p), prices_(prices), n_(static_cast<int>(p.list.size())) {}

  [[nodiscard]] Wide entries() const { return (Wide{1} << n_) * std::max(1, n_) * 2 * (p_.slots() + 1); }

  /// Of all rows.
  std::int64_t least() {
    to_go_.assign(at(p_.slots() + 1) * size(), never);
    for (int t = p_.last + 1; t >= p_.first; --t)
      for (std::uint32_t set = 1; set < 1U << n_; ++set) {
        if (std::popcount(set) > t - p_.first) continue;
        for (std::uint32_t in = set; in; in &= in - 1)
          for (const bool rested : {false, true}) {
            const int last = std::countr_zero(in);
            std::int64_t best = rested ? never : ended(std::popcount(set));
            if (t <= p_.last) {
              best = std::min(best, weight(Component::idle) + get(t + 1, set, last, true));
              for (std::uint32_t out = ((1U << n_) - 1) & ~set; out; out &= out - 1) {
                const int j = std::countr_zero(out);
                if (f_.places(p_.list[at(j)], t) > 0)
                  best = std::min(best, step(last, j, rested, t) + get(t + 1, set | 1U << j, j, false));
              }
            }
            to_go_[key(t, set, last, rested)] = std::min(best, never);
          }
      }
    std::int64_t best = ended(0);
    for (int t = p_.first; t <= p_.last; ++t)
      for (int j = 0; j < n_; ++j) best = std::min(best, begun(t, j));
    return best;
  }

  /// All rows that cost no more than `limit`; false: too many. `steps` is used up.
  bool list(std::int64_t limit, std::int64_t& steps,
            const std::function<void(const std::vector<int>&, std::int64_t)>& found) {
    limit_ = limit;
    steps_ = &steps;
    found_ = &found;
    row_.assign(at(f_.slots), -1);
    if (ended(0) <= limit) found(row_, ended(0));
    for (int t = p_.first; t <= p_.last; ++t)
      for (int j = 0; j < n_; ++j) {
        if (begun(t, j) > limit) continue;
        row_[at(t)] = p_.list[at(j)];
        if (!go_on(t + 1, 1U << j, j, false, begun(t, j) - get(t + 1, 1U << j, j, false))) return false;
        row_[at(t)] = -1;
      }
    return true;
  }

 private:
  [[nodiscard]] std::int64_t weight(Component c) const { return prices_.weights[c]; }
  [[nodiscard]] std::size_t size() const { return (std::size_t{1} << n_) * at(n_) * 2; }
  [[nodiscard]] std::size_t key(int t, std::uint32_t set, int last, bool rested) const {
    return at(t - p_.first) * size() + (set * at(n_) + at(last)) * 2 + (rested ? 1 : 0);
  }
  [[nodiscard]] std::int64_t get(int t, std::uint32_t set, int last, bool rested) const {
    return to_go_[key(t, set, last, rested)];
  }

  [[nodiscard]] std::int64_t ended(int visits) const {
    const std::int64_t missed = f_.wanted(p_) - visits;
    const std::int64_t beyond = missed - f_.forced(p_);
    return weight(Component::missed) * missed + weight(Component::uneven) * beyond * beyond;
  }
  [[nodiscard]] std::int64_t place(int j, int t) const {
    const int s = p_.list[at(j)];
    std::int64_t sum = prices_.places.empty() ? 0 : prices_.places[at(s)][at(t)];
    if (!prices_.units.empty())
      for (int e : f_.takes[at(s)]) sum += prices_.units[at(e)][at(t)];
    return sum;
  }
  /// A row that first works at j in slot t; `never` where it is closed.
  [[nodiscard]] std::int64_t begun(int t, int j) const {
    if (f_.places(p_.list[at(j)], t) == 0) return never;
    return weight(Component::idle) * (t - p_.first) + place(j, t) + get(t + 1, 1U << j, j, false);
  }
  /// From the list's i-th to work at its j-th in slot t.
  [[nodiscard]] std::int64_t step(int i, int j, bool rested, int t) const {
    const int a = p_.list[at(i)];
    const int b = p_.list[at(j)];
    std::int64_t sum = place(j, t) + weight(Component::walk_cm) * f_.walk[at(a)][at(b)];
    if (!rested && Facts::back_to_back(p_, a, b)) sum += weight(Component::back_to_back);
    if (!rested && Facts::assists(p_, a, b)) sum += weight(Component::assist_overlap);
    return sum;
  }

  bool go_on(int t, std::uint32_t set, int last, bool rested, std::int64_t so_far) {
    if (--*steps_ < 0) return false;
    if (!rested && so_far + ended(std::popcount(set)) <= limit_)
      (*found_)(row_, so_far + ended(std::popcount(set)));
    if (t > p_.last) return true;
    const std::int64_t idle = so_far + weight(Component::idle);
    if (idle + get(t + 1, set, last, true) <= limit_ && !go_on(t + 1, set, last, true, idle)) return false;
    for (int j = 0; j < n_; ++j) {
      if ((set >> j & 1U) != 0 || f_.places(p_.list[at(j)], t) == 0) continue;
      const std::int64_t sum = so_far + step(last, j, rested, t);
      if (sum + get(t + 1, set | 1U << j, j, false) > limit_) continue;
      row_[at(t)] = p_.list[at(j)];
      if (!go_on(t + 1, set | 1U << j, j, false, sum)) return false;
      row_[at(t)] = -1;
    }
    return true;
  }

  const Facts& f_;
  const Person& p_;
  const PriceList& prices_;
  const int n_;
  std::vector<std::int64_t> to_go_;  // [slot][set][last][rested]
  std::vector<int> row_;
  std::int64_t limit_ = 0;
  std::int64_t* steps_ = nullptr;
  const std::function<void(const std::vector<int>&, std::int64_t)>* found_ = nullptr;
};

struct Kind {
  const Person* person = nullptr;
  int members = 0;
  std::int64_t least = 0;
};

}  // namespace

ClaimVerdict check_packing(const Facts& f, const Certificate& all, const Claim& claim,
                           const CheckLimits& limits) {
  const PriceList& prices = claim.proof.prices;
  if (std::string wrong = prices_hold(f, claim.component, prices); !wrong.empty())
    return {Verdict::fails, wrong};
  if (f.spec.laps != 1 || !prices.memory.empty() || prices.weights[Component::short_rest] != 0)
    return {Verdict::fails, "packing is of one lap, with all remembered and no weight on short rests"};
  std::vector<Kind> kinds;
  for (const Person& p : f.people) {
    auto same = std::find_if(kinds.begin(), kinds.end(), [&](const Kind& k) { return k.person->like(p); });
    if (same == kinds.end()) same = kinds.insert(same, {&p, 0, 0});
    ++same->members;
  }
  Wide table = limits.table;
  std::vector<RowsToGo> rows;
  Wide budget = Wide{claim.bound - 1} * prices.scale;
  for (Component c : order()) {
    if (c == claim.component) break;
    budget += Wide{prices.weights[c]} * all.cost[c];
  }
  for (Kind& k : kinds) {
    rows.emplace_back(f, *k.person, prices);
    // Tables are kept whole for going back: a hundred megabytes at most.
    if (static_cast<int>(k.person->list.size()) > list_most || (table -= 32 * rows.back().entries()) < 0)
      return {Verdict::not_rechecked, "the table of rows would be too large"};
    k.least = rows.back().least();
    budget -= Wide{k.least} * k.members;
  }
  Choices choices(limits.packing);
  for (int t = 0; t < f.slots; ++t) {
    for (int s = 0; s < f.stations; ++s)
      choices.limit(f.places(s, t), prices.places.empty() ? 0 : prices.places[at(s)][at(t)]);
    for (int e = 0; e < f.kinds; ++e)
      choices.limit(f.spec.equipment[at(e)].units, prices.units.empty() ? 0 : prices.units[at(e)][at(t)]);
  }
  budget += choices.worth();
  if (budget < 0) return {Verdict::holds, "prices alone show it"};
  if (budget > std::numeric_limits<std::int32_t>::max())
    return {Verdict::not_rechecked, "too many rows to choose from"};
  std::int64_t steps = limits.packing;
  std::size_t listed = 0;
  for (std::size_t k = 0; k < kinds.size(); ++k) {
    choices.kind(kinds[k].members);
    const bool ended =
        rows[k].list(kinds[k].least + static_cast<std::int64_t>(budget), steps,
                     [&](const std::vector<int>& row, std::int64_t cost) {
                       std::vector<int> takes;
                       for (int t = 0; t < f.slots; ++t) {
                         const int s = row[at(t)];
                         if (s < 0) continue;
                         takes.push_back(t * (f.stations + f.kinds) + s);
                         for (int e : f.takes[at(s)])
                           takes.push_back(t * (f.stations + f.kinds) + f.stations + e);
                       }
                       choices.row(static_cast<std::int32_t>(cost - kinds[k].least), std::move(takes));
                       ++listed;
                     });
    if (!ended) return {Verdict::not_rechecked, "too many rows to choose from"};
  }
  switch (choices.look(static_cast<std::int64_t>(budget))) {
    case Choices::Is::there:
      return {Verdict::fails, "rows that cost too little for it can be chosen"};
    case Choices::Is::unknown:
      return {Verdict::not_rechecked, "too many choices of rows to look at again"};
    case Choices::Is::none:
      break;
  }
  return {Verdict::holds, "none of " + std::to_string(listed) + " rows can be chosen for less"};
}

}  // namespace floorwheel::certify
