// SPDX-License-Identifier: GPL-3.0-or-later
// Two members take each other's row: on a ring the one thing that can still be chosen once everybody goes
// round in step, and what decides how much loads change between one person and the next.
#pragma once

#include "scheduler/rotation/budget.h"
#include "scheduler/rotation/engine.h"

namespace floorwheel {

/// Descends over all pairs; a pair takes a step. Not for repairs.
void exchange_rows(const Problem&, Found&, Budget&);

}  // namespace floorwheel
