// SPDX-License-Identifier: GPL-3.0-or-later
// What can be said of one day of a programme: neighbours in its circuits, warm-up, length.
#include <algorithm>

#include "scheduler/training/check_rules.h"

namespace floorwheel {
namespace {

constexpr int usual_tempo_ms = 3000;
constexpr int set_up_s = 60;  // for each exercise

using Members = std::vector<const PlannedExercise*>;

struct Circuit {
  std::string name;
  Members members;  // in file order
  [[nodiscard]] int rounds() const {
    int most = 0;
    for (const PlannedExercise* e : members) most = std::max(most, e->working_sets);
    return most;
  }
};

/// The circuits of a day; an exercise alone under its name is none.
std::vector<Circuit> circuits_of(const PlannedDay& day) {
  std::vector<Circuit> circuits;
  for (const PlannedExercise& e : day.exercises) {
    if (e.circuit.empty()) continue;
    auto it =
        std::find_if(circuits.begin(), circuits.end(), [&](const Circuit& c) { return c.name == e.circuit; });
    if (it == circuits.end()) it = circuits.insert(circuits.end(), {e.circuit, {}});
    it->members.push_back(&e);
  }
  std::erase_if(circuits, [](const Circuit& c) { return c.members.size() < 2; });
  return circuits;
}

std::int64_t work_ms(const PlannedExercise& e, const ExerciseTable& table) {
  const auto known = table.find(e.exercise);
  const bool hold = known != table.end() && known->second.hold;
  const std::int64_t each = hold ? 1000 : e.tempo_ms.value_or(usual_tempo_ms);
  return each * e.reps[1] * (e.working_sets + e.warm_up_sets);
}

std::int64_t day_ms(const PlannedDay& day, const ExerciseTable& table) {
  const std::vector<Circuit> circuits = circuits_of(day);
  const auto inside = [&](const PlannedExercise& e) {
    return std::any_of(circuits.begin(), circuits.end(),
                       [&](const Circuit& c) { return c.name == e.circuit; });
  };
  std::int64_t ms = 0;
  for (const PlannedExercise& e : day.exercises) {
    ms += work_ms(e, table) + std::int64_t{1000} * set_up_s;
    const int sets = e.working_sets + e.warm_up_sets;
    if (!inside(e)) ms += std::int64_t{1000} * e.rest_s * std::max(0, sets - 1);
  }
  for (const Circuit& c : circuits) ms += std::int64_t{1000} * c.members.back()->rest_s * c.rounds();
  return ms;
}

}  // namespace

int day_seconds(const PlannedDay& day, const ExerciseTable& table) {
  return static_cast<int>((day_ms(day, table) + 999) / 1000);
}

namespace checking {
namespace {

void check_neighbours(const Week& week, const PlannedDay& day, std::vector<Finding>& out) {
  const auto primary = [&](const PlannedExercise* e) {
    const auto known = week.table.find(e->exercise);
    return known == week.table.end() ? GroupSet{} : known->second.primary;
  };
  for (const Circuit& c : circuits_of(day)) {
    const std::size_t n = c.members.size();
    // Two exercises have one joint, however often they alternate.
    const std::size_t joints = c.rounds() >= 2 && n > 2 ? n : n - 1;
    for (std::size_t i = 0; i < joints; ++i) {
      const PlannedExercise* a = c.members[i];
      const PlannedExercise* b = c.members[(i + 1) % n];
      const GroupSet both = shared(primary(a), primary(b));
      if (both.empty()) continue;
      Finding f = at_entry("circuit-neighbours", Severity::should, {&day, b, nullptr});
      f.group = groups_in(both).front();
      f.found = b->exercise + " follows " + a->exercise + " in circuit \"" + c.name + "\", and both train " +
                ids_of(both);
      f.wanted = "neighbours in a circuit that share no primary group";
      f.source = "FM 21-20 (US Army, 1992/1998) ch. 7: no group twice in a row";
      f.mend = "Put an exercise for other groups between them.";
      out.push_back(f);
    }
  }
}

void check_warm_up(const Day& day, std::vector<Finding>& out) {
  GroupSet met;
  for (const Entry& e : day.entries) {
    if (!e.compound()) continue;
    GroupSet first;
    for (Group g : groups_in(e.primary()))
      if (!met.contains(g)) first.insert(g);
    met |= first;
    if (first.empty() || e.planned->warm_up_sets > 0) continue;
    Finding f = at_entry("warm-up-missing", Severity::should, e);
    f.group = groups_in(first).front();
    f.found = "the day's first compound for " + ids_of(first) + " has no warm-up set";
    f.wanted = "1 warm-up set or more";
    f.source = "common practice, no source";
    f.mend = "Add warm_up_sets = 1, with about half the load.";
    out.push_back(f);
  }
}

void check_length(const Week& week, const PlannedDay& day, std::vector<Finding>& out) {
  if (!day.length_s) return;
  const int seconds = day_seconds(day, week.table);
  if (seconds <= *day.length_s) return;
  Finding f;
  f.rule = "day-too-long";
  f.severity = Severity::should;
  f.day = day.name;
  f.line = day.line;
  const auto minutes = [](int s) {
    return std::to_string(s / 60) + " min" + (s % 60 ? " " + std::to_string(s % 60) + " s" : "");
  };
  f.found = "the sets take " + minutes(seconds);
  f.wanted = minutes(*day.length_s) + " at most";
  f.source = "arithmetic: repetitions x tempo, rests, 60 s an exercise";
  f.mend =
      "Take out " + minutes(seconds - *day.length_s) + " of sets or rest, or do pairs of exercises in turn.";
  out.push_back(f);
}

}  // namespace

void check_days(const Week& week, std::vector<Finding>& out) {
  for (const PlannedDay& day : week.programme.days) {
    check_neighbours(week, day, out);
    check_length(week, day, out);
  }
  for (const Day& day : week.days) check_warm_up(day, out);
}

}  // namespace checking
}  // namespace floorwheel
