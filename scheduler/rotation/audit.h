// SPDX-License-Identifier: GPL-3.0-or-later
// The independent auditor: recomputes rules and cost of a rotation from the class alone. It shares only the
// vocabulary, the class and the plain values with the planner, so that the two cannot be wrong together.
// Source: the rotation model, "Rules", "Cost" and "Repair".
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scheduler/class_spec.h"
#include "scheduler/rotation/rotation.h"

namespace floorwheel {

struct Breach {
  int rule = 0;  // 1 to 6; 0: no numbered rule (altered history, wrong header)
  std::string member;
  std::string station;
  int slot = 0;  // 0: none
  std::string text;
};

struct Audit {
  Cost cost;
  bool moved_known = false;  // `moved` was counted: an earlier sheet was given
  std::vector<Breach> breaches;
  [[nodiscard]] bool holds() const { return breaches.empty(); }
};

/// `at_slot` > 1: slots before it are history and rules are judged from it on. `before`: the run sheet that
/// a repair started from; needed to judge history and count `moved`.
Audit audit(const ClassSpec&, const Rotation&, int at_slot = 1, const EarlierSheet* before = nullptr);

/// The exercise member m works at station s by rule 3, or null: the station's own, else the first substitute
/// that m may do. For printing beside a rotation; the planner has its own.
const Exercise* audited_exercise(const ClassSpec&, int member, StationIndex station);

}  // namespace floorwheel
