// SPDX-License-Identifier: GPL-3.0-or-later
// Every plan of a tiny week, priced by its own few lines: written from the words of scheduler/training/week.h
// and training rules alone, sharing only plain values with the planner.
#pragma once

#include <array>
#include <vector>

#include "scheduler/training/week.h"

namespace floorwheel::week_brute_force {

using Values = training::WeekValues;

/// Whether some cyclic order has no neighbours that share a group: all permutations.
bool has_ring(const std::vector<GroupSet>& stations, int laps);

Values price(const training::WeekSpec&, const ExerciseTable&, const std::vector<std::vector<std::string>>&);

/// What is wrong with a plan by the hard rules; empty: nothing. The ring is the order given.
std::string broken_rule(const training::WeekSpec&, const ExerciseTable&,
                        const std::vector<std::vector<std::string>>&);

/// The values of every plan; none where there is no plan.
std::vector<Values> all_plans(const training::WeekSpec&, const ExerciseTable&);

}  // namespace floorwheel::week_brute_force
