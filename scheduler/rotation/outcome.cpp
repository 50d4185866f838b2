// SPDX-License-Identifier: GPL-3.0-or-later
// The last step of every answer: the auditor judges it and recounts its cost.
#include "scheduler/rotation/outcome.h"

#include <cassert>

#include "scheduler/rotation/audit.h"

namespace floorwheel {

Plan as_plan(const ClassSpec& spec, const Problem& p, const Answer& answer, Style wished, std::uint64_t seed,
             const EarlierSheet* earlier) {
  const Found& found = answer.found;
  Plan plan;
  plan.rotation = {p.slots, found.style, found.ring, found.rows};
  plan.bound = found.bound;
  plan.proven = found.proven;
  plan.seed = seed;
  plan.at_slot = earlier ? p.from + 1 : 0;
  const Audit judged = audit(spec, plan.rotation, p.from + 1, earlier);
  plan.cost = judged.cost;
  // A breach or another cost here is a defect of the planner, never of the class.
  assert(judged.holds() && judged.cost == found.cost);
  plan.reasons = reasons(spec, p, answer, wished);
  return plan;
}

}  // namespace floorwheel
