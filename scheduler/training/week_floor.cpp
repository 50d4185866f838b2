// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/week_floor.h"

#include <algorithm>
#include <numeric>
#include <set>

namespace floorwheel::training {
namespace {

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
    auto type = std::ranges::find_if(
        types, [&](const WeekType& t) { return t.groups == exercise.primary && t.kinds == list; });
    if (type == types.end()) type = types.insert(types.end(), WeekType{exercise.primary, list, {}, 0});
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

std::vector<int> units_used(const FloorClass& c, const std::vector<int>& counts) {
  std::vector<int> used(c.units.size());
  for (std::size_t t = 0; t < counts.size(); ++t)
    for (const std::size_t k : c.types[t].kinds) used[k] += counts[t];
  return used;
}

std::array<int, group_count> sets_of(const FloorClass& c, const std::vector<int>& counts) {
  std::array<int, group_count> sets{};
  for (std::size_t t = 0; t < counts.size(); ++t)
    for (std::size_t g = 0; counts[t] > 0 && g < group_count; ++g)
      if (c.types[t].groups.contains(static_cast<Group>(g))) sets[g] += counts[t] * c.laps;
  return sets;
}

std::vector<GroupSet> stations_of(const FloorClass& c, const std::vector<int>& counts) {
  std::vector<GroupSet> stations;
  for (std::size_t t = 0; t < counts.size(); ++t)
    stations.insert(stations.end(), static_cast<std::size_t>(counts[t]), c.types[t].groups);
  return stations;
}

bool fits(const FloorClass& c, const std::vector<int>& counts) {
  if (std::accumulate(counts.begin(), counts.end(), 0) != c.stations) return false;
  for (std::size_t t = 0; t < counts.size(); ++t)
    if (counts[t] < c.types[t].kept || counts[t] > c.types[t].size()) return false;
  const std::vector<int> used = units_used(c, counts);
  for (std::size_t k = 0; k < used.size(); ++k)
    if (used[k] > c.units[k]) return false;
  return true;
}

WeekValues values_of(const WeekFloor& floor, const WeekCounts& counts) {
  const std::size_t n = floor.classes.size();
  std::vector<std::array<int, group_count>> sets(n);
  std::array<std::array<int, group_count>, 7> days{};
  std::vector<std::vector<int>> used(n);
  std::vector<std::int64_t> loss(n);
  for (std::size_t c = 0; c < n; ++c) {
    sets[c] = sets_of(floor.classes[c], counts[c]);
    used[c] = units_used(floor.classes[c], counts[c]);
    for (std::size_t g = 0; g < group_count; ++g)
      days[static_cast<std::size_t>(floor.classes[c].weekday)][g] += sets[c][g];
  }
  WeekValues v{};
  for (std::size_t g = 0; g < group_count; ++g) {
    int total = 0;
    for (std::size_t d = 0; d < 7; ++d) {
      total += days[d][g];
      v[2] += days[d][g] >= 3 && days[(d + 1) % 7][g] >= 3 ? 1 : 0;
    }
    const SetTarget t = floor.targets[g];
    const int under = std::max(0, t.at_least - total);
    v[0] += under;
    v[1] += total > t.at_most ? total - t.at_most : 0;
    for (std::size_t c = 0; c < n; ++c) loss[c] += std::max(0, t.at_least - total + sets[c][g]) - under;
  }
  v[3] = *std::ranges::max_element(loss);
  for (std::size_t c = 0; c < n; ++c)
    for (std::size_t k = 0; k < floor.kinds; ++k) v[4] += std::abs(used[c][k] - used[(c + 1) % n][k]);
  return v;
}

}  // namespace floorwheel::training
