// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel next`: the next load of one member and exercise, with its reason.
#include "kiosk/cli/class_input.h"
#include "kiosk/cli/command.h"
#include "kiosk/cli/floor_input.h"
#include "kiosk/cli/programme_input.h"
#include "kiosk/cli/text.h"
#include "kiosk/cli/training_input.h"
#include "kiosk/files/overrides.h"
#include "kiosk/files/text_file.h"
#include "scheduler/training/override.h"

namespace floorwheel::cli {
namespace {

using training::NextAnswer;
using training::NextQuestion;
using training::Weight;

constexpr int most_sets = 20;

/// The loads the options name, else those the table gives the exercise.
std::vector<Weight> floor_for(const Args& args, const Exercise& e) {
  if (auto named = floor_of(args)) return *std::move(named);
  std::vector<Weight> loads;
  for (int hg : e.loads_hg) loads.push_back({training::Mass::grams(std::int64_t{100} * hg)});
  if (loads.empty()) loads.push_back({});
  return loads;
}

/// Range and sets: of the options, else of the programme, else of the table.
NextQuestion question_of(const Args& args, const Exercise& e, const ExerciseTable& table) {
  NextQuestion q;
  const int most = e.hold ? training::longest_hold_s : training::most_reps;
  q.reps = e.reps;
  const auto sets = args.whole("--sets", 1, most_sets);
  if (args.has("--day") && !args.has("--programme"))
    throw UsageError{"--day without --programme", "name the programme that has the day"};
  if (args.has("--programme") && !(args.has("--reps") && sets)) {
    const std::string path = args.value("--programme");
    const PlannedExercise planned =
        planned_in(known_programme_of(path, table), path, e.id, args.value("--day"));
    q.reps = planned.reps;
    q.sets = planned.working_sets;
  }
  if (args.has("--reps")) q.reps = range_of("--reps", args.value("--reps"), most);
  if (sets) q.sets = static_cast<int>(*sets);
  q.loads = floor_for(args, e);
  q.today = args.has("--today") ? day_of("--today", args.value("--today")) : local_today();
  q.hold = e.hold;
  q.substitutes = e.substitutes;
  return q;
}

std::string json_of(const training::Decided& d) {
  const NextAnswer& a = d.answer;
  return "{ \"load_kg\": " + (a.load ? decimal_kg(a.load->mass) : "null") + ", \"reps\": [" +
         std::to_string(a.reps[0]) + ", " + std::to_string(a.reps[1]) +
         "], \"sets\": " + std::to_string(a.sets) + ", \"change\": \"" + std::string(id_of(a.change)) +
         "\", \"rule\": \"" + std::string(id_of(a.rule)) + "\",\n  \"reason\": " + in_quotes(a.reason) +
         ",\n  \"ask_instructor\": " + (a.ask_instructor ? "true" : "false") +
         ", \"substitute\": " + in_quotes_or_null(a.substitute) +
         (d.by ? ",\n  \"override\": { \"decided_by\": " + in_quotes(d.by->decided_by) +
                     ", \"decided_on\": \"" + text_of(d.by->day) +
                     "\", \"suggested_kg\": " + decimal_kg(d.by->suggested) + " }"
               : std::string()) +
         " }\n";
}

/// The overrides of this member and exercise in the file of --overrides.
std::vector<training::Override> overrides_of(const Args& args, const std::string& member, const Exercise& e,
                                             const ExerciseTable& table) {
  if (!args.has("--overrides")) return {};
  const std::string path = args.value("--overrides");
  auto all = value_or_throw(
      files::parse_overrides(value_or_throw(files::read_text(path, "CSV of overrides")), path, table));
  std::erase_if(all, [&](const auto& o) { return o.member != member || o.exercise != e.id; });
  return all;
}

std::string text_of_answer(const NextAnswer& a, const std::string& member, const Exercise& e) {
  std::string load = "no load";
  if (a.load) load = a.load->mass == training::Mass{} ? "body weight" : text_of(*a.load);
  std::string out = member + ", " + e.name + ": " + load + ", " + std::to_string(a.sets) + " x " +
                    std::to_string(a.reps[0]) + "-" + std::to_string(a.reps[1]) + (e.hold ? " s" : "") +
                    "  (" + std::string(id_of(a.change)) + ", rule " + std::string(id_of(a.rule)) + ")\n" +
                    a.reason + "\n";
  if (a.ask_instructor) out += "Ask the instructor first.\n";
  if (!a.substitute.empty()) out += "Instead: " + a.substitute + ".\n";
  return out + std::string(caution);
}

int run(const Args& args) {
  const ExerciseTable table = exercises_of(args);
  const std::string member = needed(args, "--member", "m01");
  const Exercise& e = exercise_named("--exercise", needed(args, "--exercise", "goblet-squat"), table);
  const NextQuestion q = question_of(args, e, table);
  std::vector<training::SetRecord> records = sets_of(*args.operand(0), table);
  std::erase_if(records, [&](const auto& r) { return r.member != member || r.exercise != e.id; });
  const training::Decided d = training::next_load(records, q, overrides_of(args, member, e, table));
  print(args.has("--json") ? json_of(d) : text_of_answer(d.answer, member, e));
  return exit_done;
}

}  // namespace

Command next_command() {
  return {{"next",
           "Suggests the next load of one member and exercise, with the reason.",
           {"SETS"},
           {{"--member", "M", "the member's id in the records"},
            {"--exercise", "E", "an exercise of the table"},
            {"--reps", "LO-TOP", "the planned range (default: the programme's or the table's)"},
            {"--sets", "N", "planned sets (default: the programme's or 3)"},
            {"--programme", "FILE", "range and sets as this programme plans the exercise"},
            {"--day", "DAY", "as it plans them on this day, such as Monday"},
            loads_option,
            stack_option,
            add_ons_option,
            bar_option,
            collars_option,
            plates_option,
            {"--overrides", "FILE", "what people decided instead (CSV, see kiosk/files/overrides.h)"},
            {"--today", "DATE", "answer as of this day (default: today)"},
            exercises_option,
            {"--json", "", "machine-readable"}},
           {"floorwheel next sets.csv --member m01 --exercise goblet-squat --reps 6-10 --sets 3 --loads "
            "4,6,8,10",
            "floorwheel next sets.csv --member m01 --exercise goblet-squat --programme "
            "two-evenings.programme.toml"}},
          run};
}

}  // namespace floorwheel::cli
