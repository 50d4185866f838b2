// SPDX-License-Identifier: GPL-3.0-or-later
// From an answer of the search to a plan with proofs: prices, then the check of all that is claimed.
#pragma once

#include "scheduler/rotation/engine.h"

namespace floorwheel {

/// May better the answer too. Fills in the certificate that the options ask for.
Plan prove_answer(const ClassSpec&, const Problem&, Answer&, const PlanOptions&);

}  // namespace floorwheel
