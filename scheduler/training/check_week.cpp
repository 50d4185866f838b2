// SPDX-License-Identifier: GPL-3.0-or-later
// What can be said of a programme's week: dose of each group, on how many days, with how much rest between.
#include <algorithm>

#include "scheduler/training/check_rules.h"

namespace floorwheel::checking {
namespace {

constexpr GroupSet main_groups{Group::chest,  Group::shoulders, Group::quadriceps, Group::hamstrings,
                               Group::glutes, Group::lats,      Group::upper_back};
constexpr std::string_view two_days =
    "WHO 2020 (doi:10.1136/bjsports-2020-102955), US 2018, ACSM 2011 and 2026: each major group on two days "
    "a week or more";
constexpr std::string_view bands =
    "bands of weekly sets: common practice, no source; compare Iversen 2021 (4 or more), ACSM 2026 (10 for "
    "growth)";

/// The first entry that trains a group, in file order; none where nothing does.
const Entry* first_for(const Week& week, Group g) {
  const Entry* first = nullptr;
  for (const Day& day : week.days)
    for (const Entry& e : day.entries)
      if (e.dose() > 0 && e.primary().contains(g) && (!first || e.planned->line < first->planned->line))
        first = &e;
  return first;
}

Finding for_group(std::string_view rule, Severity severity, Group g, int line) {
  Finding f;
  f.rule = rule;
  f.severity = severity;
  f.group = g;
  f.line = line;
  return f;
}

void check_untrained(const Week& week, Group g, std::vector<Finding>& out) {
  if (week.programme.leave_out.contains(g)) return;
  const bool back = g == Group::lats || g == Group::upper_back;
  if (back && at(week.sets, Group::lats) + at(week.sets, Group::upper_back) > 0) return;
  Finding f = for_group("group-untrained", main_groups.contains(g) ? Severity::should : Severity::note, g,
                        week.programme.line);
  f.found = "no working set for " + std::string(id_of(g));
  f.wanted =
      main_groups.contains(g) ? "working sets on two days a week" : "working sets, or left out on purpose";
  f.source = two_days;
  f.mend = "Add an exercise for it, or write leave_out = [\"" + std::string(id_of(g)) + "\"].";
  out.push_back(f);
}

void check_dose(const Week& week, Group g, std::vector<Finding>& out) {
  if (week.programme.leave_out.contains(g)) return;
  const int sets = at(week.sets, g);
  const bool novice = week.programme.level == Level::novice;
  const int most = novice ? 15 : 20;
  const int line = first_for(week, g)->planned->line;
  const std::string found = counted(sets, "set") + " a week for " + std::string(id_of(g));
  if (sets < 3) {
    Finding f = for_group("dose-low", main_groups.contains(g) ? Severity::should : Severity::note, g, line);
    f.found = found;
    f.wanted = "3 sets a week or more";
    f.source = bands;
    f.mend = "Add " + counted(3 - sets, "set") + " for it.";
    out.push_back(f);
  } else if (sets < 10 && !novice) {
    Finding f = for_group("dose-low", Severity::note, g, line);
    f.found = found;
    f.wanted = "10 to 20 sets a week for " + std::string(id_of(week.programme.level));
    f.source = bands;
    f.mend = "Enough to keep what there is; for more, add up to " + counted(10 - sets, "set") + ".";
    out.push_back(f);
  } else if (sets > most) {
    Finding f = for_group("dose-high", Severity::should, g, line);
    f.found = found;
    f.wanted = std::to_string(most) + " sets a week at most for " + std::string(id_of(week.programme.level));
    f.source =
        "Baz-Valle 2022 (J Hum Kinet 81:199-210): over 20 sets seldom better than 12 to 20; 15 for novices "
        "is common practice";
    f.mend = "Take out " + counted(sets - most, "set") + " for it.";
    out.push_back(f);
  }
}

void check_frequency(const Week& week, Group g, std::vector<Finding>& out) {
  const Day* only = nullptr;
  for (const Day& day : week.days) {
    if (at(day.sets, g) == 0) continue;
    if (only) return;
    only = &day;
  }
  if (only == nullptr) return;
  const int sets = at(only->sets, g);
  Finding f = for_group("frequency-low", sets > 10 ? Severity::should : Severity::note, g,
                        first_for(week, g)->planned->line);
  f.day = only->name;
  f.found = std::string(id_of(g)) + " on one day only, with " + counted(sets, "set");
  f.wanted = "two days a week or more";
  f.source = two_days;
  f.mend = "Spread its sets over two days.";
  out.push_back(f);
}

void check_recovery(const Day& first, const Day& second, std::vector<Finding>& out) {
  each_group([&](Group g) {
    if (at(first.sets, g) < 3 || at(second.sets, g) < 3) return;
    const auto e = std::find_if(second.entries.begin(), second.entries.end(), [&](const Entry& entry) {
      return entry.dose() > 0 && entry.primary().contains(g);
    });
    Finding f = for_group("recovery-days", Severity::should, g, e->planned->line);
    f.day = second.name;
    f.found = std::string(id_of(g)) + " with " + counted(at(first.sets, g), "set") + " on " + first.name +
              " and " + counted(at(second.sets, g), "set") + " on " + second.name;
    f.wanted = "a day between two days with 3 sets or more for one group";
    f.source = "FM 21-20 (US Army, 1992/1998): 48 h between; ACSM 2011 (from memory)";
    f.mend = "Move one of the days, or give " + second.name + " other groups.";
    out.push_back(f);
  });
}

}  // namespace

void check_week(const Week& week, std::vector<Finding>& out) {
  each_group([&](Group g) {
    if (at(week.sets, g) == 0) {
      check_untrained(week, g, out);
      return;
    }
    check_dose(week, g, out);
    check_frequency(week, g, out);
  });
  for (const Day& first : week.days)
    for (const Day& second : week.days)
      if (first.weekday && second.weekday && (*first.weekday + 1) % 7 == *second.weekday)
        check_recovery(first, second, out);
}

}  // namespace floorwheel::checking
