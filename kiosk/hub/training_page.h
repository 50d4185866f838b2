// SPDX-License-Identifier: GPL-3.0-or-later
// A member's training as the instructor asks for it: dose of a week, next load of every exercise done lately,
// trends, and who stalls. Computed from the store's records by the training rules, never kept; what a person
// decided instead of a suggestion is (kiosk/store/decisions.h), and stands here.
#pragma once

#include <boost/json.hpp>
#include <string>

#include "kiosk/hub/command.h"
#include "scheduler/training/calendar.h"
#include "scheduler/training/mass.h"
#include "scheduler/training/override.h"

namespace floorwheel::hub {

/// Of every exercise in the last twelve weeks, by id: the next load with its reason. `sets` is how many were
/// done at the last visit; the range and, where the floor says nothing, the loads are the exercise table's.
boost::json::array next_loads(Room&, const std::string& member, training::Day today);
/// {working_sets, dose, next, trends}: sets and rows of this week, next loads, and the three exercises with
/// most visits in the last twelve weeks.
boost::json::object training_of(Room&, const std::string& member, training::Day today);
/// Rows of one week, of one member or ("") all.
boost::json::array dose_rows(store::Database&, const ExerciseTable&, training::IsoWeek,
                             const std::string& member);

/// The trends of training_of alone.
boost::json::array trends(Room&, const std::string& member, training::Day today);
/// As answers give a mass: kilograms, to the gram.
double kg_of(training::Mass);

struct Suggestion {
  training::Mass load;  // the last one where the floor has nothing as light
  training::Change change = training::Change::same;
};
/// What the rules alone suggest, whatever a person decided.
Suggestion suggestion_for(Room&, const std::string& member, const Exercise&, training::Day today);

}  // namespace floorwheel::hub
