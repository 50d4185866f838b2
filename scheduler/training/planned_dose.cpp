// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/planned_dose.h"

#include <array>
#include <cassert>
#include <set>

namespace floorwheel::training {
namespace {

struct Planned {
  int primary = 0;
  int assisting = 0;
  std::set<int> days;
};

}  // namespace

std::vector<DoseRow> planned_dose(const Programme& p, const ExerciseTable& table, int assisting_percent) {
  std::array<Planned, group_count> groups;
  int unplaced = 7;  // days after the weekdays: each its own
  for (const PlannedDay& day : p.days) {
    const int which = floorwheel::weekday_of(day.name).value_or(unplaced++);
    for (const PlannedExercise& planned : day.exercises) {
      const auto e = table.find(planned.exercise);
      assert(e != table.end());
      if (planned.practice) continue;
      for (int g = 0; g < group_count; ++g) {
        Planned& group = groups[static_cast<std::size_t>(g)];
        if (e->second.primary.contains(static_cast<Group>(g))) {
          group.primary += planned.working_sets;
          group.days.insert(which);
        } else if (e->second.assisting.contains(static_cast<Group>(g))) {
          group.assisting += planned.working_sets;
        }
      }
    }
  }
  std::vector<DoseRow> rows;
  for (int g = 0; g < group_count; ++g) {
    const Planned& group = groups[static_cast<std::size_t>(g)];
    if (group.primary == 0 && group.assisting == 0) continue;
    rows.push_back({{},
                    {},
                    static_cast<Group>(g),
                    group.primary,
                    group.assisting,
                    static_cast<int>(group.days.size()),
                    100 * group.primary + assisting_percent * group.assisting});
  }
  return rows;
}

}  // namespace floorwheel::training
