// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel fit`: whether the wanted repetitions fit in a work interval, how dense the work is, and whether
// people recover between laps.
#include <algorithm>
#include <cmath>

#include "kiosk/cli/class_input.h"
#include "kiosk/cli/command.h"
#include "kiosk/cli/text.h"
#include "kiosk/cli/training_input.h"
#include "scheduler/training/slot_fit.h"

namespace floorwheel::cli {
namespace {

using training::SlotTimes;
using training::Tempo;

/// One thing that is done in a slot.
struct Wanted {
  std::string station;  // "" without a class
  std::string exercise;
  std::array<int, 2> reps{};
  bool hold = false;
};

struct Asked {
  SlotTimes times;
  Tempo tempo;
  std::vector<Wanted> wanted;
  int laps = 1;
  int slots_a_lap = 0;  // 0: not known
  std::array<int, level_count> recovery_s{};
  std::array<bool, level_count> here{};  // levels whose recovery is asked for
};

int tenths(const Args& args, std::string_view option, int otherwise) {
  if (!args.has(option)) return otherwise;
  const double s = args.value(option) == "0" ? 0 : *args.positive(option);
  if (s > 60) throw UsageError{std::string(option) + " is over a minute", "write seconds, such as 1.5"};
  return static_cast<int>(std::lround(10 * s));
}

Tempo tempo_of(const Args& args) {
  Tempo t;
  t.eccentric_ds = tenths(args, "--eccentric", t.eccentric_ds);
  t.concentric_ds = tenths(args, "--concentric", t.concentric_ds);
  t.pause_ds = tenths(args, "--pause", t.pause_ds);
  if (t.repetition_ds() == 0)
    throw UsageError{"a repetition takes no time", "write seconds each way, such as 1.5"};
  return t;
}

Asked of_class(const ClassSpec& c) {
  Asked a;
  a.times = {c.work_s, c.change_s};
  a.laps = c.laps;
  a.slots_a_lap = static_cast<int>(c.stations.size());
  a.recovery_s = c.recovery_s;
  for (const MemberSpec& m : c.members) a.here[static_cast<std::size_t>(m.level)] = true;
  for (const StationSpec& s : c.stations) {
    const Exercise& e = c.exercises.at(s.exercise);
    const int planned = s.reps.value_or(0);
    a.wanted.push_back({s.id, e.name, s.reps ? std::array{planned, planned} : e.reps, e.hold});
  }
  return a;
}

Asked of_options(const Args& args) {
  Asked a;
  a.times.work_s = static_cast<int>(args.whole("--work", 1, 3600).value_or(a.times.work_s));
  a.times.change_s = static_cast<int>(args.whole("--change", 0, 3600).value_or(a.times.change_s));
  a.laps = static_cast<int>(args.whole("--laps", 1, 100).value_or(2));
  a.slots_a_lap = static_cast<int>(args.whole("--stations", 1, 100).value_or(0));
  a.recovery_s = ClassSpec{}.recovery_s;
  if (args.has("--level")) {
    const auto level = level_from(args.value("--level"));
    if (!level)
      throw UsageError{"--level is \"" + args.value("--level") + "\"",
                       "write novice, intermediate or advanced"};
    a.here[static_cast<std::size_t>(*level)] = true;
  }
  const std::string reps = args.value("--reps");
  if (args.has("--reps")) a.wanted.push_back({"", "", range_of("--reps", reps, training::most_reps), false});
  return a;
}

Asked asked(const Args& args) {
  if (!args.operand(0)) return of_options(args);
  for (const std::string_view option : {"--work", "--change", "--reps", "--stations", "--laps", "--level"})
    if (args.has(option))
      throw UsageError{std::string(option) + " beside a class file", "change the file, or leave it out"};
  return of_class(class_of(*args.operand(0), args));
}

int run(const Args& args) {
  Asked a = asked(args);
  a.tempo = tempo_of(args);
  const int density = training::density_percent(a.times);
  const int held = training::reps_held(a.times.work_s, a.tempo);
  bool all = true;

  std::string json = "{ \"work_s\": " + std::to_string(a.times.work_s) +
                     ", \"change_s\": " + std::to_string(a.times.change_s) +
                     ", \"holds_reps\": " + std::to_string(held) +
                     ", \"density_percent\": " + std::to_string(density) + ",\n  \"wanted\": [";
  std::string text = std::to_string(a.times.work_s) + " s of work hold " +
                     counted(held, "repetition", "repetitions") + " at " +
                     decimal_text(a.tempo.repetition_ds(), 1) + " s each; " + std::to_string(density) +
                     " % of a slot is work.\n";
  std::vector<std::vector<std::string>> rows;
  for (const Wanted& w : a.wanted) {
    const bool fits = training::fits(w.reps, a.times.work_s, a.tempo, w.hold);
    all = all && fits;
    const std::string range = std::to_string(w.reps[0]) + "-" + std::to_string(w.reps[1]);
    json += std::string(rows.empty() ? "\n  " : ",\n  ") + "{ \"station\": " + in_quotes_or_null(w.station) +
            ", \"reps\": [" + std::to_string(w.reps[0]) + ", " + std::to_string(w.reps[1]) +
            "], \"hold\": " + std::string(files::truth(w.hold)) +
            ", \"fits\": " + std::string(files::truth(fits)) + " }";
    rows.push_back(
        {w.station, w.exercise, range + (w.hold ? " s" : " reps"), fits ? "fits" : "does not fit"});
  }
  text += columns(rows, "  ");

  const bool laps = a.laps > 1 && a.slots_a_lap > 0;
  const int between = laps ? training::between_laps_s(a.times, a.slots_a_lap) : 0;
  json += " ],\n  \"between_laps_s\": " + (laps ? std::to_string(between) : "null") + ", \"recovery\": [";
  if (laps) text += std::to_string(between) + " s from one lap to the next at the same station:\n";
  rows.clear();
  for (int l = 0; laps && l < level_count; ++l) {
    const auto at = static_cast<std::size_t>(l);
    const bool enough = between >= a.recovery_s[at];
    if (a.here[at]) all = all && enough;
    const std::string level(id_of(static_cast<Level>(l)));
    json += std::string(rows.empty() ? "\n  " : ",\n  ") + "{ \"level\": \"" + level +
            "\", \"wanted_s\": " + std::to_string(a.recovery_s[at]) +
            ", \"enough\": " + std::string(files::truth(enough)) + " }";
    rows.push_back(
        {level, "wants " + std::to_string(a.recovery_s[at]) + " s", enough ? "enough" : "too short"});
  }
  json += " ] }\n";
  print(args.has("--json") ? json : text + columns(rows, "  "));
  return all ? exit_done : exit_holds_not;
}

}  // namespace

Command fit_command() {
  return {
      {"fit",
       "Says whether the wanted repetitions fit in a work interval, and whether people recover between laps.",
       {"[CLASS]"},
       {{"--work", "S", "without CLASS: seconds of work (default 40)"},
        {"--change", "S", "without CLASS: seconds of the changeover (default 20)"},
        {"--reps", "LO-TOP", "without CLASS: the wanted range"},
        {"--stations", "N", "without CLASS: stations of the ring"},
        {"--laps", "N", "without CLASS: laps (default 2)"},
        {"--level", "LEVEL", "without CLASS: whose recovery has to be enough"},
        {"--eccentric", "S", "seconds of letting down (default 1.5)"},
        {"--concentric", "S", "seconds of lifting (default 1.5)"},
        {"--pause", "S", "seconds of pause in a repetition (default 0)"},
        exercises_option,
        {"--json", "", "machine-readable"}},
       {"floorwheel fit config/demo/hall.class.toml", "floorwheel fit --work 40 --reps 8-12 --stations 6"}},
      run};
}

}  // namespace floorwheel::cli
