// SPDX-License-Identifier: GPL-3.0-or-later
// What can be said of one exercise of a programme: known or not, range, reserve, rest, tempo.
#include <algorithm>

#include "scheduler/training/check_rules.h"

namespace floorwheel::checking {
namespace {

constexpr std::array<int, level_count> recovery_s{60, 90, 120};
constexpr int least_reps = 6;
constexpr int most_reps = 30;
constexpr int short_tempo_ms = 500;
constexpr int slow_tempo_ms = 8000;
constexpr int long_tempo_ms = 10'000;

std::string range_text(const std::array<int, 2>& r) {
  return std::to_string(r[0]) + (r[1] == r[0] ? "" : " to " + std::to_string(r[1]));
}

/// Milliseconds as seconds: "0.4 s", "9 s".
std::string seconds_text(int ms) {
  std::string text = std::to_string(ms / 1000);
  if (ms % 1000 != 0) {
    std::string part = std::to_string(1000 + ms % 1000).substr(1);
    part.erase(part.find_last_not_of('0') + 1);
    text += "." + part;
  }
  return text + " s";
}

/// Alone under its circuit's name, or without one.
bool outside_circuit(const Entry& e) {
  if (e.planned->circuit.empty()) return true;
  return std::count_if(e.day->exercises.begin(), e.day->exercises.end(),
                       [&](const PlannedExercise& other) { return other.circuit == e.planned->circuit; }) < 2;
}

void check_range(const Week& week, const Entry& e, std::vector<Finding>& out) {
  const auto& reps = e.planned->reps;
  if (e.planned->practice || e.hold() || (reps[0] >= least_reps && reps[1] <= most_reps)) return;
  const bool only_heavy = reps[1] <= most_reps && e.compound() && week.programme.level != Level::novice;
  Finding f = at_entry("reps-outside", only_heavy ? Severity::note : Severity::should, e);
  f.found = range_text(reps) + " repetitions";
  f.wanted = "a range within 6 to 30";
  f.source =
      "load ranges: ACSM 2009 (doi:10.1249/MSS.0b013e3181915670), Schoenfeld 2017; limits are common "
      "practice";
  f.mend = only_heavy ? "Keep it only for whoever has the form for heavy sets; else 6 or more."
                      : "Choose a load that allows " +
                            range_text({std::max(least_reps, std::min(reps[0], most_reps - 4)),
                                        std::min(most_reps, std::max(reps[1], least_reps + 4))}) +
                            " repetitions.";
  out.push_back(f);
}

void check_reserve(const Week& week, const Entry& e, std::vector<Finding>& out) {
  if (e.planned->practice) return;
  const auto& rir = e.planned->rir;
  if (rir[0] == 0 && e.compound()) {
    Finding f = at_entry("failure-on-compound",
                         week.programme.level == Level::novice ? Severity::must : Severity::should, e);
    f.found = "sets may end at failure (rir " + range_text(rir) + ")";
    f.wanted = "at least 1 repetition in reserve on a compound";
    f.source =
        "Grgic 2022 (doi:10.1016/j.jshs.2021.01.007): no gain in strength from failure; the limit is common "
        "practice";
    f.mend = "Write rir = [1, " + std::to_string(std::max(rir[1], 2)) + "].";
    out.push_back(f);
  }
  const int limit = e.planned->reps[0] > 15 ? 2 : 3;
  if (std::min(rir[0], rir[1]) <= limit) return;
  const auto groups = groups_in(e.primary());
  const auto few = std::find_if(groups.begin(), groups.end(), [&](Group g) { return at(week.sets, g) < 6; });
  Finding f = at_entry("far-from-failure", few == groups.end() ? Severity::note : Severity::should, e);
  if (few != groups.end()) f.group = *few;
  f.found = range_text(rir) + " repetitions in reserve";
  if (few != groups.end())
    f.found +=
        ", and " + std::string(id_of(*few)) + " has " + counted(at(week.sets, *few), "set") + " a week";
  f.wanted = "a set that ends with " + std::to_string(limit) + " or fewer in reserve";
  f.source =
      "Refalo 2023 (doi:10.1007/s40279-022-01784-y): nearer to failure counts a little for growth; limits "
      "are common practice";
  f.mend = "Take a higher load or more repetitions until " + std::to_string(limit) + " or fewer are left.";
  out.push_back(f);
}

void check_rest(const Week& week, const Entry& e, std::vector<Finding>& out) {
  const int wanted = recovery_s[static_cast<std::size_t>(week.programme.level)];
  if (e.planned->working_sets < 2 || e.planned->rest_s >= wanted || !outside_circuit(e)) return;
  Finding f = at_entry("rest-short", Severity::should, e);
  f.found = std::to_string(e.planned->rest_s) + " s between the sets";
  f.wanted = std::to_string(wanted) + " s or more for " + std::string(id_of(week.programme.level));
  f.source =
      "Grgic 2018 (doi:10.1007/s40279-017-0788-x): 60 to 120 s do for the untrained, over 120 s for the "
      "trained";
  f.mend = "Rest " + std::to_string(wanted) +
           " s, or alternate it with an exercise for other groups as a circuit.";
  out.push_back(f);
}

void check_tempo(const Entry& e, std::vector<Finding>& out) {
  if (!e.planned->tempo_ms || e.hold()) return;
  const int ms = *e.planned->tempo_ms;
  if (ms >= short_tempo_ms && ms <= slow_tempo_ms) return;
  Finding f = at_entry("tempo-outside",
                       ms < short_tempo_ms || ms > long_tempo_ms ? Severity::should : Severity::note, e);
  f.found = "a repetition of " + seconds_text(ms);
  f.wanted = "0.5 s to 8 s";
  f.source =
      "Schoenfeld 2015 (doi:10.1007/s40279-015-0304-0): similar growth from 0.5 s to 8 s, less above 10 s";
  f.mend = ms < short_tempo_ms ? "Lower in 1 to 2 s and lift under control." : "Take 1 to 2 s each way.";
  out.push_back(f);
}

}  // namespace

void check_exercises(const Week& week, std::vector<Finding>& out) {
  for (const Day& day : week.days)
    for (const Entry& e : day.entries) {
      if (!e.known) {
        Finding f = at_entry("unknown-exercise", Severity::must, e);
        f.found = "\"" + e.planned->exercise + "\" is not in the exercise table";
        f.wanted = "an id of the exercise table";
        f.source = "the exercise table: what it does not know cannot be judged";
        f.mend =
            "Write an id that `floorwheel exercises` lists, or add the exercise to a table of your own "
            "(--exercises).";
        out.push_back(f);
      }
      check_range(week, e, out);
      check_reserve(week, e, out);
      check_rest(week, e, out);
      check_tempo(e, out);
    }
}

}  // namespace floorwheel::checking
