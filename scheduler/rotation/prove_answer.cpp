// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/prove_answer.h"

#include <algorithm>

#include "scheduler/rotation/certify.h"
#include "scheduler/rotation/outcome.h"

namespace floorwheel {

Plan prove_answer(const ClassSpec& spec, const Problem& p, Answer& answer, const PlanOptions& options) {
  const std::vector<Priced> priced =
      prove_by_prices(p, answer.found, options.proof_effort * options.effort_times, options.stop);
  CheckLimits limits = check_in_plan;
  limits.table = std::max(limits.table, options.proof_effort) * options.effort_times;
  limits.search *= options.effort_times;
  limits.packing *= options.effort_times;
  Certificate certificate = certify(spec, p, answer, priced, limits);
  if (options.certificate) *options.certificate = std::move(certificate);
  return as_plan(spec, p, answer, spec.style, options.seed);
}

}  // namespace floorwheel
