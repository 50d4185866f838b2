// SPDX-License-Identifier: GPL-3.0-or-later
// Where stations get on badly, rows without a back-to-back are few: all of them are collected, and one is
// chosen for each member so that all fit on the floor (exact cover with several places; Knuth 2000, from
// memory). Changing a rotation bit by bit hardly ever arrives there.
#pragma once

#include "scheduler/rotation/budget.h"
#include "scheduler/rotation/engine.h"

namespace floorwheel {

/// True: `found` now misses only what windows force and has no back-to-back. Classes of one lap without pairs
/// and equipment, with few such rows; others are left as they are.
bool cover_with_rows(const Problem&, Found&, Budget&);

}  // namespace floorwheel
