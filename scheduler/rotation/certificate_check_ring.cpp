// SPDX-License-Identifier: GPL-3.0-or-later
// On a ring where everybody visits every station once in as many slots, all go round in step: each walks
// every joint of the ring but the one behind the own first station, and no more than the smallest station
// holds can start at one. The cheapest ring over all orders follows by sets of stations (Held and Karp 1962).
#include <algorithm>
#include <bit>
#include <limits>

#include "scheduler/rotation/certificate_facts.h"

namespace floorwheel::certify {
namespace {

constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max();
constexpr int stations_most = 20;

bool all_alike(const Facts& f) {
  if (f.spec.laps != 1 || f.slots != f.stations || f.stations < 3 || f.people.empty()) return false;
  return std::all_of(f.people.begin(), f.people.end(), [&](const Person& p) {
    return p.slots() == f.slots && static_cast<int>(p.list.size()) == f.stations &&
           p.primary == f.people.front().primary && p.assisting == f.people.front().assisting;
  });
}

/// Orders of the stations from station 0 on; the joint back to it is walked too. `left_out` joints are walked
/// by `cohort` members fewer, one more by `rest` fewer.
class CheapestRing {
 public:
  CheapestRing(const Facts& f, const Cost& weights, int cohort)
      : f_(f), weights_(weights), n_(f.stations), members_(static_cast<int>(f.people.size())) {
    const int full = std::min(n_, members_ / cohort);
    cohort_ = cohort;
    rest_ = full == n_ ? 0 : members_ % cohort;
    // All left out: the same for every joint, so that no table of how many is needed.
    all_ = full == n_;
    full_ = all_ ? 0 : full;
    for (int a = 0; a < n_; ++a) {
      joint_.emplace_back();
      for (int b = 0; b < n_; ++b) joint_.back().push_back(joint(a, b));
    }
  }

  [[nodiscard]] Wide entries() const {
    return (Wide{1} << (n_ - 1)) * n_ * n_ * (full_ + 1) * (rest_ > 0 ? 2 : 1);
  }

  std::int64_t least() {
    const std::uint32_t sets = 1U << (n_ - 1);  // of stations 1 .. n - 1
    const int rests = rest_ > 0 ? 2 : 1;
    const std::size_t used = at(full_ + 1) * at(rests);
    std::vector<std::int64_t> table(sets * at(n_) * used, never);
    const auto cell = [&](std::uint32_t set, int last, int full, int rest) -> std::int64_t& {
      return table[(set * at(n_) + at(last)) * used + at(full) * at(rests) + at(rest)];
    };
    cell(0, 0, 0, 0) = 0;
    std::int64_t best = never;
    for (std::uint32_t set = 0; set < sets; ++set)
      for (int last = 0; last < n_; ++last)
        for (int full = 0; full <= full_; ++full)
          for (int rest = 0; rest < rests; ++rest) {
            const std::int64_t so_far = cell(set, last, full, rest);
            if (so_far == never) continue;
            const bool closes = set + 1 == sets;
            for (std::uint32_t left = closes ? 1U : ~(set << 1U) & ((sets << 1U) - 2); left;
                 left &= left - 1) {
              const int next = std::countr_zero(left);
              const std::uint32_t to = closes ? set : set | 1U << (next - 1);
              const std::int64_t one = joint_[at(last)][at(next)];
              const auto go = [&](int walkers, int to_full, int to_rest) {
                const std::int64_t sum = so_far + one * walkers;
                std::int64_t& target = closes ? best : cell(to, next, to_full, to_rest);
                target = std::min(target, sum);
              };
              go(members_ - (all_ ? cohort_ : 0), full, rest);
              if (full < full_) go(members_ - cohort_, full + 1, rest);
              if (rest_ > 0 && rest == 0) go(members_ - rest_, full, 1);
            }
          }
    return best;
  }

 private:
  [[nodiscard]] std::int64_t joint(int a, int b) const {
    const Person& p = f_.people.front();
    std::int64_t sum = weights_[Component::walk_cm] * f_.walk[at(a)][at(b)];
    if (Facts::back_to_back(p, a, b)) sum += weights_[Component::back_to_back];
    if (Facts::assists(p, a, b)) sum += weights_[Component::assist_overlap];
    return sum;
  }

  const Facts& f_;
  const Cost& weights_;
  const int n_;
  const int members_;
  int cohort_ = 1;
  int full_ = 0;
  int rest_ = 0;
  bool all_ = false;
  std::vector<std::vector<std::int64_t>> joint_;  // [station][station] what one who walks it pays
};

}  // namespace

ClaimVerdict check_ring(const Facts& f, const Certificate& all, const Claim& claim, std::int64_t table) {
  const PriceList& prices = claim.proof.prices;
  if (std::string wrong = prices_hold(f, claim.component, prices); !wrong.empty())
    return {Verdict::fails, wrong};
  if (!prices.places.empty() || !prices.units.empty() || !prices.memory.empty())
    return {Verdict::fails, "a ring pays no prices"};
  for (Component c : {Component::missed, Component::uneven, Component::short_rest, Component::idle})
    if (prices.weights[c] != 0) return {Verdict::fails, "the order of a ring says nothing of this component"};
  if (all.style != Style::ring || !all_alike(f) || all.cost[Component::missed] != 0)
    return {Verdict::fails, "not everybody goes round a ring alike"};
  int cohort = std::numeric_limits<int>::max();
  for (int s = 0; s < f.stations; ++s)
    for (int t = 0; t < f.slots; ++t) cohort = std::min(cohort, f.places(s, t));
  const Wide members = static_cast<Wide>(f.people.size());
  if (cohort < 1 || Wide{cohort} * f.stations < members)
    return {Verdict::fails, "no ring takes in everybody"};
  Wide most = 0;  // a sum over all members must stay within 64 bits
  for (Component c : order())
    most += Wide{prices.weights[c]} * (c == Component::walk_cm ? std::numeric_limits<int>::max() : 1);
  if (most * members * f.slots > (Wide{1} << 61)) return {Verdict::fails, "the weights are too large"};
  CheapestRing ring(f, prices.weights, cohort);
  if (f.stations > stations_most || ring.entries() > table)
    return {Verdict::not_rechecked, "the table of orders would be too large"};
  return reached(claim, beyond_given(all, claim, ring.least()));
}

}  // namespace floorwheel::certify
