// SPDX-License-Identifier: GPL-3.0-or-later
// How long somebody has stood still at an exercise: what the stall list says beside the rule `stall` of
// next_load.h, which asks for three. Our own count, no source.
#pragma once

#include <span>

#include "scheduler/training/visits.h"

namespace floorwheel::training {

/// Visits without progress: of all stretches of visits with one load that end at the last visit and hold none
/// with more repetitions in total than their first, the longest; how many visits came after that first one.
/// 0 where there is no such stretch: the last visit did better than all before it with its load.
int visits_without_progress(std::span<const Visit> worked);

}  // namespace floorwheel::training
