// SPDX-License-Identifier: GPL-3.0-or-later
// A week file (*.week.toml) into the plain values the week planner fills.
#pragma once

#include <string>
#include <string_view>

#include "kiosk/files/file_error.h"
#include "scheduler/class_spec.h"
#include "scheduler/training/week.h"

namespace floorwheel::files {

/// Exercises to keep and kinds of equipment are those of the table. What is read but cannot be filled is the
/// planner's to refuse.
OrFileError<training::WeekSpec> parse_week(std::string_view toml, const std::string& file,
                                           const ExerciseTable&);
OrFileError<training::WeekSpec> read_week(const std::string& path, const ExerciseTable&);

}  // namespace floorwheel::files
