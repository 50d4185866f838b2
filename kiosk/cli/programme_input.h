// SPDX-License-Identifier: GPL-3.0-or-later
// Programmes as `dose` and `next` read them: every exercise must be one of the table.
#pragma once

#include <string>

#include "kiosk/cli/args.h"
#include "scheduler/class_spec.h"
#include "scheduler/training/check_programme.h"

namespace floorwheel::cli {

/// By its name: *.programme.toml.
bool is_programme(const std::string& path);
/// An exercise that the table lacks is thrown as files::FileError with its line.
Programme known_programme_of(const std::string& path, const ExerciseTable&);

/// What a programme plans for an exercise, practice left out. Planned differently on several days it is a
/// UsageError unless `day` ("" for any) names one.
PlannedExercise planned_in(const Programme&, const std::string& path, const std::string& exercise,
                           const std::string& day);

}  // namespace floorwheel::cli
