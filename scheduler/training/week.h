// SPDX-License-Identifier: GPL-3.0-or-later
// The week planner: which exercises stand in each class of a week, and in which ring order.
//
// Hard, in every plan: the exercises to keep stand; nothing needs equipment that the class lacks (one unit of
// each kind an exercise needs, since a station has one place); no exercise stands twice in one class; every
// class's stations have a ring, a cyclic order in which no two neighbours share a primary group (one station
// alone is a ring for one lap only, two are neighbours twice).
// Then five goals, smaller first, each compared only where those before it are equal:
//   shortfall  sets under the lower end of the target, summed over the groups
//   excess     sets above its upper end, summed over the groups
//   clashes    group and pair of consecutive days with three or more sets on both; Monday follows Sunday,
//              classes of one day are one day (training rules, 'recovery-days')
//   loss       the extra shortfall of whoever misses one class, in the class where it is worst
//   change     units of equipment to bring out or put away from each class to the next, the last one's next
//              being the first, since the week repeats
// Last, without proof: of exercises that are alike in groups and equipment those to keep, then the first by
// id; the ring begins with the first by id and goes on with the first that can.
//
// A set counts once for each primary group; a station is `laps` working sets. Sets are whole numbers; classes
// are in file order; exercises are ids of the table.
#pragma once

#include <array>
#include <cstdint>
#include <limits>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "scheduler/class_spec.h"
#include "scheduler/training/calendar.h"

namespace floorwheel::training {

struct SetTarget {
  static constexpr int no_limit = std::numeric_limits<int>::max();
  int at_least = 0;
  int at_most = no_limit;
  friend bool operator==(SetTarget, SetTarget) = default;
};

struct WeekClass {
  int weekday = 0;  // 0 Monday to 6 Sunday
  Level level = Level::novice;
  std::optional<int> length_s;
  int stations = 1;
  int laps = 1;
  int work_s = 40;
  int change_s = 20;
  std::map<std::string, int, std::less<>> equipment;  // units by kind; a kind left out is not there
  std::vector<std::string> keep;                      // ids of the table
  [[nodiscard]] std::string_view day() const { return weekday_names[static_cast<std::size_t>(weekday)]; }
  /// Every station in every lap.
  [[nodiscard]] int slots() const { return stations * laps; }
  [[nodiscard]] int seconds() const { return slots() * (work_s + change_s); }
};

struct WeekSpec {
  std::string name;
  std::array<SetTarget, group_count> targets{};
  std::vector<WeekClass> classes;  // at least one
};

enum class WeekGoal : std::uint8_t { shortfall, excess, clashes, loss, change };
inline constexpr int week_goal_count = 5;
std::string_view id_of(WeekGoal);
using WeekValues = std::array<std::int64_t, week_goal_count>;

/// What a choice of exercises comes to, counted from the ids alone.
struct WeekAccount {
  std::vector<std::array<int, group_count>> sets;  // by class and group
  std::array<int, group_count> total{};
  std::vector<std::int64_t> loss;  // by class missed
  WeekValues value{};
};
WeekAccount account_of(const WeekSpec&, const ExerciseTable&,
                       const std::vector<std::vector<std::string>>& stations);

/// The classes as the week runs: by day, those of one day in file order.
std::vector<std::size_t> week_order(const WeekSpec&);

struct WeekPlan {
  std::vector<std::vector<std::string>> stations;  // by class, in ring order
  WeekAccount account;
  /// A lower bound of each goal over all plans whose earlier goals equal those shown; proven where it equals
  /// the value.
  WeekValues bound{};
  std::int64_t steps = 0;  // numbers of the search's tables that were recomputed, in thousands
  [[nodiscard]] bool proven(int goal) const {
    const auto g = static_cast<std::size_t>(goal);
    return bound[g] == account.value[g];
  }
  /// So many goals from the first on are proven.
  [[nodiscard]] int proven_goals() const {
    int g = 0;
    while (g < week_goal_count && proven(g)) ++g;
    return g;
  }
};

/// Why there is no plan; the class it is about, if it is one.
struct WeekRefusal {
  std::optional<std::size_t> class_index;
  std::string reason;
};

/// How long the search may take, in steps; the same number gives the same answer on every machine.
struct WeekEffort {
  std::int64_t steps = 6'000'000;
};

std::variant<WeekPlan, WeekRefusal> plan_week(const WeekSpec&, const ExerciseTable&, WeekEffort = {});

}  // namespace floorwheel::training
