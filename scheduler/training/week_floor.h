// SPDX-License-Identifier: GPL-3.0-or-later
// The week as the search sees it: exercises alike in primary groups and equipment are one type, a class is a
// count of each type, classes stand in the order of the running week. Only types whose equipment the class
// has are there.
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/training/week.h"

namespace floorwheel::training {

struct WeekType {
  GroupSet groups;
  std::vector<std::size_t> kinds;             // indices of WeekFloor::units, ascending
  std::vector<const std::string*> exercises;  // those to keep first, then by id
  int kept = 0;                               // so many stand in any plan
  [[nodiscard]] int size() const { return static_cast<int>(exercises.size()); }
};

struct FloorClass {
  std::size_t file_index = 0;
  int weekday = 0;
  int stations = 1;
  int laps = 1;
  int same_group_most = 1;  // stations that may share one group: half of them, or a ring has neighbours alike
  std::vector<int> units;   // by kind
  std::vector<WeekType> types;
};

/// Stations of each type of each class.
using WeekCounts = std::vector<std::vector<int>>;

struct WeekFloor {
  std::array<SetTarget, group_count> targets{};
  std::size_t kinds = 0;
  std::vector<FloorClass> classes;
  int lap_step = 1;  // every count of sets is a multiple of it
};

WeekFloor floor_of_week(const WeekSpec&, const ExerciseTable&);
/// A week of one of its classes alone.
WeekFloor floor_of_class(const WeekFloor&, std::size_t index);

/// Units of each kind that stand out.
std::vector<int> units_used(const FloorClass&, const std::vector<int>& counts);
/// Sets of each group.
std::array<int, group_count> sets_of(const FloorClass&, const std::vector<int>& counts);
/// The groups of each station.
std::vector<GroupSet> stations_of(const FloorClass&, const std::vector<int>& counts);
/// The number of stations, what is kept, the types' sizes and the equipment; not the ring.
bool fits(const FloorClass&, const std::vector<int>& counts);

/// The five goals of counts that fit.
WeekValues values_of(const WeekFloor&, const WeekCounts&);

}  // namespace floorwheel::training
