// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/week_brute_force.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <set>

namespace floorwheel::week_brute_force {
namespace {

using training::SetTarget;
using training::WeekClass;
using training::WeekSpec;

using Sets = std::array<int, group_count>;

bool sharing(const GroupSet& a, const GroupSet& b) { return (a.bits() & b.bits()) != 0; }

int lacking(const WeekSpec& w, const Sets& sets) {
  int sum = 0;
  for (std::size_t g = 0; g < group_count; ++g)
    if (sets[g] < w.targets[g].at_least) sum += w.targets[g].at_least - sets[g];
  return sum;
}

/// Groups and units of one choice, found once for all the weeks it stands in.
struct Choice {
  Sets sets{};
  std::map<std::string, int> units;
};

Choice weigh(const WeekClass& c, const ExerciseTable& table, const std::vector<std::string>& ids) {
  Choice choice;
  for (const std::string& id : ids) {
    const Exercise& e = table.at(id);
    for (std::size_t g = 0; g < group_count; ++g)
      if (e.primary.contains(static_cast<Group>(g))) choice.sets[g] += c.laps;
    for (const std::string& kind : e.equipment) ++choice.units[kind];
  }
  return choice;
}

int moved(const std::map<std::string, int>& a, const std::map<std::string, int>& b) {
  int sum = 0;
  for (const auto& [kind, n] : a) sum += std::abs(n - (b.contains(kind) ? b.at(kind) : 0));
  for (const auto& [kind, n] : b) sum += a.contains(kind) ? 0 : n;
  return sum;
}

Values price_of(const WeekSpec& w, const std::vector<const Choice*>& classes) {
  Sets total{};
  std::array<Sets, 7> day{};
  for (std::size_t c = 0; c < classes.size(); ++c)
    for (std::size_t g = 0; g < group_count; ++g) {
      total[g] += classes[c]->sets[g];
      day[static_cast<std::size_t>(w.classes[c].weekday)][g] += classes[c]->sets[g];
    }
  Values v{};
  v[0] = lacking(w, total);
  for (std::size_t g = 0; g < group_count; ++g)
    v[1] += std::max(0, total[g] - std::min(total[g], w.targets[g].at_most));
  for (std::size_t d = 0; d < 7; ++d)
    for (std::size_t g = 0; g < group_count; ++g)
      if (day[d][g] > 2 && day[d == 6 ? 0 : d + 1][g] > 2) ++v[2];
  for (const Choice* missed : classes) {
    Sets rest = total;
    for (std::size_t g = 0; g < group_count; ++g) rest[g] -= missed->sets[g];
    v[3] = std::max<std::int64_t>(v[3], lacking(w, rest) - v[0]);
  }
  std::vector<const Choice*> running;
  for (int d = 0; d < 7; ++d)
    for (std::size_t c = 0; c < classes.size(); ++c)
      if (w.classes[c].weekday == d) running.push_back(classes[c]);
  for (std::size_t c = 0; c < running.size(); ++c)
    v[4] += moved(running[c]->units, running[c + 1 == running.size() ? 0 : c + 1]->units);
  return v;
}

std::string broken_in(const WeekClass& c, const ExerciseTable& table, const std::vector<std::string>& ids) {
  if (std::ssize(ids) != c.stations) return "not as many stations as asked";
  if (std::set(ids.begin(), ids.end()).size() != ids.size()) return "an exercise twice";
  for (const std::string& id : c.keep)
    if (std::ranges::count(ids, id) != 1) return id + " is not kept";
  std::map<std::string, int> units;
  for (const std::string& id : ids)
    for (const std::string& kind : table.at(id).equipment) ++units[kind];
  for (const auto& [kind, n] : units) {
    const auto there = c.equipment.find(kind);
    if (there == c.equipment.end() || there->second < n) return "too few of " + kind;
  }
  return {};
}

/// Every choice of c.stations of the table that holds the rules, its ring included.
std::vector<Choice> choices(const WeekClass& c, const ExerciseTable& table) {
  std::vector<std::string> ids;
  for (const auto& [id, e] : table) ids.push_back(id);
  std::vector<Choice> found;
  for (unsigned bits = 0; bits < 1U << ids.size(); ++bits) {
    std::vector<std::string> chosen;
    std::vector<GroupSet> groups;
    for (std::size_t i = 0; i < ids.size(); ++i)
      if (bits >> i & 1U) {
        chosen.push_back(ids[i]);
        groups.push_back(table.at(ids[i]).primary);
      }
    if (broken_in(c, table, chosen).empty() && has_ring(groups, c.laps))
      found.push_back(weigh(c, table, chosen));
  }
  return found;
}

}  // namespace

bool has_ring(const std::vector<GroupSet>& stations, int laps) {
  const std::size_t n = stations.size();
  if (n == 1) return laps == 1 || !sharing(stations[0], stations[0]);
  std::vector<std::size_t> order(n);
  for (std::size_t i = 0; i < n; ++i) order[i] = i;
  do {
    bool good = true;
    for (std::size_t i = 0; good && i < n; ++i)
      good = !sharing(stations[order[i]], stations[order[(i + 1) % n]]);
    if (good) return true;
  } while (std::next_permutation(order.begin() + 1, order.end()));
  return false;
}

Values price(const WeekSpec& w, const ExerciseTable& table,
             const std::vector<std::vector<std::string>>& stations) {
  std::vector<Choice> weighed;
  for (std::size_t c = 0; c < stations.size(); ++c)
    weighed.push_back(weigh(w.classes[c], table, stations[c]));
  std::vector<const Choice*> week;
  for (const Choice& c : weighed) week.push_back(&c);
  return price_of(w, week);
}

std::string broken_rule(const WeekSpec& w, const ExerciseTable& table,
                        const std::vector<std::vector<std::string>>& stations) {
  if (stations.size() != w.classes.size()) return "not as many classes as asked";
  for (std::size_t c = 0; c < stations.size(); ++c) {
    const std::vector<std::string>& ids = stations[c];
    if (std::string rule = broken_in(w.classes[c], table, ids); !rule.empty()) return rule;
    for (std::size_t i = 0; i < ids.size(); ++i) {
      const std::size_t next = (i + 1) % ids.size();
      const bool last_of_one_lap = next == i && w.classes[c].laps == 1;
      if (!last_of_one_lap && sharing(table.at(ids[i]).primary, table.at(ids[next]).primary))
        return ids[i] + " stands beside " + ids[next];
    }
  }
  return {};
}

std::vector<Values> all_plans(const WeekSpec& w, const ExerciseTable& table) {
  std::vector<std::vector<Choice>> by_class;
  for (const WeekClass& c : w.classes) {
    by_class.push_back(choices(c, table));
    if (by_class.back().empty()) return {};
  }
  std::vector<Values> plans;
  std::vector<std::size_t> at(by_class.size());
  while (true) {
    std::vector<const Choice*> week;
    for (std::size_t c = 0; c < at.size(); ++c) week.push_back(&by_class[c][at[c]]);
    plans.push_back(price_of(w, week));
    std::size_t c = 0;
    while (c < at.size() && ++at[c] == by_class[c].size()) at[c++] = 0;
    if (c == at.size()) return plans;
  }
}

}  // namespace floorwheel::week_brute_force
