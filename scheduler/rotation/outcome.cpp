// SPDX-License-Identifier: GPL-3.0-or-later
// The last step of every answer: the auditor judges it and recounts its cost.
#include "scheduler/rotation/outcome.h"

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
  if (!judged.holds())
    throw InternalError("internal error: the rotation found breaks rule " +
                        std::to_string(judged.breaches.front().rule) + " (" + judged.breaches.front().text +
                        "); please report it with the class file");
  if (judged.cost != found.cost)
    throw InternalError(
        "internal error: the rotation found costs something else than the search believes; please report it "
        "with the class file");
  plan.reasons = reasons(spec, p, answer, wished);
  return plan;
}

}  // namespace floorwheel
