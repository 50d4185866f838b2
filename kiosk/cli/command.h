// SPDX-License-Identifier: GPL-3.0-or-later
// The commands of `floorwheel`, one file each. A command throws UsageError or files::FileError for what
// cannot be read; `main` prints them and ends with 2.
#pragma once

#include "kiosk/cli/args.h"

namespace floorwheel::cli {

inline constexpr int exit_done = 0;        // done, and it holds
inline constexpr int exit_holds_not = 1;   // read, but it does not hold
inline constexpr int exit_unreadable = 2;  // cannot be read, or is not what it should be

struct Command {
  Usage usage;
  int (*run)(const Args&);
};

Command plan_command();
Command audit_command();
Command repair_command();
Command exercises_command();
Command hub_command();
Command tell_command();
Command ask_command();
Command report_command();
Command doctor_command();
Command play_command();
Command dose_command();
Command next_command();
Command strength_command();
Command plates_command();
Command fit_command();
Command check_command();
Command week_command();

/// The whole program for the words after its name; the exit code.
int run(std::span<const std::string> words);

}  // namespace floorwheel::cli
