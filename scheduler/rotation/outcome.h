// SPDX-License-Identifier: GPL-3.0-or-later
// Turns what the search found into the plan that callers get: judged by the auditor, with its reasons.
#pragma once

#include <stdexcept>

#include "scheduler/rotation/engine.h"

namespace floorwheel {

/// The planner's own answer breaks a rule or costs what it does not say: a defect of the planner, never of
/// the class. Such an answer is given to nobody.
struct InternalError : std::logic_error {
  using std::logic_error::logic_error;
};

/// Throws InternalError when the auditor does not accept the answer.
/// `wished`: the style asked for. `earlier`: the run sheet a repair started from, else null.
Plan as_plan(const ClassSpec&, const Problem&, const Answer&, Style wished, std::uint64_t seed,
             const EarlierSheet* earlier = nullptr);

/// One sentence for the choice of style, one for each component up to `idle` whose bound is above 0, one for
/// whatever could not be kept.
std::vector<std::string> reasons(const ClassSpec&, const Problem&, const Answer&, Style wished);

}  // namespace floorwheel
