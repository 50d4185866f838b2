// SPDX-License-Identifier: GPL-3.0-or-later
// Annealing in phases for free rotations, rebuilding for rings, and completing missed visits.
#include "scheduler/rotation/search.h"

#include <algorithm>

#include "scheduler/rotation/moves.h"
#include "scheduler/rotation/weights.h"

namespace floorwheel {
namespace {

/// Annealing goes from the components that matter most to the rest. `kept` leading ones may not rise any
/// more; the heat falls from `from` to `to`.
struct Phase {
  int kept;
  int share;  // of the steps, in tenths
  std::int64_t from, to;
};
using Phases = std::array<Phase, 3>;
constexpr Phases phases = {{{0, 4, 4'000'000, 100'000}, {2, 3, 400'000, 10'000}, {3, 3, 100'000, 50}}};
/// A repair stays near where it starts, so it starts cool; `moved` is the fourth component.
constexpr Phases repair_phases = {{{0, 3, 300'000, 30'000}, {2, 4, 200'000, 10'000}, {4, 3, 100'000, 50}}};
/// From where everybody goes round in order it starts cool, and three times from the best: with more heat the
/// order is soon lost and never found again.
constexpr Phases cool_phases = {{{3, 4, 100, 50}, {3, 3, 100, 50}, {3, 3, 100, 50}}};

bool at_bound(const Problem& p, const Cost& cost, const Cost& bound, int leading) {
  const auto order = ranking(p);
  for (int i = 0; i < leading; ++i)
    if (cost[order[ix(i)]] > bound[order[ix(i)]]) return false;
  return true;
}

bool rises(const Cost& from, const Cost& to, int leading) {
  return std::lexicographical_compare(from.value.begin(), from.value.begin() + leading, to.value.begin(),
                                      to.value.begin() + leading);
}

/// Ends before its steps are used up when the first `next` components have come down to their bounds.
void anneal_phase(const Problem& p, Found& found, Budget& budget, const Phase& phase, int next,
                  std::int64_t steps, Random& random) {
  Draft draft(p, found.rows);
  Moves moves(p, random);
  std::int64_t heat = phase.from;
  int stages = 1;  // the heat falls by an eighth each
  for (std::int64_t h = phase.from; h > phase.to; h -= h / 8) ++stages;
  for (int stage = 0; stage < stages; ++stage, heat -= heat / 8)
    for (std::int64_t i = 0; i < steps / stages; ++i) {
      if (!budget.spend(1, found.cost, found.bound)) return;
      if (!moves.propose(draft) || !draft.holds()) {
        draft.take_back();
        continue;
      }
      if (rises(found.cost, draft.weigh_rows(), phase.kept)) {  // whatever the reloads are
        draft.take_back();
        continue;
      }
      const Cost cost = draft.weigh_reloads();
      const std::int64_t rise = weighed(cost) - weighed(draft.cost());
      if (rise > 0 && rise * 16 > heat * random.minus_log2_x16()) {
        draft.take_back();
        continue;
      }
      draft.keep();
      if (!(cost < found.cost)) continue;
      found.cost = cost;
      found.rows = draft.sheet().rows();
      if (at_bound(p, cost, found.bound, next)) return;
    }
}

}  // namespace

void complete(const Problem& p, Found& found, Budget& budget, Random& random) {
  Draft draft(p, found.rows);
  Moves moves(p, random);
  const auto add_one = [&](int m, StationIndex s) {
    for (int t = std::max(p.from, p.first[ix(m)]); t <= p.last[ix(m)]; ++t) {
      if (draft.sheet().room(s, t) < 1) continue;
      for (int u = std::max(p.from, p.first[ix(m)]); u <= p.last[ix(m)]; ++u) {
        if (draft.sheet().at(m, u) != nowhere || (draft.sheet().at(m, t) == nowhere && u != t)) continue;
        for (const bool alone : {false, true}) {
          if (alone && p.teams[ix(p.team_of[ix(m)])].size() == 1) continue;
          if (!budget.spend(1, found.cost, found.bound)) return false;
          if (moves.add_visit_at(draft, m, s, t, u, alone) && draft.holds() && draft.weigh() < draft.cost()) {
            draft.keep();
            return true;
          }
          draft.take_back();
        }
      }
    }
    return false;
  };
  for (int m = 0; m < p.members; ++m)
    for (StationIndex s : p.required[ix(m)])
      while (draft.row_cost(m)[Component::missed] > p.forced_missed(m) &&
             draft.sheet().visits(m, s) < p.laps && add_one(m, s)) {
      }
  found.rows = draft.sheet().rows();
  found.cost = draft.cost();
}

void anneal(const Problem& p, Found& found, Budget& budget, std::int64_t steps, Random& random, Heat heat) {
  const int all = static_cast<int>(ranking(p).size());
  const Phases& used = p.is_repair ? repair_phases : heat == Heat::cool ? cool_phases : phases;
  for (const Phase& phase : used) {
    const bool last = &phase == &used.back() || (&phase + 1)->kept == phase.kept;
    const int next = last ? all : (&phase + 1)->kept;
    if (at_bound(p, found.cost, found.bound, next)) continue;
    anneal_phase(p, found, budget, phase, next, steps * phase.share / 10, random);
  }
}

void rebuild(const Problem& p, Found& found, Budget& budget, std::int64_t steps, Random& random) {
  const int all = static_cast<int>(ranking(p).size());
  const int teams = static_cast<int>(p.teams.size());
  const std::int64_t n = std::int64_t{p.stations} * p.laps;
  const std::int64_t price_of_one = std::max<std::int64_t>(20, n * n * p.stations * p.slots / 900);
  Placement placement(p, ring_track(found.ring), 1, true, random);
  Sheet sheet(p, found.rows);
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
