// SPDX-License-Identifier: GPL-3.0-or-later
// One slot at a time: who works where in it, all at once, while the other slots stay. Without pairs and
// reloads that is a cheapest flow from members to places, and so exact; people in pairs stay where they are.
#pragma once

#include "scheduler/rotation/budget.h"
#include "scheduler/rotation/engine.h"

namespace floorwheel {

/// Betters a free rotation slot by slot until no slot gives more; it never gets worse.
void assign_slots(const Problem&, Found&, Budget&);

}  // namespace floorwheel
