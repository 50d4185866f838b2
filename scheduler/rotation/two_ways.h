// SPDX-License-Identifier: GPL-3.0-or-later
// A free rotation for people who all go round alike: half of them one way round, half the other. On a way of
// an even number of places, waiting places included, whoever starts at an even place and goes forward passes
// between two places whoever starts at an odd one and goes back, so nobody meets (x + t = y - t has no
// solution where y - x is odd and the way even). All leave out joints of the same kind, every second one, and
// the order of the stations is chosen so that those are the long ones; no ring in one direction has that
// choice.
#pragma once

#include <optional>

#include "scheduler/rotation/random.h"
#include "scheduler/rotation/sheet.h"

namespace floorwheel {

/// The best order found by descent, from `ring` and from orders at random. Nothing where people are not alike
/// (windows, lists, groups, pairs), slots do not suffice, or equipment is scarce. Not for repairs.
std::optional<Sheet> two_ways(const Problem&, const std::vector<StationIndex>& ring, Random&);

}  // namespace floorwheel
