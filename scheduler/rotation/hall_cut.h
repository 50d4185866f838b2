// SPDX-License-Identifier: GPL-3.0-or-later
// The members, places and units that show why visits are missed, for a certificate: the cut that the largest
// flow of visits leaves, once for `missed` and level by level for `uneven`.
#pragma once

#include <vector>

#include "scheduler/rotation/certificate.h"
#include "scheduler/rotation/problem.h"

namespace floorwheel {

/// Level 0, or with `squares` each level from 1 that says something. Not for repairs.
std::vector<HallPart> hall_parts(const Problem&, bool squares);

}  // namespace floorwheel
