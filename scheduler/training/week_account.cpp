// SPDX-License-Identifier: GPL-3.0-or-later
// What a week's choice of exercises comes to: the one place that prices it.
#include <algorithm>
#include <numeric>
#include <set>

#include "scheduler/training/week.h"

namespace floorwheel::training {
namespace {

constexpr int clash_sets = 3;  // training rules, 'recovery-days'

using GroupSets = std::array<int, group_count>;

std::int64_t shortfall_of(const WeekSpec& w, const GroupSets& total) {
  std::int64_t sum = 0;
  for (std::size_t g = 0; g < group_count; ++g) sum += std::max(0, w.targets[g].at_least - total[g]);
  return sum;
}

std::int64_t excess_of(const WeekSpec& w, const GroupSets& total) {
  std::int64_t sum = 0;
  for (std::size_t g = 0; g < group_count; ++g)
    if (total[g] > w.targets[g].at_most) sum += total[g] - w.targets[g].at_most;
  return sum;
}

std::int64_t clashes_of(const WeekSpec& w, const std::vector<GroupSets>& sets) {
  std::array<GroupSets, 7> days{};
  for (std::size_t c = 0; c < sets.size(); ++c)
    for (std::size_t g = 0; g < group_count; ++g)
      days[static_cast<std::size_t>(w.classes[c].weekday)][g] += sets[c][g];
  std::int64_t clashes = 0;
  for (std::size_t d = 0; d < 7; ++d)
    for (std::size_t g = 0; g < group_count; ++g)
      clashes += days[d][g] >= clash_sets && days[(d + 1) % 7][g] >= clash_sets ? 1 : 0;
  return clashes;
}

std::int64_t change_of(const WeekSpec& w, const ExerciseTable& table,
                       const std::vector<std::vector<std::string>>& stations) {
  std::vector<std::map<std::string, int>> out;  // units that stand out, by class of the running week
  std::set<std::string> kinds;
  for (const std::size_t c : week_order(w)) {
    auto& units = out.emplace_back();
    for (const std::string& id : stations[c])
      for (const std::string& kind : std::set(table.at(id).equipment.begin(), table.at(id).equipment.end())) {
        ++units[kind];
        kinds.insert(kind);
      }
  }
  std::int64_t change = 0;
  for (std::size_t c = 0; c < out.size(); ++c)
    for (const std::string& kind : kinds) change += std::abs(out[c][kind] - out[(c + 1) % out.size()][kind]);
  return change;
}

}  // namespace

std::string_view id_of(WeekGoal g) {
  constexpr std::array<std::string_view, week_goal_count> ids{"shortfall", "excess", "clashes", "loss",
                                                              "change"};
  return ids[static_cast<std::size_t>(g)];
}

std::vector<std::size_t> week_order(const WeekSpec& w) {
  std::vector<std::size_t> order(w.classes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(order, {}, [&](std::size_t c) { return w.classes[c].weekday; });
  return order;
}

WeekAccount account_of(const WeekSpec& w, const ExerciseTable& table,
                       const std::vector<std::vector<std::string>>& stations) {
  WeekAccount a;
  for (std::size_t c = 0; c < stations.size(); ++c) {
    GroupSets& sets = a.sets.emplace_back();
    for (const std::string& id : stations[c])
      for (std::size_t g = 0; g < group_count; ++g)
        if (table.at(id).primary.contains(static_cast<Group>(g))) sets[g] += w.classes[c].laps;
    for (std::size_t g = 0; g < group_count; ++g) a.total[g] += sets[g];
  }
  const std::int64_t shortfall = shortfall_of(w, a.total);
  for (const GroupSets& missed : a.sets) {
    GroupSets rest = a.total;
    for (std::size_t g = 0; g < group_count; ++g) rest[g] -= missed[g];
    a.loss.push_back(shortfall_of(w, rest) - shortfall);
  }
  a.value = {shortfall, excess_of(w, a.total), clashes_of(w, a.sets), *std::ranges::max_element(a.loss),
             change_of(w, table, stations)};
  return a;
}

}  // namespace floorwheel::training
