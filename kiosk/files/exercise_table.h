// SPDX-License-Identifier: GPL-3.0-or-later
// The exercise table: CSV (RFC 4180, UTF-8) with at least the columns
// id,name,primary,assisting,features,kind,loads_kg,reps,rir,hold,substitutes; lists by ';', ranges "8;12".
// Read as well where they are there: equipment,per_side,how,caution. Other columns (why, pattern, load_kind)
// are for people.
#pragma once

#include <string>
#include <string_view>

#include "kiosk/files/file_error.h"
#include "scheduler/class_spec.h"

namespace floorwheel::files {

OrFileError<ExerciseTable> parse_exercises(std::string_view csv, const std::string& file);
/// The table compiled into the program (config/exercises.csv).
const ExerciseTable& shipped_exercises();

}  // namespace floorwheel::files
