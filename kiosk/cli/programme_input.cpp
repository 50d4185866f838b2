// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/cli/programme_input.h"

#include <algorithm>
#include <set>

#include "kiosk/cli/class_input.h"
#include "kiosk/cli/text.h"
#include "kiosk/files/nearest.h"
#include "kiosk/files/programme_file.h"

namespace floorwheel::cli {

bool is_programme(const std::string& path) { return path.ends_with(".programme.toml"); }

Programme known_programme_of(const std::string& path, const ExerciseTable& table) {
  Programme p = value_or_throw(files::read_programme(path, table));
  for (const PlannedDay& day : p.days)
    for (const PlannedExercise& e : day.exercises) {
      if (table.contains(e.exercise)) continue;
      std::vector<std::string> known;
      for (const auto& [id, entry] : table) known.push_back(id);
      files::FileError error;
      error.file = path;
      error.line = e.line;
      error.what = "exercise " + e.exercise + " is no exercise of the table";
      error.right = files::did_you_mean(e.exercise, known);
      throw error;
    }
  return p;
}

PlannedExercise planned_in(const Programme& p, const std::string& path, const std::string& exercise,
                           const std::string& day) {
  std::vector<const PlannedExercise*> found;
  std::vector<std::string> days;
  std::set<std::string> there;
  std::vector<std::string> names;
  for (const PlannedDay& d : p.days) {
    names.push_back(d.name);
    if (!day.empty() && d.name != day) continue;
    for (const PlannedExercise& e : d.exercises) {
      if (e.practice) continue;
      there.insert(e.exercise);
      if (e.exercise != exercise) continue;
      found.push_back(&e);
      if (days.empty() || days.back() != d.name) days.push_back(d.name);
    }
  }
  if (!day.empty() && std::ranges::find(names, day) == names.end())
    throw UsageError{path + " has no day " + day, files::did_you_mean(day, names)};
  if (found.empty())
    throw UsageError{path + " plans no working set of " + exercise + (day.empty() ? "" : " on " + day),
                     "it plans " + listed({there.begin(), there.end()})};
  const auto alike = [&](const PlannedExercise* e) {
    return e->reps == found.front()->reps && e->working_sets == found.front()->working_sets;
  };
  if (!std::ranges::all_of(found, alike))
    throw UsageError{path + " plans " + exercise + " differently on " + listed(days),
                     days.size() > 1 ? "name the day with --day" : "give --reps and --sets"};
  return *found.front();
}

}  // namespace floorwheel::cli
