// SPDX-License-Identifier: GPL-3.0-or-later
// Makes the certificate of an answer, and lets the answer claim no more than its check accepts.
#pragma once

#include "scheduler/rotation/certificate.h"
#include "scheduler/rotation/lagrange.h"

namespace floorwheel {

/// A claim for each component, with the first proof object the check accepts. What only a search has shown,
/// or a count that has no object (rule 5), is a claim of type `search`: the check looks at everything again
/// where the class is tiny, else it says that it did not. A bound that the check refutes is taken back, in
/// `found` too. Not for repairs.
Certificate certify(const ClassSpec&, const Problem&, Found&, const std::vector<Priced>& = {});

}  // namespace floorwheel
