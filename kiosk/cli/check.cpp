// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel check`: what the rules find in a programme.
#include "scheduler/training/check.h"

#include "kiosk/cli/class_input.h"
#include "kiosk/cli/command.h"
#include "kiosk/cli/text.h"
#include "kiosk/files/findings_json.h"
#include "kiosk/files/muscle_groups.h"
#include "kiosk/files/programme_file.h"

namespace floorwheel::cli {
namespace {

std::string dose_text(const Programme& p, const ExerciseTable& table) {
  const auto sets = weekly_sets(p, table);
  std::string words;
  for (int i = 0; i < group_count; ++i)
    if (const int n = sets[static_cast<std::size_t>(i)]; n > 0)
      words +=
          (words.empty() ? "" : ", ") + std::string(id_of(static_cast<Group>(i))) + " " + std::to_string(n);
  return words.empty() ? "none" : words;
}

std::string place_of(const Finding& f) {
  std::string place = f.day;
  if (!f.exercise.empty()) place += (place.empty() ? "" : ", ") + f.exercise;
  if (f.exercise.empty() && f.group) place += (place.empty() ? "" : ", ") + files::word_of(*f.group);
  return place;
}

std::string findings_text(const Programme& p, const ExerciseTable& table,
                          const std::vector<Finding>& findings, const std::string& file) {
  std::string text = p.name + ": " + std::string(id_of(p.level)) + ", " +
                     counted(std::ssize(p.days), "day", "days") + " a week, " +
                     counted(p.weeks, "week", "weeks") + ".\n";
  text += "Working sets a week: " + dose_text(p, table) + ".\n";
  constexpr std::array<std::pair<Severity, std::string_view>, 3> parts{{
      {Severity::must, "Must change: likely to hurt, or contradictory"},
      {Severity::should, "Should change: against evidence or practice"},
      {Severity::note, "Worth knowing"},
  }};
  for (const auto& [severity, title] : parts) {
    bool first = true;
    for (const Finding& f : findings) {
      if (f.severity != severity) continue;
      if (first) text += "\n" + std::string(title) + "\n";
      first = false;
      text +=
          "  " + file + ":" + std::to_string(f.line) + ": " + std::string(f.rule) + ": " + place_of(f) + "\n";
      text += "    found   " + f.found + "\n    wanted  " + f.wanted + "\n    mend    " + f.mend +
              "\n    source  " + std::string(f.source) + "\n";
    }
  }
  if (findings.empty()) text += "\nNo finding by these rules.\n";
  return text +
         "\nThese rules are no medical advice. Stop on pain and ask the instructor; what a licensed "
         "professional "
         "advises comes first.\n";
}

int run(const Args& args) {
  const std::string file = *args.operand(0);
  const ExerciseTable table = exercises_of(args);
  const Programme p = value_or_throw(files::read_programme(file, table));
  const std::vector<Finding> findings = check_programme(p, table);
  print(args.has("--json") ? files::findings_json(findings) : findings_text(p, table, findings, file));
  for (const Finding& f : findings)
    if (f.severity != Severity::note) return exit_holds_not;
  return exit_done;
}

}  // namespace

Command check_command() {
  return {{"check",
           "Says what the rules find in a training programme, with source and mend.",
           {"PROGRAMME"},
           {{"--json", "", "machine-readable"}, exercises_option},
           {"floorwheel check two-evenings.programme.toml",
            "floorwheel check two-evenings.programme.toml --json"}},
          run};
}

}  // namespace floorwheel::cli
