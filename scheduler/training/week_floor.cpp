// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/week_floor.h"

#include <algorithm>
#include <numeric>
#include <set>

namespace floorwheel::training {
namespace {

std::vector<std::size_t> groups_in(GroupSet set) {
  std::vector<std::size_t> groups;
  for (std::size_t g = 0; g < group_count; ++g)
    if (set.contains(static_cast<Group>(g))) groups.push_back(g);
  return groups;
}

std::vector<WeekType> types_of(const FloorClass& c, const WeekClass& asked, const ExerciseTable& table,
                               const std::vector<std::string>& kinds) {
  std::vector<WeekType> types;
  const auto kept = [&](const std::string& id) {
    return std::ranges::find(asked.keep, id) != asked.keep.end();
  };
  for (const auto& [id, exercise] : table) {
    std::set<std::size_t> needs;
    for (const std::string& kind : exercise.equipment)
      needs.insert(static_cast<std::size_t>(std::ranges::lower_bound(kinds, kind) - kinds.begin()));
    if (std::ranges::any_of(needs, [&](std::size_t k) { return c.units[k] == 0; })) continue;
    const std::vector<std::size_t> list(needs.begin(), needs.end());
    const GroupSet groups = exercise.primary;
    auto type =
        std::ranges::find_if(types, [&](const WeekType& t) { return t.groups == groups && t.kinds == list; });
    if (type == types.end())
      type = types.insert(types.end(), WeekType{exercise.primary, list, {}, 0, groups_in(exercise.primary)});
    if (kept(id))
      type->exercises.insert(type->exercises.begin() + type->kept++, &id);
    else
      type->exercises.push_back(&id);
  }
  return types;
}

}  // namespace

WeekFloor floor_of_week(const WeekSpec& w, const ExerciseTable& table) {
  WeekFloor floor;
  floor.targets = w.targets;
  std::set<std::string> met;
  for (const auto& [id, exercise] : table) met.insert(exercise.equipment.begin(), exercise.equipment.end());
  const std::vector<std::string> kinds(met.begin(), met.end());
  floor.kinds = kinds.size();
  floor.lap_step = 0;
  for (const std::size_t i : week_order(w)) {
    const WeekClass& asked = w.classes[i];
    FloorClass c;
    c.file_index = i;
    c.weekday = asked.weekday;
    c.stations = asked.stations;
    c.laps = asked.laps;
    c.same_group_most = asked.stations == 1 && asked.laps == 1 ? 1 : asked.stations / 2;
    for (const std::string& kind : kinds) {
      const auto units = asked.equipment.find(kind);
      c.units.push_back(units == asked.equipment.end() ? 0 : units->second);
    }
    c.types = types_of(c, asked, table, kinds);
    floor.lap_step = std::gcd(floor.lap_step, c.laps);
    floor.classes.push_back(std::move(c));
  }
  return floor;
}

WeekFloor floor_of_class(const WeekFloor& floor, std::size_t index) {
  return {floor.targets, floor.kinds, {floor.classes[index]}, floor.classes[index].laps};
}

std::vector<GroupSet> stations_of(const FloorClass& c, const std::vector<int>& counts) {
  std::vector<GroupSet> stations;
  for (std::size_t t = 0; t < counts.size(); ++t)
    stations.insert(stations.end(), static_cast<std::size_t>(counts[t]), c.types[t].groups);
  return stations;
}

bool fits(const FloorClass& c, const std::vector<int>& counts) {
  if (std::accumulate(counts.begin(), counts.end(), 0) != c.stations) return false;
  std::vector<int> used(c.units.size());
  for (std::size_t t = 0; t < counts.size(); ++t) {
    if (counts[t] < c.types[t].kept || counts[t] > c.types[t].size()) return false;
    for (const std::size_t k : c.types[t].kinds) used[k] += counts[t];
  }
  return std::ranges::equal(used, c.units, std::ranges::less_equal{});
}

WeekTally::WeekTally(const WeekFloor& floor, const WeekCounts& counts)
    : floor_(floor), sets_(floor.classes.size()), used_(floor.classes.size(), std::vector<int>(floor.kinds)) {
  for (std::size_t c = 0; c < counts.size(); ++c)
    for (std::size_t t = 0; t < counts[c].size(); ++t)
      if (counts[c][t] > 0) add(c, t, counts[c][t]);
}

void WeekTally::add(std::size_t c, std::size_t type, int stations) {
  const FloorClass& f = floor_.classes[c];
  for (const std::size_t g : f.types[type].group_list) {
    sets_[c][g] += stations * f.laps;
    days_[static_cast<std::size_t>(f.weekday)][g] += stations * f.laps;
    total_[g] += stations * f.laps;
  }
  for (const std::size_t k : f.types[type].kinds) used_[c][k] += stations;
}

bool WeekTally::has_room(std::size_t c, std::size_t type) const {
  const FloorClass& f = floor_.classes[c];
  return std::ranges::all_of(f.types[type].kinds, [&](std::size_t k) { return used_[c][k] <= f.units[k]; }) &&
         std::ranges::all_of(f.types[type].group_list,
                             [&](std::size_t g) { return sets_[c][g] <= f.same_group_most * f.laps; });
}

WeekValues WeekTally::values() const {
  const std::size_t n = sets_.size();
  WeekValues v{};
  for (std::size_t g = 0; g < group_count; ++g) {
    const SetTarget t = floor_.targets[g];
    v[0] += std::max(0, t.at_least - total_[g]);
    v[1] += total_[g] > t.at_most ? total_[g] - t.at_most : 0;
    for (std::size_t d = 0; d < 7; ++d) v[2] += days_[d][g] >= 3 && days_[(d + 1) % 7][g] >= 3 ? 1 : 0;
  }
  for (std::size_t c = 0; c < n; ++c) {
    std::int64_t lacking = 0;
    for (std::size_t g = 0; g < group_count; ++g)
      lacking += std::max(0, floor_.targets[g].at_least - total_[g] + sets_[c][g]);
    v[3] = std::max(v[3], lacking - v[0]);
    for (std::size_t k = 0; k < floor_.kinds; ++k) v[4] += std::abs(used_[c][k] - used_[(c + 1) % n][k]);
  }
  return v;
}

}  // namespace floorwheel::training
