// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/overrides.h"

#include <array>

#include "kiosk/files/csv_table.h"
#include "kiosk/files/ids.h"
#include "kiosk/files/nearest.h"
#include "kiosk/files/typed_mass.h"

namespace floorwheel::files {
namespace {

using training::Change;
using training::Mass;
using training::Override;

enum Column { member, exercise, decided_on, decided_by, load_kg, suggested_kg, suggested_change, count };
constexpr std::array<std::string_view, count> columns = {
    "member", "exercise", "decided_on", "decided_by", "load_kg", "suggested_kg", "suggested_change"};

std::string shown_text(const CsvLine& line, Column c) {
  if (const Spelling s = spelling_of_text(line.text(c), 80); !s.holds()) line.fail(c, s.what, s.right);
  return line.text(c);
}

Mass mass_of(const CsvLine& line, Column c) {
  const auto mass = typed_kg(line.text(c));
  if (const auto* no = std::get_if<NoMass>(&mass)) line.fail(c, no->what, no->right);
  return std::get<training::Weight>(mass).mass;
}

Change change_of(const CsvLine& line) {
  for (Change c : {Change::up, Change::same, Change::down})
    if (id_of(c) == line.text(suggested_change)) return c;
  line.wrong(suggested_change, "is not known", "write up, same or down");
}

Override override_of(const CsvLine& line, const ExerciseTable& table) {
  Override o;
  o.member = shown_text(line, member);
  o.exercise = line.text(exercise);
  if (!table.contains(o.exercise)) {
    std::vector<std::string> known;
    for (const auto& [id, e] : table) known.push_back(id);
    line.wrong(exercise, "is no exercise of the table", did_you_mean(o.exercise, known));
  }
  const auto day = training::day_from(line.text(decided_on));
  if (!day) line.wrong(decided_on, "is no date", "write it as in 2026-03-05");
  o.day = *day;
  o.decided_by = shown_text(line, decided_by);
  o.load = mass_of(line, load_kg);
  o.suggested = mass_of(line, suggested_kg);
  o.suggested_change = change_of(line);
  return o;
}

}  // namespace

OrFileError<std::vector<Override>> parse_overrides(std::string_view csv, const std::string& file,
                                                   const ExerciseTable& table) {
  try {
    std::vector<Override> overrides;
    each_line(csv, file, columns, "overrides",
              [&](const CsvLine& line) { overrides.push_back(override_of(line, table)); });
    return overrides;
  } catch (const CsvStop& stop) {
    return stop.error;
  }
}

}  // namespace floorwheel::files
