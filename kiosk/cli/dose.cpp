// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel dose`: working sets by muscle group and week, as done by set records or as a programme plans.
#include "scheduler/training/dose.h"

#include "kiosk/cli/class_input.h"
#include "kiosk/cli/command.h"
#include "kiosk/cli/dose_text.h"
#include "kiosk/cli/programme_input.h"
#include "kiosk/cli/text.h"
#include "kiosk/cli/training_input.h"
#include "scheduler/training/planned_dose.h"

namespace floorwheel::cli {
namespace {

using training::DoseRow;

/// A planned dose belongs to no member and no week of the calendar.
std::string json_of(const std::vector<DoseRow>& rows, bool planned) {
  std::string out = "{ \"rows\": [";
  bool first = true;
  for (const DoseRow& r : rows) {
    out += first ? "\n  " : ",\n  ";
    first = false;
    out += "{ \"member\": " + in_quotes(r.member) +
           ", \"week\": " + (planned ? "null" : in_quotes(text_of(r.week))) + ", \"group\": \"" +
           std::string(id_of(r.group)) + "\", \"sets\": " + sets_text(r.counted) +
           ", \"assisting_sets\": " + std::to_string(r.assisting_sets) +
           ", \"days\": " + std::to_string(r.days) + ", \"band\": \"" +
           std::string(id_of(training::band_of(r.counted))) + "\" }";
  }
  return out + " ] }\n";
}

/// `planned` is the programme's name, or nothing.
std::string text_of_rows(const std::vector<DoseRow>& rows, const std::optional<std::string>& planned) {
  if (rows.empty()) return "No working sets.\n";
  std::string out;
  std::vector<std::vector<std::string>> table;
  const auto flush = [&] {
    if (!table.empty()) out += columns(table, "  ") + "\n";
    table.clear();
  };
  const DoseRow* last = nullptr;
  for (const DoseRow& r : rows) {
    if (last == nullptr || last->member != r.member || last->week != r.week) {
      flush();
      out += planned ? *planned + ", planned a week\n" : r.member + ", " + text_of(r.week) + "\n";
      table.push_back({"group", "sets", "days", "assisting"});
      table.back().insert(table.back().end(), judged_heads.begin(), judged_heads.end());
    }
    last = &r;
    table.push_back({std::string(id_of(r.group)), sets_text(r.counted), std::to_string(r.days),
                     std::to_string(r.assisting_sets)});
    const auto words = judged(r.counted);
    table.back().insert(table.back().end(), words.begin(), words.end());
  }
  flush();
  return out + dose_notes();
}

/// 0.5 as 50; the option is a fraction from 0 to 1.
int percent_of(const Args& args) {
  if (!args.has("--assisting")) return 0;
  const std::string text = args.value("--assisting");
  const training::Mass part = weight_of("--assisting", text).mass;
  const std::int64_t percent = part.units / (training::Mass::per_kg / 100);
  if (part > training::Mass::kilograms(1) || training::Mass::grams(10 * percent) != part ||
      text.find_first_not_of("0123456789.") != std::string::npos)
    throw UsageError{"--assisting is \"" + text + "\"", "write a fraction from 0 to 1, such as 0.5"};
  return static_cast<int>(percent);
}

int run(const Args& args) {
  training::DoseOptions options;
  if (args.has("--week")) {
    options.week = training::iso_week_from(args.value("--week"));
    if (!options.week)
      throw UsageError{"--week: \"" + args.value("--week") + "\" is no ISO week", "write it as in 2026-W10"};
  }
  options.assisting_percent = percent_of(args);
  const ExerciseTable table = exercises_of(args);
  const std::string path = *args.operand(0);
  std::vector<DoseRow> rows;
  std::optional<std::string> planned;
  if (is_programme(path)) {
    if (options.week)
      throw UsageError{"--week with a programme", "leave it out: a programme plans every week alike"};
    const Programme p = known_programme_of(path, table);
    rows = training::planned_dose(p, table, options.assisting_percent);
    for (DoseRow& r : rows) r.member = "-";
    planned = p.name;
  } else {
    rows = training::dose(sets_of(path, table), table, options);
  }
  print(args.has("--json") ? json_of(rows, planned.has_value()) : text_of_rows(rows, planned));
  return exit_done;
}

}  // namespace

Command dose_command() {
  return {
      {"dose",
       "Counts the working sets by muscle group and ISO week: of each member in set records (CSV), or as a "
       "programme (*.programme.toml) plans them.",
       {"SETS|PROGRAMME"},
       {{"--week", "WEEK", "this ISO week only, such as 2026-W10"},
        {"--assisting", "PART", "count assisting groups by this part of a set (default 0; published: 0.5)"},
        exercises_option,
        {"--json", "", "machine-readable"}},
       {"floorwheel dose sets.csv --week 2026-W10", "floorwheel dose two-evenings.programme.toml"}},
      run};
}

}  // namespace floorwheel::cli
