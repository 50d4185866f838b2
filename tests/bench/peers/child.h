// SPDX-License-Identifier: GPL-3.0-or-later
// Another program run to its end or to a limit, with what it printed and what it used.
#pragma once

#include <string>
#include <vector>

namespace floorwheel::peers {

struct Finished {
  bool started = false;
  bool stopped = false;  // by us, at the limit
  int code = -1;         // exit code, if it ended by itself
  double wall_s = 0;
  double cpu_s = 0;      // user and system, of it and its own children
  double marker_s = -1;  // wall seconds until `marker` was printed first; -1: never
  long peak_kib = 0;     // resident memory
  std::string printed;   // standard output
};

/// `words[0]` is looked for as a shell does. Errors printed go nowhere. At `limit_s` the program and what it
/// started are killed; `memory_mib` bounds its address space, 0: it does not.
Finished run_child(const std::vector<std::string>& words, double limit_s, const std::string& marker = {},
                   int memory_mib = 0);

bool on_path(const std::string& program);

}  // namespace floorwheel::peers
