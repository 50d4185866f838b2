// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel play`: a class file and a script in, a whole class played on real processes, the day printed.
#pragma once

#include <string>
#include <vector>

#include "kiosk/play/stage.h"

namespace floorwheel::play {

struct PlayOptions {
  std::string class_file;
  std::string script_file;
  StageOptions stage;
  bool stay = false;  // leave the screens on after the play until Ctrl-C
};

/// Exit code: 0 every step was done; 1 some were not; 2 the class or the script cannot be read, or a program
/// did not start; 130 ended by Ctrl-C.
int play_class(const PlayOptions& options);

}  // namespace floorwheel::play
