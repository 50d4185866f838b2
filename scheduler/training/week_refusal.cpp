// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/week_refusal.h"

#include <algorithm>

namespace floorwheel::training {
namespace {

std::string number(int n, const std::string& one, const std::string& many) {
  return std::to_string(n) + " " + (n == 1 ? one : many);
}

std::optional<std::string> time_short(const WeekClass& c) {
  if (!c.length_s) return {};
  const int need = c.seconds();
  if (need <= *c.length_s) return {};
  return number(c.stations, "station", "stations") + " in " + number(c.laps, "lap", "laps") + " take " +
         std::to_string(c.slots()) + " slots of " + std::to_string(c.work_s + c.change_s) + " s, " +
         std::to_string(need) + " s in all, and length_min gives " + std::to_string(*c.length_s) +
         " s; take fewer stations or laps, or at least " + std::to_string((need + 59) / 60) + " minutes";
}

std::optional<std::string> keep_short(const WeekClass& c, const ExerciseTable& table) {
  if (std::ssize(c.keep) > c.stations)
    return number(static_cast<int>(c.keep.size()), "exercise is", "exercises are") + " to be kept at " +
           number(c.stations, "station", "stations") + "; keep fewer or set up more stations";
  std::map<std::string, int> used;
  for (const std::string& id : c.keep)
    for (const std::string& kind : table.at(id).equipment) {
      const auto there = c.equipment.find(kind);
      const int units = there == c.equipment.end() ? 0 : there->second;
      if (++used[kind] > units)
        return id + " is to be kept and needs a " + kind + "; the class has " + std::to_string(units) +
               (units == 0 ? "" : ", taken by others to be kept") + "; add one to equipment or keep less";
    }
  return {};
}

}  // namespace

std::optional<WeekRefusal> refusal_at_sight(const WeekSpec& week, const ExerciseTable& table) {
  for (std::size_t c = 0; c < week.classes.size(); ++c) {
    if (auto reason = time_short(week.classes[c])) return WeekRefusal{c, *reason};
    if (auto reason = keep_short(week.classes[c], table)) return WeekRefusal{c, *reason};
  }
  return {};
}

int most_stations(const FloorClass& c) {
  // Depth first over the types, each as often as it can; cut where what is left cannot beat the best.
  std::vector<int> left = c.units;
  int best = 0, trials = 0;
  std::vector<std::size_t> order(c.types.size());
  for (std::size_t t = 0; t < order.size(); ++t) order[t] = t;
  // The modest first: what needs little never stands in the way of an optimum by much.
  std::ranges::stable_sort(order, {}, [&](std::size_t t) { return c.types[t].kinds.size(); });
  std::vector<int> after(order.size() + 1);
  for (std::size_t i = order.size(); i-- > 0;) after[i] = after[i + 1] + c.types[order[i]].size();
  const auto go = [&](const auto& self, std::size_t i, int taken) -> void {
    best = std::max(best, taken);
    if (i == order.size() || taken + after[i] <= best || ++trials > 2'000'000) return;
    const WeekType& type = c.types[order[i]];
    int most = type.size();
    for (const std::size_t k : type.kinds) most = std::min(most, left[k]);
    for (int n = most; n >= 0; --n) {
      for (const std::size_t k : type.kinds) left[k] -= n;
      self(self, i + 1, taken + n);
      for (const std::size_t k : type.kinds) left[k] += n;
    }
  };
  go(go, 0, 0);
  return best;
}

WeekRefusal no_plan_for(const FloorClass& c, bool proven) {
  const int most = most_stations(c);
  const std::string wanted = number(c.stations, "station", "stations");
  if (most < c.stations)
    return {c.file_index, "its equipment allows " + number(most, "exercise", "different exercises") +
                              " at once, and it has " + wanted + "; add equipment or take fewer stations"};
  if (c.stations == 1)
    return {c.file_index,
            "its one station follows itself in every lap, so the same group works twice in a row; take "
            "one lap or more stations"};
  if (!proven)
    return {c.file_index, "no choice of exercises with a ring was found for its " + wanted +
                              " in the steps allowed; keep fewer exercises or take fewer stations"};
  return {c.file_index, "no " + wanted +
                            " of the exercises that its equipment allows, with those to keep, have an order "
                            "without neighbours that share a primary group; keep less, add equipment or take "
                            "fewer stations"};
}

}  // namespace floorwheel::training
