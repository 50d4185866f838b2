// SPDX-License-Identifier: GPL-3.0-or-later
// The hub as a process whose machine a test can restart and whose disk a test can slow: `--clock FILE` reads
// boot id, boot time, civil time (milliseconds) and the offset of local time (seconds), a line each, from a
// file at every look at the clock; `--slow-commit MS` waits before each COMMIT as a slow card would;
// `--say-received` prints the id of each command as it reaches the ledger; `--confirm-before-commit` confirms
// in the wrong order: the control build that must lose records.
#include <time.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <memory>
#include <string>
#include <string_view>

#include "kiosk/hub/hub.h"

namespace {

class FileClock : public floorwheel::hub::Clock {
 public:
  explicit FileClock(std::string path) : path_(std::move(path)) {}
  [[nodiscard]] std::string boot_id() const override { return line(0); }
  [[nodiscard]] std::int64_t boot_ms() const override { return std::stoll(line(1)); }
  [[nodiscard]] std::int64_t civil_ms() const override { return std::stoll(line(2)); }
  [[nodiscard]] int utc_offset_s(std::int64_t) const override { return std::stoi(line(3)); }

 private:
  [[nodiscard]] std::string line(int number) const {
    std::ifstream in(path_);
    std::string text;
    for (int i = 0; i <= number; ++i) std::getline(in, text);
    return text;
  }
  std::string path_;
};

void say(const std::string& line) {
  // One write, so that a line is whole or not there when the process is killed.
  const std::string text = line + "\n";
  if (write(STDOUT_FILENO, text.data(), text.size()) < 0) std::abort();
}

void wait_ms(long ms) {
  const timespec t{.tv_sec = ms / 1000, .tv_nsec = ms % 1000 * 1'000'000};
  nanosleep(&t, nullptr);
}

}  // namespace

int main(int argc, char** argv) {
  floorwheel::hub::HubOptions options;
  options.listen = "127.0.0.1:0";
  std::unique_ptr<FileClock> clock;
  for (int i = 1; i < argc; ++i) {
    const std::string_view word = argv[i];
    const auto value = [&] { return i + 1 < argc ? std::string(argv[++i]) : std::string(); };
    if (word == "--data") options.data = value();
    if (word == "--listen") options.listen = value();
    if (word == "--speed") options.speed = std::stod(value());
    if (word == "--clock") clock = std::make_unique<FileClock>(value());
    if (word == "--say-received")
      options.seams.received = [](const std::string& id) { say("received " + id); };
    if (word == "--slow-commit") options.seams.before_commit = [ms = std::stol(value())] { wait_ms(ms); };
    if (word == "--confirm-before-commit") options.seams.confirm_before_commit = true;
  }
  options.clock = clock.get();
  return floorwheel::hub::run_hub(options);
}
