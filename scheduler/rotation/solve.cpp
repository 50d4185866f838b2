// SPDX-License-Identifier: GPL-3.0-or-later
// The front door for a given number of slots, and for repair.
#include "scheduler/rotation/solve.h"

#include <algorithm>

#include "scheduler/rotation/certify.h"
#include "scheduler/rotation/outcome.h"
#include "scheduler/rotation/prove_answer.h"

namespace floorwheel {
namespace {

/// The earlier ring with the class's stations; those it did not have follow at the end.
std::vector<StationIndex> ring_now(const ClassSpec& spec, const EarlierSheet& old) {
  std::vector<StationIndex> ring;
  for (const std::string& id : old.ring)
    for (std::size_t s = 0; s < spec.stations.size(); ++s)
      if (spec.stations[s].id == id) ring.push_back(static_cast<StationIndex>(s));
  for (StationIndex s = 0; s < static_cast<StationIndex>(spec.stations.size()); ++s)
    if (std::find(ring.begin(), ring.end(), s) == ring.end()) ring.push_back(s);
  return ring;
}

}  // namespace

OrRefusal<Plan> plan(const ClassSpec& spec, int slots, const PlanOptions& options) {
  const auto made = make_problem(spec, slots);
  if (const auto* refusal = std::get_if<Refusal>(&made)) return *refusal;
  const Problem& p = std::get<Problem>(made);
  const Task task{.style = spec.style,
                  .seed = options.seed,
                  .effort = options.effort,
                  .effort_times = options.effort_times,
                  .stop = options.stop,
                  .progress = options.progress};
  Answer answer = solve(p, task);
  return prove_answer(spec, p, answer, options);
}

OrRefusal<Plan> first_rotation(const ClassSpec& spec, int slots, const PlanOptions& options) {
  const auto made = make_problem(spec, slots);
  if (const auto* refusal = std::get_if<Refusal>(&made)) return *refusal;
  const Problem& p = std::get<Problem>(made);
  const Task task{.style = spec.style, .seed = options.seed, .effort = options.effort, .stop = options.stop};
  Answer answer = first(p, task);
  certify(spec, p, answer, {}, {.table = 2'000'000, .search = 0});
  return as_plan(spec, p, answer, spec.style, options.seed);
}

OrRefusal<Plan> repair(const ClassSpec& spec, int slots, const EarlierSheet& old, int at_slot,
                       const PlanOptions& options) {
  const auto made = make_problem(spec, slots, &old, at_slot);
  if (const auto* refusal = std::get_if<Refusal>(&made)) return *refusal;
  const Problem& p = std::get<Problem>(made);
  const bool was_ring = old.style == Style::ring;
  Task task{.style = was_ring ? Style::automatic : Style::free,
            .seed = options.seed,
            .effort = options.effort,
            .effort_times = options.effort_times,
            .stop = options.stop,
            .progress = options.progress};
  if (was_ring) task.ring = ring_now(spec, old);
  return as_plan(spec, p, solve(p, task), old.style, options.seed, &old);
}

}  // namespace floorwheel
