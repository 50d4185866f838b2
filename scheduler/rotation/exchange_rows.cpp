// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/exchange_rows.h"

#include "scheduler/rotation/bounds.h"
#include "scheduler/rotation/draft.h"

namespace floorwheel {
namespace {

constexpr std::int64_t pairs_most = 20'000;

}  // namespace

void exchange_rows(const Problem& p, Found& found, Budget& budget) {
  if (p.is_repair || (!p.has_loads && everybody_alike(p))) return;
  Draft draft(p, found.rows);
  std::int64_t left = pairs_most;
  for (bool better = true; better;) {
    better = false;
    for (int a = 0; a < p.members; ++a)
      for (int b = a + 1; b < p.members; ++b) {
        if (--left < 0 || !budget.spend(1, found.cost, found.bound)) return;
        for (int t = 0; t < p.slots; ++t) {
          const StationIndex at_a = draft.sheet().at(a, t);
          const StationIndex at_b = draft.sheet().at(b, t);
          if (at_a == at_b) continue;
          draft.set(a, t, at_b);
          draft.set(b, t, at_a);
        }
        const Cost cost = draft.holds() ? draft.weigh() : found.cost;
        if (!(cost < found.cost)) {
          draft.take_back();
          continue;
        }
        draft.keep();
        found.cost = cost;
        found.rows[ix(a)].swap(found.rows[ix(b)]);
        better = true;
      }
  }
}

}  // namespace floorwheel
