// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel play`: a whole class on real processes, for the demo and the tests of the day.
#include "kiosk/play/play.h"

#include "kiosk/cli/command.h"
#include "kiosk/cli/folders.h"
#include "kiosk/files/nearest.h"

namespace floorwheel::cli {
namespace {

/// "wall,touch" as roles.
std::vector<wire::Role> roles_of(const std::string& list) {
  std::vector<wire::Role> roles;
  for (std::size_t from = 0; from < list.size();) {
    const std::size_t end = std::min(list.find(',', from), list.size());
    const std::string word = list.substr(from, end - from);
    const auto role = wire::role_from(word);
    if (!role || *role == wire::Role::tool)
      throw UsageError{"there is no screen " + word,
                       files::did_you_mean(word, {"wall", "touch", "instructor", "desk"})};
    roles.push_back(*role);
    from = end + 1;
  }
  return roles;
}

int run(const Args& args) {
  for (const char* needed : {"--class", "--data", "--pictures"})
    if (!args.has(needed))
      throw UsageError{std::string(needed) + " is missing", "see floorwheel play --help"};
  play::PlayOptions options;
  options.script_file = *args.operand(0);
  options.class_file = args.value("--class");
  options.stage.programs = program_folder();
  options.stage.data = args.value("--data");
  options.stage.pictures = args.value("--pictures");
  options.stage.speed = args.positive("--speed").value_or(options.stage.speed);
  options.stage.shown = roles_of(args.value("--show"));
  options.stay = args.has("--stay");
  return play::play_class(options);
}

}  // namespace

Command play_command() {
  return {{"play",
           "Plays a whole class on real processes by touch events, and prints the day as it was kept.",
           {"SCRIPT"},
           {{"--class", "FILE", "the class file"},
            {"--data", "DIR", "the hub's data folder; made where it is missing"},
            {"--pictures", "DIR", "where pictures and logs go"},
            {"--speed", "F", "factor of the class clock (default 60)"},
            {"--show", "ROLES", "screens that open a window, such as wall,touch; the others draw off-screen"},
            {"--stay", "", "leave the screens on after the play until Ctrl-C"}},
           {"floorwheel play config/demo/evening.play --class config/demo/hall.class.toml --data /tmp/day "
            "--pictures /tmp/pictures"}},
          run};
}

}  // namespace floorwheel::cli
