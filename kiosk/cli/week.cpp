// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel week`: which exercises stand in each class of a week.
#include "scheduler/training/week.h"

#include <cstdio>

#include "kiosk/cli/class_input.h"
#include "kiosk/cli/command.h"
#include "kiosk/cli/text.h"
#include "kiosk/cli/week_text.h"
#include "kiosk/files/new_files.h"
#include "kiosk/files/week_file.h"
#include "kiosk/files/week_write.h"

namespace floorwheel::cli {
namespace {

void write_classes(const std::string& folder, const std::string& file, const training::WeekSpec& week,
                   const ExerciseTable& table, const training::WeekPlan& plan) {
  std::vector<std::pair<std::string, std::string>> classes;
  for (std::size_t c = 0; c < week.classes.size(); ++c)
    classes.emplace_back(files::class_file_name(file, week, c), files::class_file_text(week, table, plan, c));
  if (auto error = files::write_new_files(folder, classes)) throw std::move(*error);
}

int run(const Args& args) {
  const std::string file = *args.operand(0);
  const ExerciseTable table = exercises_of(args);
  const training::WeekSpec week = value_or_throw(files::read_week(file, table));
  const auto answer = training::plan_week(week, table);
  if (const auto* refusal = std::get_if<training::WeekRefusal>(&answer)) {
    if (args.has("--json"))
      print(files::to_json(*refusal));
    else
      std::fprintf(stderr, "%s\n", week_refusal_text(week, *refusal, file).c_str());
    return exit_holds_not;
  }
  const auto& plan = std::get<training::WeekPlan>(answer);
  if (args.has("--out")) write_classes(args.value("--out"), file, week, table, plan);
  print(args.has("--json") ? files::to_json(week, table, plan, week_sentences(week, plan))
                           : week_text(week, table, plan));
  return exit_done;
}

}  // namespace

Command week_command() {
  return {
      {"week",
       "Chooses the exercises of a week's classes for dose, recovery, rings and equipment, with proof.",
       {"FILE"},
       {{"--out", "DIR", "write a class file for each class into DIR; nothing is overwritten"},
        {"--json", "", "machine-readable"},
        exercises_option},
       {"floorwheel week config/demo/weeks/hall.week.toml", "floorwheel week hall.week.toml --out classes"}},
      run};
}

}  // namespace floorwheel::cli
