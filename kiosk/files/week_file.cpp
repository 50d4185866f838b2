// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/week_file.h"

#include <set>

#include "kiosk/files/nearest.h"
#include "kiosk/files/text_file.h"
#include "kiosk/files/toml_reader.h"

namespace floorwheel::files {
namespace {

using training::SetTarget;
using training::WeekClass;
using training::WeekSpec;

// Above these it is a slip of the pen.
constexpr int most_minutes = 600;
constexpr int most_classes = 28;
constexpr int most_stations = 100;
constexpr int most_laps = 20;
constexpr int most_interval_s = 3600;
constexpr int most_units = 1000;
constexpr int most_target = 1000;

constexpr std::array<Key, 2> document_keys{{{"week", "[week]"}, {"class", "[[class]]"}}};
constexpr std::array<Key, 2> week_keys{{
    {"name", "name = \"Hall week\""},
    {"target_sets", "target_sets = { default = [6, 12], neck = [0, 6] }, at least and at most"},
}};
constexpr std::array<Key, 9> class_keys{{
    {"day", "day = \"Tuesday\""},
    {"level", "level = \"novice\""},
    {"length_min", "length_min = 60"},
    {"stations", "stations = 10"},
    {"laps", "laps = 2"},
    {"work_s", "work_s = 40, whole seconds"},
    {"change_s", "change_s = 20, whole seconds"},
    {"equipment", "equipment = { kettlebell = 6, bench = 2 }, units by kind"},
    {"keep", "keep = [\"goblet-squat\"], exercises that stay"},
}};

/// Keys of a table whose names are ids: each with one example for all.
class NamedKeys {
 public:
  NamedKeys(std::vector<std::string> names, std::string_view value) : names_(std::move(names)) {
    for (const std::string& name : names_) examples_.push_back(name + " = " + std::string(value));
    for (std::size_t i = 0; i < names_.size(); ++i) keys_.push_back({names_[i], examples_[i]});
  }
  [[nodiscard]] std::span<const Key> keys() const { return keys_; }
  [[nodiscard]] const std::vector<std::string>& names() const { return names_; }

 private:
  std::vector<std::string> names_, examples_;
  std::vector<Key> keys_;
};

void read_targets(const TomlDocument& document, const TomlTable& head, WeekSpec& week) {
  std::vector<std::string> names{"default"};
  for (int g = 0; g < group_count; ++g) names.emplace_back(id_of(static_cast<Group>(g)));
  const NamedKeys named(names, "[6, 12], at least and at most");
  const TomlTable table(document, head.inner("target_sets"), "target_sets", named.keys());
  const auto target = [&](const std::string& name) {
    const auto [at_least, at_most] = table.span(name, 0, most_target);
    return SetTarget{at_least, at_most};
  };
  if (table.has("default")) week.targets.fill(target("default"));
  for (std::size_t g = 0; g < group_count; ++g)
    if (const std::string id(id_of(static_cast<Group>(g))); table.has(id)) week.targets[g] = target(id);
}

std::vector<std::string> kinds_of(const ExerciseTable& exercises) {
  std::set<std::string> kinds;
  for (const auto& [id, e] : exercises) kinds.insert(e.equipment.begin(), e.equipment.end());
  return {kinds.begin(), kinds.end()};
}

WeekClass read_class(const TomlDocument& document, const toml::table& entry, const ExerciseTable& exercises) {
  const TomlTable table(document, entry, "a [[class]]", class_keys);
  WeekClass c;
  const Known days("day of the week", {training::weekday_names.begin(), training::weekday_names.end()});
  const std::string day = table.known_id(table.need("day"), "day", days);
  while (c.day() != day) ++c.weekday;
  c.level = *level_from(table.known_id(table.need("level"), "level", words_of<Level>("level", level_count)));
  if (table.has("length_min")) c.length_s = 60 * table.whole("length_min", 1, most_minutes);
  c.stations = table.whole("stations", 1, most_stations);
  c.laps = table.whole("laps", 1, most_laps, 1);
  c.work_s = table.whole("work_s", 1, most_interval_s);
  c.change_s = table.whole("change_s", 0, most_interval_s);
  if (table.has("equipment")) {
    const NamedKeys kinds(kinds_of(exercises), "6, whole units");
    const TomlTable units(document, table.inner("equipment"), "equipment", kinds.keys());
    for (const std::string& kind : kinds.names())
      if (units.has(kind)) c.equipment[kind] = units.whole(kind, 0, most_units);
  }
  std::vector<std::string> ids;
  for (const auto& [id, e] : exercises) ids.push_back(id);
  c.keep = table.known_ids("keep", Known("exercise", std::move(ids)));
  return c;
}

WeekSpec read_document(std::string_view toml, const std::string& file, const ExerciseTable& exercises) {
  const TomlDocument document(toml, file, "week file");
  const TomlTable root(document, document.root(), "a week file", document_keys);
  const toml::source_region top{{1, 1}, {1, 1}, nullptr};
  if (!root.has("week"))
    document.fail(top, "the file has no [week]", "begin with [week] and its name and target_sets");
  const TomlTable head(document, root.inner("week"), "[week]", week_keys);
  WeekSpec week;
  week.name = head.shown_text("name", 120);
  read_targets(document, head, week);
  const std::string right = "write [[class]], once for each class of the week";
  if (root.has("class")) {
    const auto* list = root.need("class").as_array();
    if (!list) root.fail(root.need("class"), "class is no list of tables", right);
    for (const toml::node& entry : *list) {
      if (!entry.is_table()) root.fail(entry, "an entry of class is no table", right);
      if (week.classes.size() == most_classes)
        root.fail(entry, "the week has more than " + std::to_string(most_classes) + " classes",
                  "plan it in parts");
      week.classes.push_back(read_class(document, *entry.as_table(), exercises));
    }
  }
  if (week.classes.empty()) document.fail(top, "the week has no classes", right);
  return week;
}

}  // namespace

OrFileError<WeekSpec> parse_week(std::string_view toml, const std::string& file,
                                 const ExerciseTable& exercises) {
  return or_stopped([&] { return read_document(toml, file, exercises); });
}

OrFileError<WeekSpec> read_week(const std::string& path, const ExerciseTable& exercises) {
  return parse_file(path, "week file (*.week.toml)",
                    [&](const std::string& text) { return parse_week(text, path, exercises); });
}

}  // namespace floorwheel::files
