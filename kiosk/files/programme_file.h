// SPDX-License-Identifier: GPL-3.0-or-later
// A programme file (*.programme.toml) into the plain values the programme check judges.
#pragma once

#include <string>
#include <string_view>

#include "kiosk/files/file_error.h"
#include "scheduler/class_spec.h"
#include "scheduler/training/check_programme.h"

namespace floorwheel::files {

/// The table only says which exercises are holds, whose `reps` are seconds; an exercise it lacks is no error
/// here.
OrFileError<Programme> parse_programme(std::string_view toml, const std::string& file, const ExerciseTable&);
OrFileError<Programme> read_programme(const std::string& path, const ExerciseTable&);

}  // namespace floorwheel::files
