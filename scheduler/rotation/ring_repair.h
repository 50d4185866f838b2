// SPDX-License-Identifier: GPL-3.0-or-later
// A repair that keeps its ring: whether it can as well as any rotation, and with how few entries moved.
#pragma once

#include "scheduler/rotation/budget.h"
#include "scheduler/rotation/engine.h"
#include "scheduler/rotation/ring_rows.h"

namespace floorwheel {

/// Betters `ring`, and raises its `moved_least`, until no rotation on the ring moves fewer entries, as far as
/// the budget (steps of packing) lasts. False: there were more rows to choose from, and nothing was done.
bool settle_ring_repair(const Problem&, Found& ring, const RingRowsMost&, Budget&);

}  // namespace floorwheel
