// SPDX-License-Identifier: GPL-3.0-or-later
// Where things lie on this machine.
#pragma once

#include <string>

namespace floorwheel::cli {

/// $XDG_DATA_HOME/floorwheel, else ~/.local/share/floorwheel (XDG Base Directory Specification; a relative
/// XDG_DATA_HOME does not count).
std::string default_data_folder();

/// The folder of the running program, with floorwheel-screen beside it.
std::string program_folder();

}  // namespace floorwheel::cli
