// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel`: the hub and the command line.
#include <clocale>
#include <csignal>
#include <cstdio>
#include <exception>

#include "kiosk/cli/command.h"

int main(int argc, char** argv) {
  // Widths of characters only; numbers and texts stay the same everywhere.
  std::setlocale(LC_CTYPE, "C.UTF-8");
  std::signal(SIGPIPE, SIG_IGN);
  try {
    const std::vector<std::string> words(argv + 1, argv + argc);
    return floorwheel::cli::run(words);
  } catch (const std::exception& e) {
    std::fprintf(stderr, "floorwheel: %s\n", e.what());
    return floorwheel::cli::exit_unreadable;
  }
}
