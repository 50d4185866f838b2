// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel dose`: working sets by muscle group and week.
#include "scheduler/training/dose.h"

#include "kiosk/cli/class_input.h"
#include "kiosk/cli/command.h"
#include "kiosk/cli/text.h"
#include "kiosk/cli/training_input.h"

namespace floorwheel::cli {
namespace {

using training::DoseRow;

/// "6", "1.5": sets as far as they are counted.
std::string sets_text(training::Centisets n) {
  std::string text = std::to_string(n / 100);
  if (n % 100 == 0) return text;
  text += "." + std::string(n % 100 < 10 ? "0" : "") + std::to_string(n % 100);
  return text.substr(0, text.find_last_not_of('0') + 1);
}

std::string_view words_of(training::DoseBand band) {
  switch (band) {
    case training::DoseBand::under_3:
      return "under 3";
    case training::DoseBand::from_3_to_9:
      return "3 to 9";
    case training::DoseBand::from_10_to_15:
      return "10 to 15";
    case training::DoseBand::over_15:
      break;
  }
  return "over 15";
}

std::string json_of(const std::vector<DoseRow>& rows) {
  std::string out = "{ \"rows\": [";
  bool first = true;
  for (const DoseRow& r : rows) {
    out += first ? "\n  " : ",\n  ";
    first = false;
    out += "{ \"member\": " + quoted(r.member) + ", \"week\": \"" + text_of(r.week) + "\", \"group\": \"" +
           std::string(id_of(r.group)) + "\", \"sets\": " + sets_text(r.counted) +
           ", \"assisting_sets\": " + std::to_string(r.assisting_sets) +
           ", \"days\": " + std::to_string(r.days) + ", \"band\": \"" +
           std::string(id_of(training::band_of(r.counted))) + "\" }";
  }
  return out + " ] }\n";
}

std::string text_of_rows(const std::vector<DoseRow>& rows) {
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
      out += r.member + ", " + text_of(r.week) + "\n";
      table.push_back({"group", "sets", "days", "assisting", "band", "Schoenfeld 2017", "Baz-Valle 2022"});
    }
    last = &r;
    table.push_back({std::string(id_of(r.group)), sets_text(r.counted), std::to_string(r.days),
                     std::to_string(r.assisting_sets), std::string(words_of(training::band_of(r.counted))),
                     std::string(training::class_by_schoenfeld_2017(r.counted)),
                     std::string(training::class_by_baz_valle_2022(r.counted))});
  }
  flush();
  return out +
         "Band: a teaching rule of the trade, no source. Schoenfeld 2017 (J Sports Sci 35:1073): under 5 "
         "low, 5 "
         "to 9 middle,\n10 and more high. Baz-Valle 2022 (J Hum Kinet 81:199): under 12 low, 12 to 20 "
         "moderate, "
         "over 20 high.\n" +
         std::string(caution);
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
  const auto records = sets_of(*args.operand(0), table);
  const auto rows = training::dose(records, table, options);
  print(args.has("--json") ? json_of(rows) : text_of_rows(rows));
  return exit_done;
}

}  // namespace

Command dose_command() {
  return {
      {"dose",
       "Counts the working sets of each member by muscle group and ISO week.",
       {"SETS"},
       {{"--week", "WEEK", "this ISO week only, such as 2026-W10"},
        {"--assisting", "PART", "count assisting groups by this part of a set (default 0; published: 0.5)"},
        exercises_option,
        {"--json", "", "machine-readable"}},
       {"floorwheel dose sets.csv --week 2026-W10"}},
      run};
}

}  // namespace floorwheel::cli
