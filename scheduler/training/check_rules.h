// SPDX-License-Identifier: GPL-3.0-or-later
// The programme check from inside: the programme with its exercises looked up, and one function a subject,
// each adding findings.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "scheduler/training/check.h"

namespace floorwheel::checking {

/// One entry of a programme with what the table knows of it.
struct Entry {
  const PlannedDay* day = nullptr;
  const PlannedExercise* planned = nullptr;
  const Exercise* known = nullptr;  // none: not in the table
  [[nodiscard]] GroupSet primary() const { return known ? known->primary : GroupSet{}; }
  [[nodiscard]] bool compound() const { return known && known->kind == ExerciseKind::compound; }
  [[nodiscard]] bool hold() const { return known && known->hold; }
  /// Sets counted in the dose.
  [[nodiscard]] int dose() const { return planned->practice ? 0 : planned->working_sets; }
};

/// One day of the week: several [[day]] of one weekday are one.
struct Day {
  std::optional<int> weekday;
  std::string name;
  std::vector<Entry> entries;         // in file order
  std::array<int, group_count> sets;  // counted in the dose
};

struct Week {
  const Programme& programme;
  const ExerciseTable& table;
  std::vector<Day> days;
  std::array<int, group_count> sets{};  // of the whole week

  Week(const Programme&, const ExerciseTable&);
};

inline int at(const std::array<int, group_count>& sets, Group g) { return sets[static_cast<std::size_t>(g)]; }

/// The groups in the order of the vocabulary.
template <class Visit>
void each_group(Visit visit) {
  for (int i = 0; i < group_count; ++i) visit(static_cast<Group>(i));
}
std::vector<Group> groups_in(GroupSet);
/// "chest, shoulders".
std::string ids_of(GroupSet);
GroupSet shared(GroupSet, GroupSet);
std::string counted(int n, const std::string& one);  // "1 set", "3 sets"

/// A finding at an entry.
Finding at_entry(std::string_view rule, Severity, const Entry&);

void check_exercises(const Week&, std::vector<Finding>&);  // unknown, range, reserve, rest, tempo
void check_days(const Week&, std::vector<Finding>&);       // circuits, warm-up, length
void check_week(const Week&, std::vector<Finding>&);       // dose, frequency, recovery

}  // namespace floorwheel::checking
