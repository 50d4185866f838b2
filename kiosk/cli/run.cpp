// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel`: finds the command, prints what went wrong, gives the exit code. Every command has its own
// file.
#include <clocale>
#include <csignal>
#include <cstdio>
#include <exception>

#include "kiosk/cli/command.h"
#include "kiosk/cli/text.h"
#include "kiosk/files/file_error.h"
#include "kiosk/files/nearest.h"

namespace floorwheel::cli {
namespace {

std::vector<Command> all_commands() {
  return {plan_command(),   audit_command(), repair_command(), exercises_command(), check_command(),
          week_command(),   dose_command(),  next_command(),   strength_command(),  plates_command(),
          fit_command(),    hub_command(),   tell_command(),   ask_command(),       report_command(),
          doctor_command(), play_command()};
}

std::string overview(const std::vector<Command>& commands) {
  std::vector<std::vector<std::string>> rows;
  for (const Command& c : commands) rows.push_back({std::string(c.usage.command), std::string(c.usage.what)});
  return "floorwheel COMMAND ...\n\nGroup circuits: who is at which station when, and the hub of a gym "
         "floor.\n\n"
         "Commands\n" +
         columns(rows, "  ") +
         "\nfloorwheel COMMAND --help says more about one.\n\nExample\n"
         "  floorwheel plan config/demo/hall.class.toml\n";
}

int fail(const std::string& text) {
  std::fprintf(stderr, "%s\n", text.c_str());
  return exit_unreadable;
}

int run_command(const Command& command, std::span<const std::string> words) {
  const std::string name = "floorwheel " + std::string(command.usage.command);
  try {
    for (const std::string& word : words) {
      if (word == "--") break;
      if (word == "--help" || word == "-h") {
        print(help_text(command.usage));
        return exit_done;
      }
    }
    return command.run(parse(command.usage, words));
  } catch (const UsageError& e) {
    return fail(name + ": " + e.what + "; " + e.right);
  } catch (const files::FileError& e) {
    return fail(files::text_of(e));
  } catch (const std::exception& e) {
    return fail(name + ": " + e.what());
  }
}

}  // namespace

int run(std::span<const std::string> words) {
  const std::vector<Command> commands = all_commands();
  if (words.empty() || words[0] == "--help" || words[0] == "-h" || words[0] == "help") {
    print(overview(commands));
    return words.empty() ? exit_unreadable : exit_done;
  }
  std::vector<std::string> names;
  for (const Command& c : commands) {
    if (c.usage.command == words[0]) return run_command(c, words.subspan(1));
    names.emplace_back(c.usage.command);
  }
  return fail("floorwheel: there is no command " + words[0] + "; " + files::did_you_mean(words[0], names));
}

}  // namespace floorwheel::cli
