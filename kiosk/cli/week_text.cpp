// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/cli/week_text.h"

#include "kiosk/cli/text.h"
#include "kiosk/files/muscle_groups.h"

namespace floorwheel::cli {
namespace {

using training::SetTarget;
using training::WeekClass;
using training::WeekGoal;
using training::WeekPlan;
using training::WeekSpec;

std::string head_of(const WeekSpec& week, std::size_t i) {
  const WeekClass& c = week.classes[i];
  std::string text = "Class " + std::to_string(i + 1) + ", " + std::string(c.day()) + ", " +
                     std::string(id_of(c.level)) + ": " + counted(c.stations, "station", "stations") + ", " +
                     counted(c.laps, "lap", "laps") + ", " + counted(c.slots(), "slot", "slots") + " of " +
                     std::to_string(c.work_s + c.change_s) + " s, " + clock_text(c.seconds());
  if (c.length_s) text += " of " + clock_text(*c.length_s);
  return text + "\n";
}

std::string class_text(const WeekSpec& week, const ExerciseTable& table, const WeekPlan& plan,
                       std::size_t i) {
  std::vector<std::vector<std::string>> rows;
  for (const std::string& id : plan.stations[i]) {
    const Exercise& e = table.at(id);
    std::vector<std::string> groups;
    for (int g = 0; g < group_count; ++g)
      if (e.primary.contains(static_cast<Group>(g))) groups.emplace_back(id_of(static_cast<Group>(g)));
    rows.push_back({std::to_string(rows.size() + 1), id, counted(week.classes[i].laps, "set", "sets"),
                    listed(groups), e.equipment.empty() ? "-" : listed(e.equipment)});
  }
  return "\n" + head_of(week, i) + columns(rows, "  ");
}

std::string verdict(int total, SetTarget t) {
  if (total < t.at_least) return std::to_string(t.at_least - total) + " under";
  if (total > t.at_most) return std::to_string(total - t.at_most) + " over";
  return "reached";
}

std::string target_text(SetTarget t) {
  if (t.at_most == SetTarget::no_limit)
    return t.at_least == 0 ? "any" : std::to_string(t.at_least) + " or more";
  return std::to_string(t.at_least) + " to " + std::to_string(t.at_most);
}

std::string dose_text(const WeekSpec& week, const WeekPlan& plan) {
  std::vector<std::vector<std::string>> rows{{"group"}};
  for (std::size_t c = 0; c < week.classes.size(); ++c)
    rows[0].push_back(std::to_string(c + 1) + " " + std::string(week.classes[c].day().substr(0, 3)));
  for (const char* word : {"total", "target", "verdict"}) rows[0].emplace_back(word);
  for (std::size_t g = 0; g < group_count; ++g) {
    auto& row = rows.emplace_back();
    row.emplace_back(id_of(static_cast<Group>(g)));
    for (const auto& sets : plan.account.sets) row.push_back(std::to_string(sets[g]));
    const int total = plan.account.total[g];
    row.push_back(std::to_string(total));
    row.push_back(target_text(week.targets[g]));
    row.push_back(verdict(total, week.targets[g]));
  }
  return "\nSets by group (a set counts once for each primary group)\n" + columns(rows, "  ");
}

std::string missed_text(const WeekSpec& week, const WeekPlan& plan) {
  std::string text = "\nWhoever misses one class\n";
  for (std::size_t c = 0; c < week.classes.size(); ++c)
    text += "  class " + std::to_string(c + 1) + ", " + std::string(week.classes[c].day()) + ": " +
            counted(plan.account.loss[c], "set", "sets") + " more under the targets\n";
  return text;
}

std::string what_of(WeekGoal goal, std::int64_t v) {
  switch (goal) {
    case WeekGoal::shortfall:
      return "Shortfall: " + counted(v, "set", "sets") + " under the lower ends of the targets";
    case WeekGoal::excess:
      return "Excess: " + counted(v, "set", "sets") + " over the upper ends";
    case WeekGoal::clashes:
      return "Clashes: " + counted(v, "time", "times") +
             " a group has three or more sets on each of two consecutive days";
    case WeekGoal::loss:
      return "Loss: missing the worst class costs " + counted(v, "set", "sets") + " of shortfall";
    case WeekGoal::change:
      return "Change: " + counted(v, "unit", "units") +
             " of equipment to bring out or put away between classes";
  }
  return {};
}

}  // namespace

std::vector<std::string> week_sentences(const WeekSpec&, const WeekPlan& plan) {
  std::vector<std::string> sentences;
  for (int g = 0; g < training::week_goal_count; ++g) {
    const auto i = static_cast<std::size_t>(g);
    const std::int64_t value = plan.account.value[i], bound = plan.bound[i];
    std::string text = what_of(static_cast<WeekGoal>(g), value);
    const std::string given = g == 0 ? "" : ", with all above as they are";
    if (value == 0)
      text += "; there cannot be fewer.";
    else if (value == bound)
      text += "; proven the least there is" + given + ".";
    else
      text += "; not proven, at least " + std::to_string(bound) + given + ", so the gap is at most " +
              std::to_string(value - bound) + ".";
    sentences.push_back(std::move(text));
  }
  return sentences;
}

std::string week_text(const WeekSpec& week, const ExerciseTable& table, const WeekPlan& plan) {
  std::string out = week.name + ": " + counted(std::ssize(week.classes), "class", "classes") + "\n";
  for (std::size_t c = 0; c < week.classes.size(); ++c) out += class_text(week, table, plan, c);
  out += dose_text(week, plan) + "\nGoals, in this order\n";
  for (const std::string& sentence : week_sentences(week, plan)) out += "  " + sentence + "\n";
  return out + missed_text(week, plan) +
         "\nA plan by these rules, not medical advice: stop on pain; the instructor and what a licensed "
         "professional "
         "advises come first.\n";
}

std::string week_refusal_text(const WeekSpec& week, const training::WeekRefusal& r, const std::string& file) {
  std::string place;
  if (r.class_index)
    place = "class " + std::to_string(*r.class_index + 1) + ", " +
            std::string(week.classes[*r.class_index].day()) + ": ";
  return file + ": cannot be planned: " + place + r.reason;
}

}  // namespace floorwheel::cli
