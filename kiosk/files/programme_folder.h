// SPDX-License-Identifier: GPL-3.0-or-later
// The programmes of a hub: files NAME.programme.toml in one folder. A name is what stands before the dot; it
// leads nowhere else.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "kiosk/files/programme_file.h"

namespace floorwheel::files {

/// The names in a folder, in order; none where there is no such folder. Files whose name cannot be asked for
/// (see below) are left out.
std::vector<std::string> programme_names(const std::string& folder);

/// Letters A to Z, figures, '-', '_', single spaces and single dots between them, at most 64 bytes: no way
/// out of the folder.
bool is_programme_name(std::string_view);

/// Reads one by its name. An error names the file without its folder.
OrFileError<Programme> read_programme_in(const std::string& folder, const std::string& name,
                                         const ExerciseTable&);

}  // namespace floorwheel::files
