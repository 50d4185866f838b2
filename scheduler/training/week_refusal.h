// SPDX-License-Identifier: GPL-3.0-or-later
// Why a class of the week cannot be filled, in a sentence that says what would do.
#pragma once

#include <optional>

#include "scheduler/training/week_floor.h"

namespace floorwheel::training {

/// What needs no search: the time, the exercises to keep and their equipment.
std::optional<WeekRefusal> refusal_at_sight(const WeekSpec&, const ExerciseTable&);

/// For a class in which the search found no plan; `proven`: there is none.
WeekRefusal no_plan_for(const FloorClass&, bool proven);

/// The most stations that the class's equipment allows, rings apart; exact up to a number of trials far above
/// any hall's, else a bound.
int most_stations(const FloorClass&);

}  // namespace floorwheel::training
