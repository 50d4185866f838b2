// SPDX-License-Identifier: GPL-3.0-or-later
// Loads that stand or hang ready: dumbbells and kettlebells as a list, a machine's stack with its add-on
// weights.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "scheduler/training/mass.h"

namespace floorwheel::training {

struct Stack {
  Weight plate;  // of one plate; the pin takes 1 to `plates`
  int plates = 1;
  std::vector<Weight> add_ons;  // each may lie on the stack or not
};
inline constexpr std::size_t most_add_ons = 8;

/// Every load of a stack, ascending, none twice.
std::vector<Weight> loads_of(const Stack&);

struct NearestLoad {
  std::optional<Weight> below;  // the heaviest at or under the target
  std::optional<Weight> above;  // the lightest at or over it
};
/// Of ascending loads.
NearestLoad nearest_load(std::span<const Weight> loads, Mass target);

}  // namespace floorwheel::training
