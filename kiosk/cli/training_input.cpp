// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/cli/training_input.h"

#include <algorithm>
#include <charconv>
#include <ctime>

#include "kiosk/cli/class_input.h"
#include "kiosk/files/nearest.h"
#include "kiosk/files/set_records.h"
#include "kiosk/files/text_file.h"
#include "kiosk/files/typed_mass.h"

namespace floorwheel::cli {

using training::Day;
using training::Weight;

std::vector<training::SetRecord> sets_of(const std::string& path, const ExerciseTable& table) {
  const std::string text = value_or_throw(files::read_text(path, "CSV of set records"));
  return value_or_throw(files::parse_sets(text, path, table));
}

std::string needed(const Args& args, std::string_view option, std::string_view example) {
  if (!args.has(option))
    throw UsageError{std::string(option) + " is missing",
                     "give it as in " + std::string(option) + " " + std::string(example)};
  return args.value(option);
}

const Exercise& exercise_named(std::string_view option, const std::string& id, const ExerciseTable& table) {
  if (const auto e = table.find(id); e != table.end()) return e->second;
  std::vector<std::string> known;
  for (const auto& [name, e] : table) known.push_back(name);
  throw UsageError{std::string(option) + ": there is no exercise \"" + id + "\"",
                   files::did_you_mean(id, known)};
}

Weight weight_of(std::string_view option, std::string_view entry) {
  const auto mass = files::typed_mass(entry);
  if (const auto* no = std::get_if<files::NoMass>(&mass))
    throw UsageError{std::string(option) + ": " + no->what, no->right};
  return std::get<Weight>(mass);
}

std::vector<std::string> entries_of(std::string_view list) {
  std::vector<std::string> entries;
  while (!list.empty()) {
    const auto comma = list.find(',');
    entries.emplace_back(list.substr(0, comma));
    if (comma == std::string_view::npos) break;
    list.remove_prefix(comma + 1);
    if (list.empty()) entries.emplace_back();
  }
  return entries;
}

std::vector<Weight> loads_of(std::string_view option, std::string_view list) {
  std::vector<Weight> loads;
  for (const std::string& entry : entries_of(list)) loads.push_back(weight_of(option, entry));
  if (loads.empty())
    throw UsageError{std::string(option) + ": a rack of no weights",
                     "name the loads there are, such as 4,6,8, or 0 for body weight"};
  std::ranges::stable_sort(loads, {}, [](const Weight& w) { return w.mass; });
  const auto alike = [](const Weight& a, const Weight& b) { return a.mass == b.mass; };
  loads.erase(std::unique(loads.begin(), loads.end(), alike), loads.end());
  return loads;
}

std::array<int, 2> range_of(std::string_view option, const std::string& text, int most) {
  std::array<int, 2> range{};
  const char* const end = text.data() + text.size();
  const auto low = std::from_chars(text.data(), end, range[0]);
  const bool dash = low.ec == std::errc() && low.ptr != end && *low.ptr == '-';
  const auto high = dash ? std::from_chars(low.ptr + 1, end, range[1]) : low;
  const bool read = dash && high.ec == std::errc() && high.ptr == end;
  if (!read || range[0] < 1 || range[1] < range[0] || range[1] > most)
    throw UsageError{std::string(option) + ": \"" + text + "\" is no range",
                     "write the lower and the upper number as in 6-10, from 1 to " + std::to_string(most)};
  return range;
}

Day day_of(std::string_view option, const std::string& text) {
  if (const auto day = training::day_from(text)) return *day;
  throw UsageError{std::string(option) + ": \"" + text + "\" is no date", "write it as in 2026-03-05"};
}

Day local_today() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  char text[16];
  std::strftime(text, sizeof text, "%Y-%m-%d", &local);
  return *training::day_from(text);
}

}  // namespace floorwheel::cli
