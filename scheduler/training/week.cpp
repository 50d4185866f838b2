// SPDX-License-Identifier: GPL-3.0-or-later
// Goal after goal: a first plan class by class, bettered by exchange, then each goal proven in its order,
// those before it held at their values.
#include "scheduler/training/week.h"

#include <algorithm>

#include "scheduler/training/week_best.h"
#include "scheduler/training/week_branch.h"
#include "scheduler/training/week_refusal.h"

namespace floorwheel::training {
namespace {

constexpr std::int64_t steps_unit = 1000;           // table entries in a step
constexpr int exchange_trials = 25;                 // for each station and type it may have
constexpr std::int64_t first_work = 2'000'000'000;  // a first plan takes a thousandth of it
constexpr int exchange_rounds = 8;

/// Counts that hold every rule, or the reason why there are none.
std::variant<WeekCounts, WeekRefusal> first_plan(const WeekFloor& floor) {
  WeekCounts counts;
  for (std::size_t c = 0; c < floor.classes.size(); ++c) {
    const WeekFloor alone = floor_of_class(floor, c);
    WeekBest best(alone);
    const BranchAnswer answer = branch(best, no_goal, first_work);
    if (!best.any()) return no_plan_for(floor.classes[c], answer.proven);
    counts.push_back(best.counts()[0]);
  }
  return counts;
}

/// More for a larger week, each taking longer, up to a limit.
int trials_for(const WeekFloor& floor) {
  std::int64_t sum = 0;
  for (const FloorClass& c : floor.classes) sum += c.stations * std::ssize(c.types);
  const std::int64_t most = 600'000 / std::ssize(floor.classes);
  return static_cast<int>(std::min(sum * exchange_trials, most));
}

struct Search {
  WeekBest& best;
  WeekValues bound{};
  std::int64_t work = 0;
  std::int64_t work_most = 0;
  std::uint64_t seed = 0;
  WeekCounts tried{};

  /// Exchanges from the best plan on until that no longer helps; again only where the plan is another.
  void better() {
    if (tried == best.counts()) return;
    for (int round = 0; round < exchange_rounds; ++round) {
      const WeekValues before = best.values();
      better_by_exchange(best, trials_for(best.floor()), ++seed);
      if (round > 1 && best.values() == before) break;
    }
    tried = best.counts();
  }

  /// Proves goal after goal; a goal that becomes better while a later one is looked at is looked at again.
  void run() {
    int goal = 0;
    while (goal < week_goal_count) {
      const auto g = static_cast<std::size_t>(goal);
      better();
      const WeekValues before = best.values();
      const std::int64_t left = std::max<std::int64_t>(work_most - work, 0);
      // What a goal may take for itself; what it leaves is there for those after it.
      const std::int64_t share = goal + 1 == week_goal_count ? left : left / 2;
      bound[g] = 0;
      if (before[g] > 0) {
        const BranchAnswer answer = branch(best, goal, share);
        work += answer.work;
        bound[g] = answer.bound;
      }
      int next = goal + 1;
      for (int earlier = goal - 1; earlier >= 0; --earlier)
        if (best.values()[static_cast<std::size_t>(earlier)] != before[static_cast<std::size_t>(earlier)])
          next = earlier;
      goal = next;
    }
  }
};

/// The exercises of a class in ring order.
std::vector<std::string> in_ring_order(const FloorClass& c, const std::vector<int>& counts,
                                       const ExerciseTable& table) {
  std::vector<std::string> ids;
  for (std::size_t t = 0; t < counts.size(); ++t)
    for (int i = 0; i < counts[t]; ++i) ids.push_back(*c.types[t].exercises[static_cast<std::size_t>(i)]);
  std::ranges::sort(ids);
  std::vector<GroupSet> stations;
  stations.reserve(ids.size());
  for (const std::string& id : ids) stations.push_back(table.at(id).primary);
  std::vector<std::string> order;
  for (const int i : ring_of(stations, c.laps).order) order.push_back(ids[static_cast<std::size_t>(i)]);
  return order;
}

}  // namespace

std::variant<WeekPlan, WeekRefusal> plan_week(const WeekSpec& week, const ExerciseTable& table,
                                              WeekEffort effort) {
  if (auto no = refusal_at_sight(week, table)) return std::move(*no);
  const WeekFloor floor = floor_of_week(week, table);
  auto first = first_plan(floor);
  if (auto* no = std::get_if<WeekRefusal>(&first)) return std::move(*no);

  WeekBest best(floor);
  best.offer(std::get<WeekCounts>(first));
  Search search{best, {}, 0, effort.steps * steps_unit};
  search.run();

  WeekPlan plan;
  plan.stations.resize(floor.classes.size());
  for (std::size_t c = 0; c < floor.classes.size(); ++c)
    plan.stations[floor.classes[c].file_index] = in_ring_order(floor.classes[c], best.counts()[c], table);
  plan.account = account_of(week, table, plan.stations);
  plan.bound = search.bound;
  plan.steps = search.work / steps_unit;
  return plan;
}

}  // namespace floorwheel::training
