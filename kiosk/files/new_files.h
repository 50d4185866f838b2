// SPDX-License-Identifier: GPL-3.0-or-later
// Writes several new files into a folder, all of them or none; nothing is ever overwritten.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "kiosk/files/file_error.h"

namespace floorwheel::files {

/// Names and texts. The folder is made if it is not there (its parent has to be). A file that is there with
/// the same text stays as it is; with another text nothing is written and the error names it.
std::optional<FileError> write_new_files(const std::string& folder,
                                         const std::vector<std::pair<std::string, std::string>>& files);

}  // namespace floorwheel::files
