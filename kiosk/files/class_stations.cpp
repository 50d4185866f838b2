// SPDX-License-Identifier: GPL-3.0-or-later
// [[exercise]], [[equipment]] and [[station]] of a class file.
#include "kiosk/files/class_parts.h"

namespace floorwheel::files {
namespace {

constexpr int most_places = 100'000;
constexpr int most_metres = 1000;  // either way from the floor's corner

constexpr std::array<Key, 11> exercise_keys{{
    {"id", "id = \"goblet-squat\""},
    {"name", "name = \"Goblet squat\""},
    {"primary", "primary = [\"quadriceps\", \"glutes\"]"},
    {"assisting", "assisting = [\"lower_back\"], or [] for none"},
    {"features", "features = [\"deep-knee\"]"},
    {"kind", "kind = \"compound\" or kind = \"isolation\""},
    {"loads_kg", "loads_kg = [8, 12, 16]"},
    {"reps", "reps = [8, 12]"},
    {"rir", "rir = [1, 3]"},
    {"hold", "hold = true"},
    {"substitutes", "substitutes = [\"box-squat\"]"},
}};
constexpr std::array<Key, 2> equipment_keys{{{"id", "id = \"kettlebell\""}, {"units", "units = 6"}}};
constexpr std::array<Key, 10> station_keys{{
    {"id", "id = \"A\""},
    {"exercise", "exercise = \"goblet-squat\", an id of the exercise table"},
    {"substitutes", "substitutes = [\"box-squat\"]"},
    {"capacity", "capacity = 2"},
    {"equipment", "equipment = [\"kettlebell\"]"},
    {"at", "at = [1.0, 2.5], metres"},
    {"offers_kg", "offers_kg = [8, 12, 16]"},
    {"reps", "reps = 12"},
    {"rir", "rir = 2"},
    {"closed", "closed = [[3, 3]]"},
}};

template <class E, class From>
EnumSet<E> words(const TomlTable& table, std::string_view key, const Known& known, From from) {
  EnumSet<E> set;
  for (const std::string& id : table.known_ids(key, known)) set.insert(*from(id));
  return set;
}

Exercise read_exercise(const TomlTable& table, const std::string& id) {
  static const Known groups = words_of<Group>("muscle group", group_count);
  static const Known features = words_of<Feature>("feature", feature_count);
  static const Known kinds = words_of<ExerciseKind>("kind of exercise", 2);
  Exercise e;
  e.id = id;
  e.name = table.shown_text("name", 80);
  static_cast<void>(table.list("primary"));
  static_cast<void>(table.list("assisting"));
  e.primary = words<Group>(table, "primary", groups, group_from);
  if (e.primary.empty()) table.wrong("primary", "names no muscle group");
  e.assisting = words<Group>(table, "assisting", groups, group_from);
  e.features = words<Feature>(table, "features", features, feature_from);
  e.kind = *exercise_kind_from(table.known_id(table.need("kind"), "kind", kinds));
  e.loads_hg = table.loads("loads_kg");
  if (table.has("reps")) e.reps = table.span("reps", 1, most_reps);
  if (table.has("rir")) e.rir = table.span("rir", 0, most_rir);
  e.hold = table.truth("hold", false);
  return e;
}

void read_equipment(ClassParts& parts) {
  for (const toml::table* t : tables_of(parts, "equipment")) {
    const TomlTable table(parts.document, *t, "an [[equipment]]", equipment_keys);
    EquipmentSpec e;
    e.id = table.new_id("id", IdKind::equipment, parts.equipment);
    e.units = table.whole("units", 0, most_places);
    parts.spec.equipment.push_back(e);
  }
}

StationSpec read_station(ClassParts& parts, TomlTable& table) {
  StationSpec s;
  s.id = table.new_id("id", IdKind::station, parts.stations);
  table.rename("station " + s.id);
  s.exercise = table.known_id(table.need("exercise"), "exercise", parts.exercises);
  s.substitutes = table.known_ids("substitutes", parts.exercises);
  s.capacity = table.whole("capacity", 1, most_places);
  s.equipment = table.known_ids("equipment", parts.equipment);
  const toml::array& at = table.list("at");
  if (at.size() != 2) table.wrong("at", "is no pair of numbers");
  s.x_cm = table.decimal(at[0], "at", 2, -most_metres, most_metres);
  s.y_cm = table.decimal(at[1], "at", 2, -most_metres, most_metres);
  s.offers_hg = table.loads("offers_kg");
  if (table.has("reps")) s.reps = table.whole("reps", 1, most_reps);
  if (table.has("rir")) s.rir = table.whole("rir", 0, most_rir);
  if (table.has("closed"))
    for (const toml::node& range : table.list("closed"))
      s.closed.push_back(table.slot_range(range, "closed"));
  return s;
}

}  // namespace

void read_exercises(ClassParts& parts) {
  // Twice: a substitute may be an exercise that stands further down.
  Known own("exercise");
  std::vector<TomlTable> tables;
  for (const toml::table* t : tables_of(parts, "exercise")) {
    TomlTable& table = tables.emplace_back(parts.document, *t, "an [[exercise]]", exercise_keys);
    const std::string id = table.new_id("id", IdKind::exercise, own);
    table.rename("exercise " + id);
    parts.spec.exercises.insert_or_assign(id, read_exercise(table, id));
    parts.exercises.add(id);
  }
  for (std::size_t i = 0; i < tables.size(); ++i)
    parts.spec.exercises.at(own.ids()[i]).substitutes = tables[i].known_ids("substitutes", parts.exercises);
}

void read_stations(ClassParts& parts) {
  read_equipment(parts);
  for (const toml::table* t : tables_of(parts, "station")) {
    TomlTable table(parts.document, *t, "a [[station]]", station_keys);
    parts.spec.stations.push_back(read_station(parts, table));
  }
  if (parts.spec.stations.empty())
    parts.document.fail({{1, 1}, {1, 1}, nullptr}, "the class has no stations",
                        "add a [[station]] with id, exercise, capacity and at");
}

}  // namespace floorwheel::files
