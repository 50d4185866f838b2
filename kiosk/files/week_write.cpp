// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/week_write.h"

#include <algorithm>
#include <filesystem>
#include <map>
#include <set>

#include "kiosk/files/json_text.h"

namespace floorwheel::files {
namespace {

using training::SetTarget;
using training::WeekClass;
using training::WeekPlan;
using training::WeekRefusal;
using training::WeekSpec;

std::string ids(GroupSet groups) {
  std::vector<std::string_view> words;
  for (int g = 0; g < group_count; ++g)
    if (groups.contains(static_cast<Group>(g))) words.push_back(id_of(static_cast<Group>(g)));
  return list(words, in_quotes);
}

std::string class_json(const WeekSpec& week, const ExerciseTable& table, const WeekPlan& plan,
                       std::size_t i) {
  const WeekClass& c = week.classes[i];
  std::string out = "{ \"class\": " + std::to_string(i + 1) + ", \"day\": " + in_quotes(c.day());
  out += ", \"level\": " + in_quotes(id_of(c.level)) + ", \"laps\": " + std::to_string(c.laps);
  out += ", \"slots\": " + std::to_string(c.slots()) + ", \"seconds\": " + std::to_string(c.seconds());
  out += ",\n      \"stations\": " +
         list(
             plan.stations[i],
             [&](const std::string& id) {
               return "{ \"exercise\": " + in_quotes(id) + ", \"sets\": " + std::to_string(c.laps) +
                      ", \"groups\": " + ids(table.at(id).primary) +
                      ", \"equipment\": " + list(table.at(id).equipment, in_quotes) + " }";
             },
             ",\n        ");
  return out + ",\n      \"loss\": " + std::to_string(plan.account.loss[i]) + " }";
}

std::string verdict_of(int total, SetTarget t) {
  return total < t.at_least ? "under" : total > t.at_most ? "over" : "reached";
}

std::string dose_json(const WeekSpec& week, const WeekPlan& plan, std::size_t g) {
  const SetTarget t = week.targets[g];
  const int total = plan.account.total[g];
  std::string out = "{ \"group\": " + in_quotes(id_of(static_cast<Group>(g)));
  out += ", \"sets\": " + list(plan.account.sets, [g](const auto& sets) { return std::to_string(sets[g]); });
  out += ", \"total\": " + std::to_string(total) + ", \"at_least\": " + std::to_string(t.at_least);
  out += ", \"at_most\": " + (t.at_most == SetTarget::no_limit ? "null" : std::to_string(t.at_most));
  return out + ", \"verdict\": " + in_quotes(verdict_of(total, t)) + " }";
}

std::string values_json(const training::WeekValues& v) {
  std::string out;
  for (std::size_t g = 0; g < v.size(); ++g)
    out += (g == 0 ? "" : ", ") + in_quotes(id_of(static_cast<training::WeekGoal>(g))) + ": " +
           std::to_string(v[g]);
  return "{ " + out + " }";
}

std::vector<std::size_t> numbers_below(std::size_t n) {
  std::vector<std::size_t> numbers(n);
  for (std::size_t i = 0; i < n; ++i) numbers[i] = i;
  return numbers;
}

/// Two rows three metres apart, along the one and back along the other, so that neighbours on the ring are
/// neighbours on the floor.
std::string place_of(std::size_t i, std::size_t n) {
  const std::size_t row = (n + 1) / 2;
  const std::size_t x = i < row ? i : n - 1 - i;
  return "[" + std::to_string(3 * x) + ".0, " + (i < row ? "0.0" : "3.0") + "]";
}

}  // namespace

std::string to_json(const WeekSpec& week, const ExerciseTable& table, const WeekPlan& plan,
                    const std::vector<std::string>& reasons) {
  std::string out = "{ \"format\": \"floorwheel-week\", \"version\": 1,\n  \"week\": " + in_quotes(week.name);
  out +=
      ",\n  \"classes\": " + list(
                                 numbers_below(week.classes.size()),
                                 [&](std::size_t i) { return class_json(week, table, plan, i); }, ",\n    ");
  out += ",\n  \"dose\": " +
         list(
             numbers_below(group_count), [&](std::size_t g) { return dose_json(week, plan, g); }, ",\n    ");
  out += ",\n  \"value\": " + values_json(plan.account.value) + ",\n  \"bound\": " + values_json(plan.bound);
  std::vector<std::string_view> proven;
  for (int g = 0; g < plan.proven_goals(); ++g) proven.push_back(id_of(static_cast<training::WeekGoal>(g)));
  out += ",\n  \"proven\": " + list(proven, in_quotes);
  return out + ",\n  \"reasons\": " + list(reasons, in_quotes, ",\n    ") + " }\n";
}

std::string to_json(const WeekRefusal& r) {
  std::string out =
      R"({ "format": "floorwheel-refusal", "version": 1, "rule": 0, "members": [], "stations": [], "slots": [])";
  out += ", \"class\": " + (r.class_index ? std::to_string(*r.class_index + 1) : std::string("null"));
  return out + ",\n  \"reason\": " + in_quotes(r.reason) + " }\n";
}

std::string class_file_name(const std::string& week_file, const WeekSpec& week, std::size_t index) {
  std::string stem = std::filesystem::path(week_file).filename().string();
  for (const std::string_view end : {".toml", ".week"})
    if (stem.ends_with(end)) stem = stem.substr(0, stem.size() - end.size());
  std::string day(week.classes[index].day());
  day[0] = static_cast<char>(day[0] - 'A' + 'a');
  return stem + "-" + std::to_string(index + 1) + "-" + day + ".class.toml";
}

std::string class_file_text(const WeekSpec& week, const ExerciseTable& table, const WeekPlan& plan,
                            std::size_t index) {
  const WeekClass& c = week.classes[index];
  const std::vector<std::string>& stations = plan.stations[index];
  const auto number = [](int n) { return std::to_string(n); };
  std::string out =
      "# Class " + std::to_string(index + 1) + " of the week plan; stations stand in ring order.\n[class]\n";
  out += "name = " + in_quotes(week.name + ", " + std::string(c.day())) + "\n";
  if (c.length_s) out += "length_min = " + number(*c.length_s / 60) + "\n";
  out += "laps = " + number(c.laps) + "\nwork_s = " + number(c.work_s) +
         "\nchange_s = " + number(c.change_s) + "\n";
  out += "lead_in_s = 0\nslots = " + number(c.slots()) + "\n";
  const std::array<int, level_count> recovery_s = ClassSpec{}.recovery_s;
  out += "# Guests count as novices; they recover as the week's level does.\nrecovery_s = { novice = " +
         number(recovery_s[static_cast<std::size_t>(c.level)]) + " }\n";
  out +=
      "# As many people as stations; write [[member]] for those who come.\nguests = " + number(c.stations) +
      "\n";
  std::set<std::string> kinds;
  for (const std::string& id : stations)
    kinds.insert(table.at(id).equipment.begin(), table.at(id).equipment.end());
  for (const std::string& kind : kinds)
    out += "\n[[equipment]]\nid = " + in_quotes(kind) +
           "\nunits = " + number(c.equipment.find(kind)->second) + "\n";
  out += "\n# Two rows, three metres apart; write where yours stand.\n";
  for (std::size_t i = 0; i < stations.size(); ++i) {
    const Exercise& e = table.at(stations[i]);
    out += (i == 0 ? "" : "\n") + std::string("[[station]]\nid = ") + in_quotes(e.id) +
           "\nexercise = " + in_quotes(e.id) + "\ncapacity = 1\n";
    if (!e.equipment.empty()) out += "equipment = " + list(e.equipment, in_quotes) + "\n";
    out += "at = " + place_of(i, stations.size()) + "\n";
  }
  return out;
}

}  // namespace floorwheel::files
