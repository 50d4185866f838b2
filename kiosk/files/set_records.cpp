// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/set_records.h"

#include <algorithm>
#include <array>

#include "kiosk/files/csv.h"
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
using Places = std::array<std::size_t, count>;

struct Failure {
  FileError error;
};

class Line {
 public:
  Line(const CsvRow& row, const Places& places, const std::string& file)
      : row_(row), places_(places), file_(file) {}

  [[nodiscard]] const std::string& text(Column c) const { return row_.fields[places_[c]].text; }
  [[noreturn]] void fail(Column c, const std::string& what, const std::string& right) const {
    const CsvField& f = row_.fields[places_[c]];
    throw Failure{{file_, f.line, f.column, "", std::string(columns[c]) + ": " + what, right}};
  }
  [[noreturn]] void wrong(Column c, const std::string& what, const std::string& right) const {
    fail(c, text(c).empty() ? "nothing stands there" : "\"" + text(c) + "\" " + what, right);
  }
  [[nodiscard]] int whole(Column c, int low, int high) const {
    const std::string& t = text(c);
    const std::string right =
        "write a whole number from " + std::to_string(low) + " to " + std::to_string(high);
    if (t.empty() || t.find_first_not_of("0123456789") != std::string::npos)
      wrong(c, t.starts_with('-') ? "is negative" : "is no whole number", right);
    // Nine digits fit; more can only be too many.
    const int n = t.size() > 9 ? high + 1 : std::stoi(t);
    if (n < low || n > high) wrong(c, n < low ? "is too few" : "is too many", right);
    return n;
  }

 private:
  const CsvRow& row_;
  const Places& places_;
  const std::string& file_;
};

std::vector<std::string> ids_of(const ExerciseTable& table) {
  std::vector<std::string> ids;
  for (const auto& [id, e] : table) ids.push_back(id);
  return ids;
}

SetKind kind_of(const Line& line) {
  const std::string& word = line.text(kind);
  if (word == "working") return SetKind::working;
  if (word == "warm_up") return SetKind::warm_up;
  if (word == "practice") return SetKind::practice;
  line.wrong(kind, "is not known", did_you_mean(word, {"working", "warm_up", "practice"}));
}

SetRecord record_of(const Line& line, const ExerciseTable& table) {
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

std::string header_line() {
  std::string all;
  for (std::string_view c : columns) all += (all.empty() ? "" : ",") + std::string(c);
  return all;
}

/// Where each column stands, by the header.
Places places_of(const CsvRow& header, const std::string& file) {
  const std::string right = "begin with the line " + header_line();
  std::vector<std::string> known(columns.begin(), columns.end());
  Places places{};
  std::array<bool, count> seen{};
  const auto fail = [&](const CsvField& f, const std::string& what, const std::string& hint) {
    throw Failure{{file, f.line, f.column, "", what, hint}};
  };
  for (std::size_t i = 0; i < header.fields.size(); ++i) {
    const CsvField& f = header.fields[i];
    const auto it = std::find(columns.begin(), columns.end(), f.text);
    if (it == columns.end())
      fail(f, "\"" + f.text + "\" is no column of set records", did_you_mean(f.text, known));
    const auto c = static_cast<std::size_t>(it - columns.begin());
    if (seen[c]) fail(f, "the column " + f.text + " stands there twice", "leave one of them out");
    seen[c] = true;
    places[c] = i;
  }
  for (std::size_t c = 0; c < count; ++c)
    if (!seen[c]) fail(header.fields.front(), "there is no column " + std::string(columns[c]), right);
  return places;
}

std::vector<SetRecord> records_of(const std::vector<CsvRow>& rows, const std::string& file,
                                  const ExerciseTable& table) {
  if (rows.empty())
    throw Failure{{file, 1, 1, "", "the file is empty", "begin with the line " + header_line()}};
  const Places places = places_of(rows.front(), file);
  std::vector<SetRecord> records;
  records.reserve(rows.size() - 1);
  for (auto row = rows.begin() + 1; row != rows.end(); ++row) {
    if (row->fields.size() != count)
      throw Failure{{file, row->line, 1, "", "the line has " + std::to_string(row->fields.size()) + " fields",
                     "write " + std::to_string(+count) +
                         ", one for each column; a load takes a point, not a "
                         "comma"}};
    records.push_back(record_of(Line(*row, places, file), table));
  }
  return records;
}

}  // namespace

OrFileError<std::vector<SetRecord>> parse_sets(std::string_view csv, const std::string& file,
                                               const ExerciseTable& table) {
  auto rows = parse_csv(csv, file);
  if (auto* error = std::get_if<FileError>(&rows)) return std::move(*error);
  try {
    return records_of(std::get<std::vector<CsvRow>>(rows), file, table);
  } catch (const Failure& failure) {
    return failure.error;
  }
}

}  // namespace floorwheel::files
