// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/play/play.h"

#include <fcntl.h>
#include <poll.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <system_error>

namespace floorwheel::play {
namespace {

// Ctrl-C writes a byte here: waiting for it and for a screen is then one poll.
std::array<int, 2> interrupt_pipe{-1, -1};

void on_interrupt(int) {
  const char byte = 1;
  [[maybe_unused]] const auto n = write(interrupt_pipe[1], &byte, 1);
}

void listen_for_interrupts() {
  if (pipe2(interrupt_pipe.data(), O_CLOEXEC | O_NONBLOCK) != 0)
    throw std::system_error(errno, std::generic_category(), "pipe");
  struct sigaction action = {};
  action.sa_handler = on_interrupt;
  sigaction(SIGINT, &action, nullptr);
  sigaction(SIGTERM, &action, nullptr);
  signal(SIGPIPE, SIG_IGN);
}

void print_section(const char* title, const std::string& text) {
  std::printf("\n%s\n%s", title, text.c_str());
}

/// What was done, read back from the store through the hub: never from what was meant.
void print_day(Stage& stage) {
  int exit_code = 0;
  print_section("The run sheet as it ended", stage.run({"report", "run-sheet"}, exit_code));
  print_section("Attendance", stage.run({"report", "attendance"}, exit_code));
  print_section("Visits by ISO week", stage.run({"report", "frequency"}, exit_code));
  print_section("Sets kept", stage.run({"report", "sets"}, exit_code));
  std::printf("\nPictures\n");
  for (const std::string& file : stage.pictures()) std::printf("%s\n", file.c_str());
  std::fflush(stdout);
}

}  // namespace

int play_class(const PlayOptions& options) {
  std::ifstream in(options.script_file);
  if (!in) {
    std::fprintf(stderr, "%s: cannot be read; a play is a text file, see --help\n",
                 options.script_file.c_str());
    return 2;
  }
  std::ostringstream text;
  text << in.rdbuf();
  const auto steps = parse_script(text.str(), options.script_file);
  if (const auto* error = std::get_if<files::FileError>(&steps)) {
    std::fprintf(stderr, "%s\n", files::text_of(*error).c_str());
    return 2;
  }
  std::filesystem::create_directories(options.stage.pictures);
  std::filesystem::create_directories(options.stage.data);
  listen_for_interrupts();

  Stage stage(options.stage, interrupt_pipe[0]);
  if (!stage.open(options.class_file)) return 2;
  const int failed = stage.play(std::get<std::vector<Step>>(steps));
  if (!stage.interrupted()) print_day(stage);
  if (options.stay && !stage.interrupted()) {
    std::printf("\nThe screens stay on until Ctrl-C.\n");
    std::fflush(stdout);
    pollfd fd{interrupt_pipe[0], POLLIN, 0};
    while (poll(&fd, 1, -1) < 0) {
    }
  }
  const bool interrupted = stage.interrupted();
  stage.close();
  if (interrupted && !options.stay) return 130;
  if (failed > 0) std::printf("\n%d steps of the play were not done.\n", failed);
  return failed == 0 ? 0 : 1;
}

}  // namespace floorwheel::play
