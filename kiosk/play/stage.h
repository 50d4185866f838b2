// SPDX-License-Identifier: GPL-3.0-or-later
// The stage of a play: a hub and four screens, each a process of its own joined by sockets only, and the
// loop that does the steps of a script on them. A process that ends in the middle is said, and its part of
// the play is left out, as on a real floor.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "kiosk/play/child.h"
#include "kiosk/play/script.h"

namespace floorwheel::play {

struct StageOptions {
  std::string programs;           // folder of floorwheel and floorwheel-screen
  std::string data;               // the hub's data folder
  std::string pictures;           // for shots and logs
  double speed = 60;              // factor of the class clock
  std::vector<wire::Role> shown;  // screens that open a window; the others draw off-screen
  int step_limit_s = 60;          // how long one step may take before it counts as failed
};

class Stage {
 public:
  /// `interrupt_fd` becomes readable when the person wants to end it (Ctrl-C).
  Stage(StageOptions options, int interrupt_fd);

  /// Starts the hub, tells it the class, and starts the screens; false with a line on stderr if it cannot.
  bool open(const std::string& class_file);
  /// Does the steps; the number of those that failed or were left out.
  int play(const std::vector<Step>& steps);
  /// Runs one of our commands against the hub and gives back what it printed.
  std::string run(std::vector<std::string> arguments, int& exit_code);
  /// Ends screens, then hub.
  void close();

  [[nodiscard]] bool interrupted() const;
  [[nodiscard]] std::string hub_url() const { return "ws://" + address_; }
  [[nodiscard]] std::vector<std::string> pictures() const { return taken_; }

 private:
  bool start_screen(wire::Role role);
  bool do_step(const Step& step);
  [[nodiscard]] std::string log_of(std::string_view who) const;

  StageOptions options_;
  int interrupt_fd_;
  std::string address_;
  Child hub_;
  std::map<wire::Role, Child> screens_;
  std::vector<std::string> taken_;
};

}  // namespace floorwheel::play
