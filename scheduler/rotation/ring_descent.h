// SPDX-License-Identifier: GPL-3.0-or-later
// Descent on the order of a ring's stations by turning a part round and by moving one station (2-opt and
// or-opt; Croes 1958, Or 1976, both from memory). What a move changes is looked up at its ends only, so that
// it takes the same time on a hundred stations as on ten.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "scheduler/rotation/random.h"
#include "scheduler/rotation/ring_order.h"

namespace floorwheel {

/// Back-to-backs, short rests, assisting overlaps, centimetres: compared in this order.
using OrderWeight = std::array<std::int64_t, 4>;

/// `closed`: with the joint from the last to the first.
OrderWeight weigh(const Joints&, const std::vector<int>& order, bool closed);

/// The first improvement found is taken, until there is none; `left` counts moves looked at. `no_bad`: ends
/// as soon as no joint is bad. The weight arrived at.
OrderWeight descend(const Joints&, std::vector<int>& order, bool closed, Random&, std::int64_t& left,
                    bool no_bad = false);

}  // namespace floorwheel
