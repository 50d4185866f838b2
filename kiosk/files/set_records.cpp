// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/set_records.h"

#include <array>

#include "kiosk/files/csv_table.h"
#include "kiosk/files/ids.h"
#include "kiosk/files/nearest.h"
#include "kiosk/files/rfc3339.h"
#include "kiosk/files/typed_mass.h"

namespace floorwheel::files {
namespace {

using training::SetKind;
using training::SetRecord;

enum Column { member, exercise, performed_at, kind, load_kg, reps, rir, note, count };
constexpr std::array<std::string_view, count> columns = {"member",  "exercise", "performed_at", "kind",
                                                         "load_kg", "reps",     "rir",          "note"};

std::vector<std::string> ids_of(const ExerciseTable& table) {
  std::vector<std::string> ids;
  for (const auto& [id, e] : table) ids.push_back(id);
  return ids;
}

SetKind kind_of(const CsvLine& line) {
  const std::string& word = line.text(kind);
  if (word == "working") return SetKind::working;
  if (word == "warm_up") return SetKind::warm_up;
  if (word == "practice") return SetKind::practice;
  line.wrong(kind, "is not known", did_you_mean(word, {"working", "warm_up", "practice"}));
}

SetRecord record_of(const CsvLine& line, const ExerciseTable& table) {
  SetRecord r;
  r.member = line.text(member);
  if (const Spelling s = spelling_of_text(r.member, 80); !s.holds()) line.fail(member, s.what, s.right);
  r.exercise = line.text(exercise);
  const auto e = table.find(r.exercise);
  if (e == table.end())
    line.wrong(exercise, "is no exercise of the table", did_you_mean(r.exercise, ids_of(table)));
  const auto moment = moment_from(line.text(performed_at));
  if (!moment)
    line.wrong(performed_at, "is no moment", "write date, time and offset as in 2026-03-05T18:30:00+01:00");
  r.day = moment->day;
  r.instant_us = moment->instant_us;
  r.kind = kind_of(line);
  if (!line.text(load_kg).empty()) {
    const auto mass = typed_kg(line.text(load_kg));
    if (const auto* no = std::get_if<NoMass>(&mass)) line.fail(load_kg, no->what, no->right);
    r.load = std::get<training::Weight>(mass).mass;
  }
  r.reps = line.whole(reps, 1, e->second.hold ? training::longest_hold_s : training::most_reps);
  if (!line.text(rir).empty()) r.rir = line.whole(rir, 0, training::most_reserve);
  r.pain = line.text(note) == "pain";
  if (!r.pain && !line.text(note).empty()) line.wrong(note, "is not known", "write pain or nothing");
  return r;
}

}  // namespace

OrFileError<std::vector<SetRecord>> parse_sets(std::string_view csv, const std::string& file,
                                               const ExerciseTable& table) {
  try {
    std::vector<SetRecord> records;
    each_line(csv, file, columns, "set records",
              [&](const CsvLine& line) { records.push_back(record_of(line, table)); });
    return records;
  } catch (const CsvStop& stop) {
    return stop.error;
  }
}

}  // namespace floorwheel::files
