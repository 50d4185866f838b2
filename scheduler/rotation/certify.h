// SPDX-License-Identifier: GPL-3.0-or-later
// Makes the certificate of an answer, and lets the answer claim no more than its check accepts.
#pragma once

#include "scheduler/rotation/certificate.h"
#include "scheduler/rotation/lagrange.h"

namespace floorwheel {

/// What the check may do while a plan is made: what takes a tenth of a second or two, lists up to 15 stations
/// and rings up to 20; `audit` may do more.
constexpr CheckLimits check_in_plan{.table = 250'000'000, .search = 400'000, .packing = 600'000};

/// A claim for each component, with the first proof object the check accepts: simple counts and prices before
/// `search`, where all is looked at again. What it does not accept, in these limits, is not claimed: bounds,
/// `proven` and `ring_is_best` of the answer come down to what is. Not for repairs.
Certificate certify(const ClassSpec&, const Problem&, Answer&, const std::vector<Priced>& = {},
                    const CheckLimits& = check_in_plan);

}  // namespace floorwheel
