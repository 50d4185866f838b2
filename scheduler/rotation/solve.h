// SPDX-License-Identifier: GPL-3.0-or-later
// The one front door of the planner: a class in, a plan, a table of slots or a refusal out.
// Deterministic for a seed: effort is counted in steps; `stop` may only end it earlier, and what comes
// back then is the best so far, valid. Costs stated are those the auditor recomputes.
#pragma once

#include <cstdint>
#include <functional>

#include "scheduler/class_spec.h"
#include "scheduler/rotation/rotation.h"

namespace floorwheel {

struct Certificate;  // certificate.h

/// Best and bound so far; called from the planning thread at intervals of steps.
struct Progress {
  Cost best;
  Cost bound;
  std::int64_t steps = 0;
  std::int64_t steps_max = 0;
};

struct PlanOptions {
  std::uint64_t seed = 1;
  std::int64_t effort = 0;          // steps; 0: the default for the size of the class
  std::int64_t effort_times = 1;    // so many times that
  std::function<bool()> stop = {};  // true: come back with the best so far
  std::function<void(const Progress&)> progress = {};
  std::int64_t proof_effort = 400'000'000;  // of plan(), in table entries: about a nanosecond each
  bool prove_chosen = false;                // of plan_slots(): the chosen row as far as plan() does
  Certificate* certificate = nullptr;       // filled in by plan()
};

/// A rotation with a fixed number of slots (style from the class). Its bounds are those that the check of its
/// certificate accepts.
OrRefusal<Plan> plan(const ClassSpec&, int slots, const PlanOptions& = {});

/// The first good rotation, in milliseconds; bettered for a moment where back-to-backs are left in a free
/// one. As valid as any.
OrRefusal<Plan> first_rotation(const ClassSpec&, int slots, const PlanOptions& = {});

/// What each number of slots buys, and the chosen one.
OrRefusal<SlotTable> plan_slots(const ClassSpec&, const PlanOptions& = {});

/// The plan that plan_slots() chooses, without the rows that cannot be chosen.
OrRefusal<Plan> plan_chosen(const ClassSpec&, const PlanOptions& = {});

/// The least-change repair of `old` from slot `at_slot` on, for the class as it is now; `slots` is the new T.
/// Members of `old` that the class lacks drop out; a station it lacks is a broken precondition.
OrRefusal<Plan> repair(const ClassSpec&, int slots, const EarlierSheet& old, int at_slot,
                       const PlanOptions& = {});

}  // namespace floorwheel
