// SPDX-License-Identifier: GPL-3.0-or-later
// Component by component: prices until they show that the rotation cannot be better, or a better one.
#include <algorithm>

#include "scheduler/rotation/bounds.h"
#include "scheduler/rotation/lagrange.h"
#include "scheduler/rotation/ring_walk.h"

namespace floorwheel {
namespace {

constexpr std::int64_t steps_a_pass = 20'000;   // of packing, while prices still rise
constexpr std::int64_t entries_a_step = 1'000;  // both about a microsecond
constexpr std::int64_t rounds_a_pass = 3'000;
constexpr std::int64_t rounds_least = 10;  // with fewer nothing is learnt
constexpr int passes_most = 8;

/// Takes rows over where they keep all rules and cost less.
bool take(const Problem& p, Found& found, const std::vector<Row>& rows) {
  Sheet sheet(p);
  for (int m = 0; m < p.members; ++m) sheet.set_row(m, rows[ix(m)].data());
  for (int m = 0; m < p.members; ++m)
    if (!sheet.laps_hold(m) || !sheet.pairs_hold(m)) return false;
  for (int s = 0; s < p.stations; ++s)
    for (int t = 0; t < p.slots; ++t)
      if (p.open(s, t) && sheet.room(s, t) < 0) return false;
  const Cost cost = price(p, sheet);
  if (!(cost < found.cost)) return false;
  found.rows = sheet.rows();
  found.cost = cost;
  return true;
}

/// The highest bound that packing has shown, with the prices it looked with.
struct Packed {
  std::int64_t bound = 0;
  PriceList prices;
};

/// Looks a little further above the bound each time: with little room few rows are left to choose from and
/// all is soon looked at; with much, something is soon found. Then closer again, between what is and what is
/// not there.
void come_down(const Problem& p, Found& found, Lagrange& lagrange, Component c, std::int64_t steps,
               Packed& packed) {
  std::int64_t low = std::max(lagrange.bound(), packed.bound);  // not reached below
  std::int64_t high = found.cost[c];                            // too far: too many rows, or no end
  std::int64_t more = 0;
  while (low < high && steps > 0) {
    const std::int64_t target = std::min(low + more, high - 1);
    std::vector<Row> rows;
    std::int64_t left = steps / 2 + 1;
    steps -= left;
    const Lagrange::Look look = lagrange.reach(target, left, rows);
    steps += std::max<std::int64_t>(0, left);
    if (look == Lagrange::Look::found) {
      if (!take(p, found, rows)) return;  // rule 5, or the reloads
      high = found.cost[c];
      more = (high - low) / 2;
    } else if (look == Lagrange::Look::none) {
      low = target + 1;
      packed = {low, lagrange.prices()};
      more = 2 * more + 1;
    } else {
      high = target;
      more = (high - low) / 2;
    }
  }
}

/// What prices are aimed at: the cost, unless it is too far off to be near the best.
std::int64_t hoped(std::int64_t cost, std::int64_t bound) {
  return bound <= 0 ? cost : std::min(cost, bound + bound / 50 + 2);
}

/// Component by component what no ring at all has less of, where everybody goes round alike.
std::vector<Priced> prove_ring(const Problem& p, Found& found, std::int64_t effort) {
  std::vector<Priced> out;
  const std::int64_t entries = ring_walk_entries(p);
  if (entries == 0 || found.cost[Component::missed] > 0) return out;
  const std::vector<Component> order = ranking(p);
  while (found.proven < static_cast<int>(order.size()) && effort >= entries) {
    const Component c = order[ix(found.proven)];
    if (c != Component::back_to_back && c != Component::assist_overlap && c != Component::walk_cm) break;
    effort -= entries;
    const JointWeights w = in_order(p, c);
    std::int64_t bound = cheapest_ring(p, w).least;
    Priced priced{c, ProofType::ring, {}};
    for (const auto& [earlier, weight] :
         {std::pair(Component::back_to_back, w.back_to_back), std::pair(Component::assist_overlap, w.assist),
          std::pair(Component::walk_cm, w.walk_cm)}) {
      if (earlier <= c) priced.prices.weights[earlier] = weight;
      if (earlier < c) bound -= weight * found.cost[earlier];
    }
    if (bound > found.bound[c]) {
      found.bound[c] = bound;
      found.priced |= 1U << static_cast<unsigned>(c);
      out.push_back(std::move(priced));
    }
    prove(p, found);
    if (found.cost[c] > found.bound[c]) break;
  }
  return out;
}

}  // namespace

std::vector<Priced> prove_by_prices(const Problem& p, Found& found, std::int64_t effort,
                                    const std::function<bool()>& stop) {
  if (found.style == Style::ring) return prove_ring(p, found, effort);
  std::vector<Priced> out;
  const std::vector<Component> order = ranking(p);
  while (found.proven < static_cast<int>(order.size())) {
    const Component c = order[ix(found.proven)];
    Lagrange lagrange(p, found.cost, c);
    if (!lagrange.possible() || effort <= 0) break;
    const Cost before = found.cost;
    Packed packed;
    const auto bound = [&] { return std::max(lagrange.bound(), packed.bound); };
    for (int pass = 0; pass < passes_most && bound() < found.cost[c]; ++pass) {
      const std::int64_t rounds = std::min(rounds_a_pass, effort / lagrange.entries());
      if (rounds < rounds_least || (stop && stop())) break;
      const std::int64_t cost_was = found.cost[c];
      const std::int64_t bound_was = lagrange.bound();
      const int taken = lagrange.raise(static_cast<int>(rounds), hoped(cost_was, bound_was), stop);
      effort -= taken * lagrange.entries();
      if (bound() < cost_was) come_down(p, found, lagrange, c, steps_a_pass, packed);
      if (found.cost[c] == cost_was && lagrange.bound() == bound_was) break;
    }
    if (bound() < found.cost[c] && effort > 0) {  // once more, with all that is left
      come_down(p, found, lagrange, c, effort / entries_a_step, packed);
      effort = 0;
    }
    if (bound() > found.bound[c]) {
      found.bound[c] = bound();
      found.priced |= 1U << static_cast<unsigned>(c);
      if (packed.bound > lagrange.bound()) out.push_back({c, ProofType::packing, packed.prices});
      out.push_back({c, ProofType::lagrange, lagrange.prices()});
    }
    if (found.cost != before)
      for (Component later : order)
        if (later > c) found.bound[later] = 0;
    prove(p, found);
    if (found.cost[c] > found.bound[c]) break;
  }
  return out;
}

}  // namespace floorwheel
