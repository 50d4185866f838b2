// SPDX-License-Identifier: GPL-3.0-or-later
// A cost as one number, where a way has to go by a sum: annealing and the assignment of a slot. Which
// rotation is better is always decided component by component.
#pragma once

#include "scheduler/rotation/cost.h"

namespace floorwheel {

/// What one unit of each component weighs, in centimetres of walking.
constexpr std::array<std::int64_t, component_count> weights = {
    20'000'000, 2'000'000, 300'000, 100'000, 20'000, 3'000, 1'000, 1, 1};

constexpr std::int64_t weighed(const Cost& cost) {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) sum += weights[i] * cost.value[i];
  return sum;
}

}  // namespace floorwheel
