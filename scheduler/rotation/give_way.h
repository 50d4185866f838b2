// SPDX-License-Identifier: GPL-3.0-or-later
// Who has missed most takes visits from those who can better spare them, one at a time and the best first:
// what a full floor owes a latecomer, with as few entries moved as that takes.
#pragma once

#include "scheduler/rotation/budget.h"
#include "scheduler/rotation/engine.h"
#include "scheduler/rotation/random.h"

namespace floorwheel {

/// Rows and cost of `found`, which keeps all rules, only ever get better. Free rotations only.
void give_way(const Problem&, Found&, Budget&, Random&);

}  // namespace floorwheel
