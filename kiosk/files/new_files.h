// SPDX-License-Identifier: GPL-3.0-or-later
// Writes new files: several into a folder, all of them or none, or one; nothing is ever overwritten.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "kiosk/files/file_error.h"

namespace floorwheel::files {

/// Names and texts. The folder is made if it is not there (its parent has to be). A file that is there with
/// the same text stays as it is; with another text nothing is written and the error names it.
std::optional<FileError> write_new_files(const std::string& folder,
                                         const std::vector<std::pair<std::string, std::string>>& files);

/// One file that is not there yet, whole and on the disk, or not there; errno says why not.
bool write_whole(const std::string& path, std::string_view text);

}  // namespace floorwheel::files
