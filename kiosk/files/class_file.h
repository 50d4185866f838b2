// SPDX-License-Identifier: GPL-3.0-or-later
// The class file (TOML 1.0) to a ClassSpec. Unknown keys and ids are errors that name the nearest known one.
// What is read but cannot hold (rules 3 and 5) is the planner's to refuse.
#pragma once

#include <string>
#include <string_view>

#include "kiosk/files/file_error.h"
#include "scheduler/class_spec.h"

namespace floorwheel::files {

OrFileError<ClassSpec> parse_class(std::string_view toml, const std::string& file, const ExerciseTable&);
OrFileError<ClassSpec> read_class(const std::string& path, const ExerciseTable&);

}  // namespace floorwheel::files
