// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/check.h"

#include <algorithm>

#include "scheduler/training/calendar.h"
#include "scheduler/training/check_rules.h"

namespace floorwheel {

std::string_view id_of(Severity s) {
  constexpr std::array<std::string_view, 3> ids = {"must", "should", "note"};
  return ids[static_cast<std::size_t>(s)];
}

std::optional<int> weekday_of(std::string_view name) {
  const auto small = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
  const auto& names = training::weekday_names;
  const auto it = std::ranges::find_if(
      names, [&](std::string_view day) { return std::ranges::equal(day, name, {}, small, small); });
  if (it == names.end()) return std::nullopt;
  return static_cast<int>(it - names.begin());
}

namespace checking {

Week::Week(const Programme& p, const ExerciseTable& t) : programme(p), table(t) {
  for (const PlannedDay& d : p.days) {
    const std::optional<int> weekday = weekday_of(d.name);
    auto day = std::find_if(days.begin(), days.end(),
                            [&](const Day& other) { return weekday && other.weekday == weekday; });
    if (day == days.end()) day = days.insert(days.end(), {weekday, d.name, {}, {}});
    for (const PlannedExercise& e : d.exercises) {
      const auto known = table.find(e.exercise);
      day->entries.push_back({&d, &e, known == table.end() ? nullptr : &known->second});
      for (Group g : groups_in(day->entries.back().primary())) {
        day->sets[static_cast<std::size_t>(g)] += day->entries.back().dose();
        sets[static_cast<std::size_t>(g)] += day->entries.back().dose();
      }
    }
  }
}

std::vector<Group> groups_in(GroupSet set) {
  std::vector<Group> groups;
  each_group([&](Group g) {
    if (set.contains(g)) groups.push_back(g);
  });
  return groups;
}

std::string ids_of(GroupSet set) {
  std::string text;
  for (Group g : groups_in(set)) text += (text.empty() ? "" : ", ") + std::string(id_of(g));
  return text;
}

GroupSet shared(GroupSet a, GroupSet b) {
  GroupSet both;
  for (Group g : groups_in(a))
    if (b.contains(g)) both.insert(g);
  return both;
}

std::string counted(int n, const std::string& one) {
  return std::to_string(n) + " " + one + (n == 1 ? "" : "s");
}

Finding at_entry(std::string_view rule, Severity severity, const Entry& e) {
  Finding f;
  f.rule = rule;
  f.severity = severity;
  f.day = e.day->name;
  f.exercise = e.planned->exercise;
  f.line = e.planned->line;
  return f;
}

}  // namespace checking

std::vector<Finding> check_programme(const Programme& p, const ExerciseTable& table) {
  const checking::Week week(p, table);
  std::vector<Finding> findings;
  checking::check_exercises(week, findings);
  checking::check_days(week, findings);
  checking::check_week(week, findings);
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding& a, const Finding& b) { return a.line < b.line; });
  return findings;
}

std::array<int, group_count> weekly_sets(const Programme& p, const ExerciseTable& table) {
  return checking::Week(p, table).sets;
}

}  // namespace floorwheel
