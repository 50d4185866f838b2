// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel strength`: what could be lifted once, by every published equation that holds; the effort scale;
// and a member's trend.
#include "scheduler/training/strength.h"

#include "kiosk/cli/class_input.h"
#include "kiosk/cli/command.h"
#include "kiosk/cli/text.h"
#include "kiosk/cli/training_input.h"

namespace floorwheel::cli {
namespace {

using training::Mass;
using training::Weight;

std::string span_text(const std::array<int, 2>& range) {
  return range[0] == range[1] ? std::to_string(range[0])
                              : std::to_string(range[0]) + "-" + std::to_string(range[1]);
}
std::string span_json(const std::array<int, 2>& range) {
  return "[" + std::to_string(range[0]) + ", " + std::to_string(range[1]) + "]";
}

/// The load of a row of the chart, from what was lifted; none where the chart lacks the repetitions done.
std::optional<Mass> by_chart(const training::ChartRow& row, Mass load, int reps) {
  const auto done = training::percent_for(reps);
  if (!done) return std::nullopt;
  // To the nearest 10 µg, as the estimates are.
  constexpr std::int64_t unit = 1000;
  const std::int64_t by = unit * *done;
  return Mass{unit * ((2 * load.units * row.percent + by) / (2 * by))};
}

std::string estimates_json(const std::vector<training::Estimate>& all, Mass load, int reps) {
  std::string out = "{ \"estimates\": [";
  for (const auto& e : all)
    out += std::string(&e == &all.front() ? "\n  " : ",\n  ") + "{ \"equation\": \"" +
           std::string(e.equation->id) + "\", \"one_rm_kg\": " + decimal_kg(e.one_rm) +
           ", \"valid_reps\": " + span_json(e.equation->valid_reps) + " }";
  out += " ],\n  \"percent_table\": [";
  bool first = true;
  for (const training::ChartRow& row : training::percent_chart()) {
    const auto at = by_chart(row, load, reps);
    out += std::string(first ? "\n  " : ",\n  ") + "{ \"reps\": " + std::to_string(row.reps) +
           ", \"pct_1rm\": " + std::to_string(row.percent) +
           ", \"load_kg\": " + (at ? decimal_kg(*at) : "null") + " }";
    first = false;
  }
  return out + " ] }\n";
}

std::string estimates_text(const std::vector<training::Estimate>& all, const Weight& load, int reps) {
  std::string out =
      text_of(load) + " for " + counted(reps, "repetition", "repetitions") + "; once could be\n";
  std::vector<std::vector<std::string>> rows{{"equation", "estimate", "holds for", "by"}};
  for (const auto& e : all)
    rows.push_back({std::string(e.equation->id), shown(e.one_rm), span_text(e.equation->valid_reps) + " reps",
                    std::string(e.equation->who)});
  out += columns(rows, "  ") + "\nNSCA training load chart\n";
  rows = {{"reps", "percent", "load"}};
  for (const training::ChartRow& row : training::percent_chart()) {
    const auto at = by_chart(row, load.mass, reps);
    rows.push_back({std::to_string(row.reps), std::to_string(row.percent) + " %", at ? shown(*at) : "-"});
  }
  return out + columns(rows, "  ") +
         "\nEstimates miss by some kilograms; never test a single heavy repetition alone.\n" +
         std::string(caution);
}

int from_one_set(const Args& args) {
  const Weight load = weight_of("--load", needed(args, "--load", "100"));
  if (load.mass == Mass{}) throw UsageError{"--load is 0", "write the load lifted, above 0"};
  needed(args, "--reps", "10");
  const int reps = static_cast<int>(*args.whole("--reps", 1, training::most_reps));
  std::string exercise;
  if (args.has("--exercise")) {
    const ExerciseTable table = exercises_of(args);
    exercise = exercise_named("--exercise", args.value("--exercise"), table).id;
  }
  const auto all = training::estimates(load.mass, reps, exercise);
  if (all.empty())
    throw UsageError{"--reps: no equation holds for " + std::to_string(reps) + " repetitions",
                     "write 1 to 15, the widest range of any"};
  print(args.has("--json") ? estimates_json(all, load.mass, reps) : estimates_text(all, load, reps));
  return exit_done;
}

const training::Equation& equation_of(const Args& args) {
  const std::string id = args.value("--equation", "wathan");
  std::string known;
  for (const training::Equation& e : training::equations()) {
    if (e.id == id) return e;
    known += (known.empty() ? "" : ", ") + std::string(e.id);
  }
  throw UsageError{"--equation: there is no equation \"" + id + "\"", "take one of " + known};
}

std::string change_text(Mass per_week) {
  const std::string sign = per_week.units < 0 ? "" : "+";
  return sign + shown(per_week) + " a week";
}

int from_records(const Args& args) {
  const ExerciseTable table = exercises_of(args);
  const std::string member = needed(args, "--member", "m01");
  const Exercise& e = exercise_named("--exercise", needed(args, "--exercise", "goblet-squat"), table);
  auto records = sets_of(*args.operand(0), table);
  std::erase_if(records, [&](const auto& r) { return r.member != member || r.exercise != e.id; });
  const training::Equation& equation = equation_of(args);
  const training::Day today = args.has("--today") ? day_of("--today", args.value("--today")) : local_today();
  const training::Trend trend = training::trend_of(training::visits_of(records, today), equation);
  std::string json = "{ \"equation\": \"" + std::string(equation.id) + "\", \"points\": [";
  std::vector<std::vector<std::string>> rows{{"day", "estimate"}};
  for (const auto& p : trend.points) {
    json += std::string(&p == &trend.points.front() ? "\n  " : ",\n  ") + "{ \"day\": \"" + text_of(p.day) +
            "\", \"one_rm_kg\": " + decimal_kg(p.one_rm) + " }";
    rows.push_back({text_of(p.day), shown(p.one_rm)});
  }
  json += " ],\n  \"per_week_kg\": " + (trend.per_week ? decimal_kg(*trend.per_week) : "null") + " }\n";
  std::string text =
      member + ", " + e.name + ", by " + std::string(equation.who) + "\n" + columns(rows, "  ");
  text += trend.per_week ? "Trend: " + change_text(*trend.per_week) + ", the median of all pairs of visits.\n"
                         : "Two visits with sets in the equation's range make a trend.\n";
  print(args.has("--json") ? json : text + std::string(caution));
  return exit_done;
}

std::string halves_text(int halves) { return std::to_string(halves / 2) + (halves % 2 == 0 ? "" : ".5"); }

int on_scale(const Args& args) {
  const bool json = args.has("--json");
  if (args.has("--rir")) {
    const int rir = static_cast<int>(*args.whole("--rir", 0, 6));
    const auto marks = *training::effort_of_rir(rir);
    print(json
              ? "{ \"rir\": " + std::to_string(rir) + ", \"effort\": [" + halves_text(marks[0]) + ", " +
                    halves_text(marks[1]) + "] }\n"
              : counted(rir, "repetition", "repetitions") + " in reserve: effort " + halves_text(marks[0]) +
                    (marks[0] == marks[1] ? "" : " to " + halves_text(marks[1])) + " of 10 (Zourdos 2016)\n");
    return exit_done;
  }
  const double effort = *args.positive("--effort");
  const int halves = effort <= 10 ? static_cast<int>(2 * effort) : 0;
  const auto rir = 2 * effort == halves ? training::rir_of_effort(halves) : std::nullopt;
  if (!rir)
    throw UsageError{"--effort is \"" + args.value("--effort") + "\"",
                     "write a mark of the scale: 5, 6, 7, 7.5, "
                     "8, 8.5, 9, 9.5 or 10"};
  print(json ? "{ \"effort\": " + halves_text(halves) + ", \"rir\": " + span_json(*rir) + " }\n"
             : "Effort " + halves_text(halves) + " of 10: " + span_text(*rir) +
                   " in reserve (Zourdos 2016)\n");
  return exit_done;
}

int run(const Args& args) {
  const bool scale = args.has("--effort") || args.has("--rir");
  const bool records = args.operand(0).has_value();
  const bool one_set = args.has("--load") || args.has("--reps");
  if ((scale ? 1 : 0) + (records ? 1 : 0) + (one_set ? 1 : 0) > 1 ||
      (args.has("--effort") && args.has("--rir")))
    throw UsageError{"more than one thing to say at once",
                     "give --load with --reps, or SETS with --member and --exercise, or --effort, or --rir"};
  if (scale) return on_scale(args);
  return records ? from_records(args) : from_one_set(args);
}

}  // namespace

Command strength_command() {
  return {{"strength",
           "Estimates what could be lifted once: from one set, or as a member's trend.",
           {"[SETS]"},
           {{"--load", "MASS", "the load lifted, such as 100 or 225lb"},
            {"--reps", "N", "how often it was lifted"},
            {"--exercise", "E", "adds the equations that hold for this exercise alone"},
            {"--member", "M", "with SETS: the member's id in the records"},
            {"--equation", "ID", "with SETS: the equation of the trend (default wathan)"},
            {"--today", "DATE", "with SETS: answer as of this day (default: today)"},
            {"--effort", "MARK", "repetitions in reserve at this mark of the effort scale"},
            {"--rir", "N", "marks of the effort scale for so many in reserve"},
            exercises_option,
            {"--json", "", "machine-readable"}},
           {"floorwheel strength --load 100 --reps 10",
            "floorwheel strength sets.csv --member m01 --exercise goblet-squat",
            "floorwheel strength --effort 8.5"}},
          run};
}

}  // namespace floorwheel::cli
