// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/programme_file.h"

#include "kiosk/files/text_file.h"
#include "kiosk/files/toml_reader.h"

namespace floorwheel::files {
namespace {

// Above these it is a slip of the pen.
constexpr int most_weeks = 520;
constexpr int most_minutes = 600;
constexpr int most_sets = 100;
constexpr int most_repetitions = 100;
constexpr int most_hold_s = 600;
constexpr int most_rest_s = 3600;
constexpr int most_tempo_s = 60;

constexpr std::array<Key, 2> document_keys{{{"programme", "[programme]"}, {"day", "[[day]]"}}};
constexpr std::array<Key, 4> programme_keys{{
    {"name", "name = \"Two evenings\""},
    {"level", "level = \"novice\""},
    {"weeks", "weeks = 8"},
    {"leave_out", "leave_out = [\"calves\"]"},
}};
constexpr std::array<Key, 3> day_keys{{
    {"name", "name = \"Monday\""},
    {"length_min", "length_min = 60"},
    {"exercise", "[[day.exercise]], once for each exercise of the day"},
}};
constexpr std::array<Key, 9> exercise_keys{{
    {"exercise", "exercise = \"front-squat\", an id of the exercise table"},
    {"working_sets", "working_sets = 3"},
    {"reps", "reps = [6, 10]"},
    {"rir", "rir = [1, 3], repetitions in reserve"},
    {"rest_s", "rest_s = 120, whole seconds"},
    {"tempo_s", "tempo_s = { eccentric = 2.0, concentric = 1.0, pause = 0.0 }"},
    {"warm_up_sets", "warm_up_sets = 2"},
    {"practice", "practice = true"},
    {"circuit", "circuit = \"first\""},
}};
constexpr std::array<Key, 3> tempo_keys{{
    {"eccentric", "eccentric = 2.0, seconds"},
    {"concentric", "concentric = 1.0, seconds"},
    {"pause", "pause = 0.0, seconds"},
}};

int tempo_of(const TomlDocument& document, const TomlTable& exercise) {
  const TomlTable tempo(document, exercise.inner("tempo_s"), "tempo_s of " + exercise.name(), tempo_keys);
  int ms = 0;
  for (const Key& part : tempo_keys)
    if (part.name != "pause" || tempo.has(part.name))
      ms += tempo.decimal(tempo.need(part.name), part.name, 3, 0, most_tempo_s);
  return ms;
}

PlannedExercise read_exercise(const TomlDocument& document, const toml::table& entry,
                              const ExerciseTable& known) {
  TomlTable table(document, entry, "a [[day.exercise]]", exercise_keys);
  PlannedExercise e;
  e.exercise = table.text("exercise");
  if (const Spelling s = spelling_of(IdKind::exercise, e.exercise); !s.holds())
    table.fail(table.need("exercise"), s.what, s.right);
  e.line = static_cast<int>(table.need("exercise").source().begin.line);
  table.rename(e.exercise);
  const auto it = known.find(e.exercise);
  const bool hold = it != known.end() && it->second.hold;
  e.working_sets = table.whole("working_sets", 1, most_sets);
  e.reps = table.span("reps", 1, hold ? most_hold_s : most_repetitions);
  e.rir = table.span("rir", 0, most_rir);
  e.rest_s = table.whole("rest_s", 0, most_rest_s);
  if (table.has("tempo_s")) e.tempo_ms = tempo_of(document, table);
  e.warm_up_sets = table.whole("warm_up_sets", 0, most_sets, 0);
  e.practice = table.truth("practice", false);
  if (table.has("circuit")) e.circuit = table.shown_text("circuit", 80);
  return e;
}

/// The tables of [[key]]; an error where it is no such list.
std::vector<const toml::table*> tables_under(const TomlDocument& document, const toml::table& parent,
                                             std::string_view key, const std::string& right) {
  std::vector<const toml::table*> tables;
  const toml::node* n = parent.get(key);
  if (!n) return tables;
  const auto* list = n->as_array();
  if (!list) document.fail(n->source(), std::string(key) + " is no list of tables", right);
  for (const toml::node& entry : *list) {
    if (!entry.is_table())
      document.fail(entry.source(), "an entry of " + std::string(key) + " is no table", right);
    tables.push_back(entry.as_table());
  }
  return tables;
}

PlannedDay read_day(const TomlDocument& document, const toml::table& entry, const ExerciseTable& known) {
  TomlTable table(document, entry, "a [[day]]", day_keys);
  PlannedDay day;
  day.name = table.shown_text("name", 80);
  day.line = table.line();
  table.rename("day " + day.name);
  if (table.has("length_min")) day.length_s = 60 * table.whole("length_min", 1, most_minutes);
  const std::string right = "write [[day.exercise]], once for each exercise of the day";
  for (const toml::table* e : tables_under(document, entry, "exercise", right))
    day.exercises.push_back(read_exercise(document, *e, known));
  if (day.exercises.empty())
    document.fail(entry.source(), table.name() + " has no exercises", right + ", or leave the day out");
  return day;
}

Programme read_document(std::string_view toml, const std::string& file, const ExerciseTable& known) {
  const TomlDocument document(toml, file, "programme file");
  const TomlTable root(document, document.root(), "a programme file", document_keys);
  const toml::source_region top{{1, 1}, {1, 1}, nullptr};
  if (!root.has("programme"))
    document.fail(top, "the file has no [programme]", "begin with [programme] and its name, level and weeks");
  const TomlTable head(document, root.inner("programme"), "[programme]", programme_keys);
  Programme p;
  p.name = head.shown_text("name", 120);
  p.line = head.line();
  p.level = *level_from(head.known_id(head.need("level"), "level", words_of<Level>("level", level_count)));
  p.weeks = head.whole("weeks", 1, most_weeks);
  for (const std::string& id : head.known_ids("leave_out", words_of<Group>("muscle group", group_count)))
    p.leave_out.insert(*group_from(id));
  for (const toml::table* day :
       tables_under(document, document.root(), "day", "write [[day]], once for each day"))
    p.days.push_back(read_day(document, *day, known));
  if (p.days.empty())
    document.fail(top, "the programme has no days", "add a [[day]] with its name and exercises");
  return p;
}

}  // namespace

OrFileError<Programme> parse_programme(std::string_view toml, const std::string& file,
                                       const ExerciseTable& known) {
  return or_stopped([&] { return read_document(toml, file, known); });
}

OrFileError<Programme> read_programme(const std::string& path, const ExerciseTable& known) {
  return parse_file(path, "programme file (*.programme.toml)",
                    [&](const std::string& text) { return parse_programme(text, path, known); });
}

}  // namespace floorwheel::files
