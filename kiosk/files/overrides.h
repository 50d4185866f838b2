// SPDX-License-Identifier: GPL-3.0-or-later
// Overrides as CSV with the columns, in any order,
// member,exercise,decided_on,decided_by,load_kg,suggested_kg,suggested_change; the change is up, same or
// down.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "kiosk/files/file_error.h"
#include "scheduler/class_spec.h"
#include "scheduler/training/override.h"

namespace floorwheel::files {

OrFileError<std::vector<training::Override>> parse_overrides(std::string_view csv, const std::string& file,
                                                             const ExerciseTable&);

}  // namespace floorwheel::files
