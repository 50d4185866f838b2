// SPDX-License-Identifier: GPL-3.0-or-later
// What the tests of the auditor share: the model's worked class, a class in which nothing costs anything, and
// twins, of which one is clean and the other broken in one place.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "scheduler/rotation/audit.h"
#include "tests/support/builders.h"

namespace floorwheel::build {

/// The class of the model's worked cases.
inline ClassSpec worked_class() {
  ClassSpec c;
  station(c, "A", {Group::chest}, 0, 0);
  station(c, "B", {Group::chest}, 300, 400);
  station(c, "C", {Group::quadriceps}, 0, 400);
  member(c, "m1", Level::advanced);
  return c;
}

/// Stations A to D of four different groups on one spot and members m1, m2, ..., so that nothing costs unless
/// a test makes it.
inline ClassSpec quiet_class(int members = 1, const std::string& stations = "ABCD") {
  const std::array groups{Group::chest, Group::quadriceps, Group::biceps, Group::calves};
  ClassSpec c;
  for (std::size_t s = 0; s < stations.size(); ++s) station(c, std::string(1, stations[s]), {groups[s]});
  for (int m = 1; m <= members; ++m) member(c, "m" + std::to_string(m));
  return c;
}

inline std::string text(const Cost& cost) {
  std::string out;
  for (Component c : components)
    if (cost[c] != 0) out += std::string(id_of(c)) + " " + std::to_string(cost[c]) + " ";
  return out;
}

inline std::string text(const std::vector<Breach>& breaches) {
  std::string out;
  for (const Breach& b : breaches) out += "rule " + std::to_string(b.rule) + ": " + b.text + "\n";
  return out;
}

/// A class, a rotation that is clean and its twin, both judged from `at_slot` on against `before`.
struct Twins {
  ClassSpec c;
  Rotation clean;
  Rotation twin;
  int at_slot = 1;
  std::optional<EarlierSheet> before;

  [[nodiscard]] Audit audit_clean() const { return audit(c, clean, at_slot, before ? &*before : nullptr); }
  [[nodiscard]] Audit audit_twin() const { return audit(c, twin, at_slot, before ? &*before : nullptr); }
};

}  // namespace floorwheel::build
