// SPDX-License-Identifier: GPL-3.0-or-later
// Every row that is worth looking at when a ring is given, as in a repair that keeps the order of stations:
// few, since people only step forward and since what a row may cost is known from the best so far.
#pragma once

#include "scheduler/rotation/row_lists.h"

namespace floorwheel {

/// How much is listed at most.
struct RingRowsMost {
  std::int64_t steps = 1'000'000;  // entries tried
  std::size_t rows = 60'000;
};

/// [member] rows by rules 1 to 4 and 6 on `ring` that a rotation no dearer than `worth` can have, given that
/// any rotation misses `missed_least`: cheapest first. Nothing when there is more to list than `most`.
std::optional<RowLists> list_rows_on_ring(const Problem&, const std::vector<StationIndex>& ring,
                                          const Cost& worth, std::int64_t missed_least,
                                          const RingRowsMost& most = {});

}  // namespace floorwheel
