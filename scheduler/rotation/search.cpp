// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/search.h"

#include <algorithm>

#include "scheduler/rotation/moves.h"

namespace floorwheel {
namespace {

/// What one unit of each component weighs while annealing, in centimetres of walking. Only the way goes by
/// this sum; which rotation is better is always decided component by component.
constexpr std::array<std::int64_t, component_count> weights = {2'000'000, 200'000, 300'000, 100'000, 20'000,
                                                               3'000,     1'000,   1,       1};

std::int64_t weighed(const Cost& now, const Cost& before) {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) sum += weights[i] * (now.value[i] - before.value[i]);
  return sum;
}

bool at_bound(const Problem& p, const Cost& cost, const Cost& bound, int leading) {
  const auto order = ranking(p);
  for (int i = 0; i < leading; ++i)
    if (cost[order[ix(i)]] > bound[order[ix(i)]]) return false;
  return true;
}

}  // namespace

void anneal(const Problem& p, Found& found, Budget& budget, std::int64_t steps, Random& random) {
  constexpr int stages = 64;
  const int all = static_cast<int>(ranking(p).size());
  Draft draft(p, found.rows);
  Moves moves(p, random);
  bool settled = at_bound(p, draft.cost(), found.bound, 3);  // the first three can only be kept
  std::int64_t heat = settled ? 30'000 : 300'000;
  for (int stage = 0; stage < stages; ++stage) {
    for (std::int64_t i = 0; i < steps / stages; ++i) {
      if (!budget.spend(1, found.cost, found.bound)) return;
      if (!moves.propose(draft) || !draft.holds()) {
        draft.take_back();
        continue;
      }
      const Cost cost = draft.weigh();
      const std::int64_t rise = weighed(cost, draft.cost());
      const bool takes = rise <= 0 || rise * 16 <= heat * random.minus_log2_x16();
      if (!takes || (settled && leading_less(draft.cost(), cost))) {
        draft.take_back();
        continue;
      }
      draft.keep();
      if (!(cost < found.cost)) continue;
      found.cost = cost;
      found.rows = draft.sheet().rows();
      if (!settled && at_bound(p, cost, found.bound, 3)) {
        settled = true;
        heat = std::min<std::int64_t>(heat, 30'000);
      }
      if (at_bound(p, cost, found.bound, all)) return;
    }
    heat = heat * 900 / 1024;
  }
}

void rebuild(const Problem& p, Found& found, Budget& budget, std::int64_t steps, Random& random) {
  const int all = static_cast<int>(ranking(p).size());
  const int teams = static_cast<int>(p.teams.size());
  const std::int64_t n = std::int64_t{p.stations} * p.laps;
  const std::int64_t price_of_one = std::max<std::int64_t>(20, n * n * p.stations * p.slots / 500);
  Placement placement(p, ring_track(found.ring), 1, true, random);
  Sheet sheet(p);
  for (int m = 0; m < p.members; ++m) sheet.set_row(m, found.rows[ix(m)].data());
  for (std::int64_t left = steps; left > 0 && !at_bound(p, found.cost, found.bound, all);) {
    const int out = std::min(teams, 1 + random.below(4));
    left -= out * price_of_one;
    if (!budget.spend(out * price_of_one, found.cost, found.bound)) return;
    std::vector<int> chosen;
    while (static_cast<int>(chosen.size()) < out) {
      const int team = random.below(teams);
      if (std::find(chosen.begin(), chosen.end(), team) == chosen.end()) chosen.push_back(team);
    }
    for (int team : chosen) placement.remove(sheet, team);
    for (int team : chosen) placement.insert(sheet, team);
    const Cost cost = price(p, sheet);
    if (found.cost < cost) {
      for (int team : chosen)
        for (int m : p.teams[ix(team)]) sheet.clear(m);
      for (int team : chosen)
        for (int m : p.teams[ix(team)]) sheet.set_row(m, found.rows[ix(m)].data());
      continue;
    }
    found.cost = cost;
    for (int team : chosen)
      for (int m : p.teams[ix(team)]) found.rows[ix(m)].assign(sheet.row(m), sheet.row(m) + p.slots);
  }
}

}  // namespace floorwheel
