// SPDX-License-Identifier: GPL-3.0-or-later
// Component by component: prices until they show that the rotation cannot be better, or a better one.
#include <algorithm>

#include "scheduler/rotation/bounds.h"
#include "scheduler/rotation/lagrange.h"
#include "scheduler/rotation/random.h"
#include "scheduler/rotation/ring_walk.h"

namespace floorwheel {
namespace {

constexpr std::int64_t steps_a_pass = 20'000;  // of packing, while prices still rise
constexpr std::int64_t entries_a_step = 800;   // about as long
constexpr std::int64_t steps_light = 50'000;
constexpr std::int64_t least_rise = 1000;  // of the bound a pass, or packing goes further
constexpr int tries_in_vain = 150;
constexpr std::int64_t rounds_a_pass = 3'000;
constexpr std::int64_t rounds_least = 10;  // with fewer nothing is learnt
constexpr int passes_most = 8;

using Stop = std::function<bool()>;

/// Takes rows over where they keep all rules and cost less. A ring stays as it is: what no rotation has less
/// of bounds it too.
bool take(const Problem& p, Found& found, const std::vector<Row>& rows) {
  if (found.style == Style::ring) return false;
  const Sheet sheet(p, rows);
  for (int m = 0; m < p.members; ++m)
    if (!sheet.laps_hold(m) || !sheet.pairs_hold(m)) return false;
  if (!sheet.rooms_hold()) return false;
  const Cost cost = price(p, sheet);
  if (!(cost < found.cost)) return false;
  found.rows = sheet.rows();
  found.cost = cost;
  return true;
}

/// A bound that packing has shown, with the prices it looked with.
struct Packed {
  std::int64_t bound = 0;
  PriceList prices;
};
/// The highest; and the highest that the check can soon look at again, for where the highest is not the cost.
struct PackedBounds {
  Packed highest, light;
};

/// Looks a little further above the bound each time: with little room few rows are left to choose from and
/// all is soon looked at; with much, something is soon found. Then closer again, between what is and what is
/// not there. False: there are rows below that cannot be taken, so that no bound will reach the cost.
bool come_down(const Problem& p, Found& found, Lagrange& lagrange, Component c, std::int64_t steps,
               PackedBounds& packed, const Stop& stop) {
  std::int64_t low = std::max(lagrange.bound(), packed.highest.bound);  // not reached below
  std::int64_t high = found.cost[c];                                    // too far: too many rows, or no end
  std::int64_t more = (low - lagrange.bound()) / 4;
  int unended = 0;
  while (low < high && steps > 0 && !(stop && stop())) {
    const std::int64_t target = std::min(low + more, high - 1);
    std::vector<Row> rows;
    const std::int64_t most = target == high - 1 ? steps : steps / 4 + 1;  // the last of it may take all
    std::int64_t left = most;
    const Lagrange::Look look = lagrange.reach(target, left, rows);
    const std::int64_t taken = most - std::max<std::int64_t>(0, left);
    steps -= taken;
    if (look == Lagrange::Look::found) {
      if (!take(p, found, rows)) return false;  // a ring, rule 5, or the reloads
      high = found.cost[c];
      // Close to what is empty: all below it is looked at once.
      more = high - low <= 2 * (low - lagrange.bound()) ? high - low : (high - low) / 2;
    } else if (look == Lagrange::Look::none) {
      low = target + 1;
      packed.highest = {low, lagrange.prices()};
      if (taken < steps_light) packed.light = packed.highest;
      more = 2 * more + 1;
    } else if (look == Lagrange::Look::unended && unended++ > 0) {
      return true;
    } else {
      high = target;
      more = (high - low) / 2;
    }
  }
  return true;
}

/// A few members by chance choose again, as long as that helps now and then.
void choose_again(const Problem& p, Found& found, Lagrange& lagrange, Component c, std::int64_t steps,
                  const Stop& stop) {
  Random random(1);
  for (int since = 0; since < tries_in_vain && steps > 0 && found.cost[c] > lagrange.bound(); ++since) {
    if (stop && stop()) return;
    const int out = std::min(p.members, 3 + since % 3);
    std::vector<int> members;
    while (static_cast<int>(members.size()) < out) {
      const int m = random.below(p.members);
      if (std::find(members.begin(), members.end(), m) == members.end()) members.push_back(m);
    }
    std::vector<Row> rows = found.rows;
    if (lagrange.again(members, steps, rows) && take(p, found, rows)) since = -1;
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
  const bool ring = found.style == Style::ring;
  std::vector<Priced> out;
  if (ring) out = prove_ring(p, found, effort);
  if (ring && ring_walk_entries(p) > 0) return out;
  if (ring) effort /= 4;  // it gets a bound and no better rows
  const std::int64_t given = effort;
  const std::vector<Component> order = ranking(p);
  while (found.proven < static_cast<int>(order.size())) {
    const Component c = order[ix(found.proven)];
    Lagrange lagrange(p, found.cost, c);
    if (!lagrange.possible() || effort <= 0) break;
    const Cost before = found.cost;
    PackedBounds packed;
    const auto bound = [&] { return std::max(lagrange.bound(), packed.highest.bound); };
    for (int pass = 0; pass < passes_most && bound() < found.cost[c]; ++pass) {
      const std::int64_t rounds = std::min(rounds_a_pass, effort / lagrange.entries());
      if (rounds < rounds_least || (stop && stop())) break;
      const std::int64_t cost_was = found.cost[c];
      const std::int64_t bound_was = lagrange.bound();
      const int taken = lagrange.raise(static_cast<int>(rounds), hoped(cost_was, bound_was), stop);
      effort -= taken * lagrange.entries();
      if (bound() < cost_was && !come_down(p, found, lagrange, c, steps_a_pass, packed, stop) && ring) break;
      if (found.cost[c] == cost_was && lagrange.bound() - bound_was <= bound_was / least_rise) break;
    }
    if (bound() < found.cost[c] && effort > 0 && !ring) {  // once more, with all that is left
      const std::int64_t steps = (effort + given / 2) / entries_a_step;
      choose_again(p, found, lagrange, c, steps / 6, stop);
      come_down(p, found, lagrange, c, steps, packed, stop);
      effort = 0;
    }
    const Packed& shown = packed.highest.bound == found.cost[c] ? packed.highest : packed.light;
    const std::int64_t least = std::max(lagrange.bound(), shown.bound);
    if (least > found.bound[c]) {
      found.bound[c] = least;
      found.priced |= 1U << static_cast<unsigned>(c);
      if (least > lagrange.bound()) out.push_back({c, ProofType::packing, shown.prices});
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
