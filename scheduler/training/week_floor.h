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
  std::vector<std::size_t> group_list;        // the same as `groups`
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

/// The groups of each station.
std::vector<GroupSet> stations_of(const FloorClass&, const std::vector<int>& counts);

/// Sets and units of counts, kept up as single stations change.
class WeekTally {
 public:
  WeekTally(const WeekFloor&, const WeekCounts&);
  void add(std::size_t c, std::size_t type, int stations);
  /// No kind of equipment over its units, no group at more stations than a ring can take; of the kinds and
  /// groups of a type alone.
  [[nodiscard]] bool has_room(std::size_t c, std::size_t type) const;
  /// The five goals.
  [[nodiscard]] WeekValues values() const;

 private:
  const WeekFloor& floor_;
  std::vector<std::array<int, group_count>> sets_;      // by class
  std::array<std::array<int, group_count>, 7> days_{};  // by weekday
  std::array<int, group_count> total_{};
  std::vector<std::vector<int>> used_;  // units by class and kind
};

/// The number of stations, what is kept, the types' sizes and the equipment; not the ring.
bool fits(const FloorClass&, const std::vector<int>& counts);

}  // namespace floorwheel::training
