// SPDX-License-Identifier: GPL-3.0-or-later
// Rings on which everybody goes round in step. Where people exceed places, waiting places stand between the
// stations, so that whoever comes to one waits a slot: with n stations, w waiting places and q people to each
// of them, (n + w) · q people make all their visits in n + w slots a lap, in one lap as few as there can be
// (Kőnig 1916: visits over places). What members have of their own, windows, lists, scarce equipment, leaves
// gaps in their rows and is left to the search.
#pragma once

#include "scheduler/rotation/sheet.h"

namespace floorwheel {

/// The cheapest of those tried on this ring, waiting places all behind one station or each behind another.
/// Not for repairs.
Sheet in_step(const Problem&, const std::vector<StationIndex>& ring);

/// Whether people exceed places.
bool somebody_waits(const Problem&);

}  // namespace floorwheel
