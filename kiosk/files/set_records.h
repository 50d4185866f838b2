// SPDX-License-Identifier: GPL-3.0-or-later
// Set records as CSV (RFC 4180, UTF-8) with the columns, in any order,
// member,exercise,performed_at,kind,load_kg,reps,rir,note.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "kiosk/files/file_error.h"
#include "scheduler/class_spec.h"
#include "scheduler/training/set_record.h"

namespace floorwheel::files {

/// Records in the order of the rows. An exercise the table lacks is an error.
OrFileError<std::vector<training::SetRecord>> parse_sets(std::string_view csv, const std::string& file,
                                                         const ExerciseTable&);

}  // namespace floorwheel::files
