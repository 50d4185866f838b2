// SPDX-License-Identifier: GPL-3.0-or-later
// A whole text file in memory.
#pragma once

#include <string>

#include "kiosk/files/file_error.h"

namespace floorwheel::files {

/// The bytes of a regular file up to 64 MB without a UTF-8 byte order mark. `kind` names what is expected
/// ("class file") for the hint.
OrFileError<std::string> read_text(const std::string& path, const std::string& kind);

}  // namespace floorwheel::files
