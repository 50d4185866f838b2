// SPDX-License-Identifier: GPL-3.0-or-later
// Betters a rotation step by step. Free ones by simulated annealing over the moves; rings by taking teams
// out and putting them back on their best path. Both leave all rules kept at every step.
#pragma once

#include "scheduler/rotation/budget.h"
#include "scheduler/rotation/engine.h"

namespace floorwheel {

/// The best found replaces rows and cost; `found.bound` tells when there is nothing left to gain.
/// `complete` adds visits that are missed as long as one chain of two slots can make way.
void complete(const Problem&, Found&, Budget&, Random&);
/// Cool: from where people go round in order, which is worth keeping.
enum class Heat : std::uint8_t { full, cool };
void anneal(const Problem&, Found&, Budget&, std::int64_t steps, Random&, Heat = Heat::full);
void rebuild(const Problem&, Found&, Budget&, std::int64_t steps, Random&);

}  // namespace floorwheel
