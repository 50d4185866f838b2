// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel repair`: the least-change repair of a rotation after the class file has changed.
#include "kiosk/cli/class_input.h"
#include "kiosk/cli/command.h"
#include "kiosk/cli/planning.h"

namespace floorwheel::cli {
namespace {

int run(const Args& args) {
  const Planning planning(args);
  if (!args.has("--at-slot"))
    throw UsageError{"--at-slot is missing", "say from which slot on the rotation may change: --at-slot 5"};
  const std::string file = *args.operand(0);
  const std::string old_file = *args.operand(1);
  const ClassSpec c = class_of(file, args);
  const files::RotationFile old = rotation_file_of(old_file);
  const EarlierSheet sheet = value_or_throw(files::earlier_sheet_for(c, old, old_file));
  const int slots = c.slots.value_or(old.slots);
  const auto at_slot = args.whole("--at-slot", 1, slots + 1);
  if (*at_slot > old.slots + 1)
    throw UsageError{"--at-slot is " + std::to_string(*at_slot),
                     "the old rotation has " + std::to_string(old.slots) + " slots"};
  return planning.finish(c, file, repair(c, slots, sheet, static_cast<int>(*at_slot), planning.options()));
}

}  // namespace

Command repair_command() {
  Usage usage{
      "repair",
      "Mends a rotation from slot K on, changing as little as it can; CLASS is the changed class file.",
      {"CLASS", "OLD"},
      planning_options(),
      {"floorwheel repair changed.class.toml ring.json --at-slot 5 --json > mended.json"}};
  usage.options.insert(usage.options.begin(),
                       {"--at-slot", "K", "slots before K are over and stay as they were"});
  return {usage, run};
}

}  // namespace floorwheel::cli
