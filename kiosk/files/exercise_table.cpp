// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/exercise_table.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <optional>
#include <set>
#include <span>

#include "kiosk/files/csv.h"
#include "kiosk/files/decimal.h"
#include "kiosk/files/ids.h"
#include "kiosk/files/nearest.h"

namespace floorwheel::files {
extern const std::string_view shipped_exercises_csv;  // made from config/exercises.csv by CMake

namespace {

enum Column {
  id,
  name,
  primary,
  assisting,
  features,
  kind,
  loads_kg,
  reps,
  rir,
  hold,
  substitutes,
  equipment,
  per_side,
  how,
  caution,  // may be left out
  count
};
constexpr std::size_t needed = equipment;
constexpr std::array<std::string_view, count> columns = {
    "id",  "name", "primary",     "assisting", "features", "kind", "loads_kg", "reps",
    "rir", "hold", "substitutes", "equipment", "per_side", "how",  "caution"};
constexpr std::size_t left_out = static_cast<std::size_t>(-1);

struct Failure {
  FileError error;
};

/// One line of the table with the place of each column in it.
class Line {
 public:
  Line(const CsvRow& row, const std::array<std::size_t, count>& places, const std::string& file)
      : row_(row), places_(places), file_(file) {}

  [[nodiscard]] const CsvField& field(Column c) const {
    static const CsvField none;
    return places_[c] == left_out ? none : row_.fields[places_[c]];
  }
  [[nodiscard]] const std::string& text(Column c) const { return field(c).text; }

  [[noreturn]] void fail(Column c, const std::string& what, const std::string& right) const {
    const CsvField& f = field(c);
    throw Failure{{file_, f.line, f.column, "", std::string(columns[c]) + ": " + what, right}};
  }

  /// The entries of a list, separated by ';'.
  [[nodiscard]] std::vector<std::string> list(Column c) const {
    std::vector<std::string> entries;
    const std::string& all = text(c);
    if (all.empty()) return entries;
    for (std::size_t from = 0; from <= all.size();) {
      const std::size_t end = std::min(all.find(';', from), all.size());
      entries.push_back(all.substr(from, end - from));
      if (entries.back().empty()) fail(c, "the list has an empty entry", "put one ; between two entries");
      from = end + 1;
    }
    return entries;
  }

  template <class Set, class From>
  [[nodiscard]] Set words(Column c, From from, const std::vector<std::string>& known) const {
    Set set;
    for (const std::string& word : list(c)) {
      const auto value = from(word);
      if (!value) fail(c, "\"" + word + "\" is not known", did_you_mean(word, known));
      set.insert(*value);
    }
    return set;
  }

  [[nodiscard]] bool truth(Column c) const {
    const std::string& word = text(c);
    if (word != "true" && word != "false" && !word.empty())
      fail(c, "\"" + word + "\" is neither", "write true or false");
    return word == "true";
  }

  /// A line that a person reads, or nothing.
  [[nodiscard]] std::string sentence(Column c) const {
    if (text(c).empty()) return {};
    if (const Spelling s = spelling_of_text(text(c), 200); !s.holds()) fail(c, s.what, s.right);
    return text(c);
  }

  [[nodiscard]] std::array<int, 2> span(Column c, int low, int high) const {
    const std::vector<std::string> ends = list(c);
    std::array<int, 2> numbers{};
    bool good = ends.size() == 2;
    for (std::size_t i = 0; good && i < 2; ++i) {
      const bool digits = ends[i].find_first_not_of("0123456789") == std::string::npos;
      const auto n = digits ? scaled_decimal(ends[i], 0) : std::nullopt;
      good = n && *n >= low && *n <= high;
      if (good) numbers[i] = static_cast<int>(*n);
    }
    if (!good || numbers[1] < numbers[0]) fail(c, "\"" + text(c) + "\" is no range", "write 8;12");
    return numbers;
  }

 private:
  const CsvRow& row_;
  const std::array<std::size_t, count>& places_;
  const std::string& file_;
};

template <class E>
std::vector<std::string> ids_of(int number) {
  std::vector<std::string> ids;
  for (int i = 0; i < number; ++i) ids.emplace_back(id_of(static_cast<E>(i)));
  return ids;
}

std::vector<int> loads(const Line& line) {
  std::vector<int> hg;
  for (const std::string& entry : line.list(loads_kg)) {
    const auto value = scaled_decimal(entry, 1);
    if (!value || entry.front() == '-' || *value > 10'000)
      line.fail(loads_kg, "\"" + entry + "\" is no load", "write kilograms from 0 to 1000, such as 12.5");
    hg.push_back(static_cast<int>(*value));
  }
  std::sort(hg.begin(), hg.end());
  hg.erase(std::unique(hg.begin(), hg.end()), hg.end());
  return hg;
}

Exercise exercise_of(const Line& line) {
  static const std::vector<std::string> groups = ids_of<Group>(group_count);
  static const std::vector<std::string> all_features = ids_of<Feature>(feature_count);
  Exercise e;
  e.id = line.text(id);
  if (const Spelling s = spelling_of(IdKind::exercise, e.id); !s.holds()) line.fail(id, s.what, s.right);
  e.name = line.text(name);
  if (const Spelling s = spelling_of_text(e.name, 80); !s.holds()) line.fail(name, s.what, s.right);
  e.primary = line.words<GroupSet>(primary, group_from, groups);
  if (e.primary.empty()) line.fail(primary, "no muscle group", "name at least one, such as chest");
  e.assisting = line.words<GroupSet>(assisting, group_from, groups);
  e.features = line.words<FeatureSet>(features, feature_from, all_features);
  const auto known_kind = exercise_kind_from(line.text(kind));
  if (!known_kind) line.fail(kind, "\"" + line.text(kind) + "\" is not known", "write compound or isolation");
  e.kind = *known_kind;
  e.loads_hg = loads(line);
  if (!line.text(reps).empty()) e.reps = line.span(reps, 1, 1000);
  if (!line.text(rir).empty()) e.rir = line.span(rir, 0, 10);
  e.hold = line.truth(hold);
  e.substitutes = line.list(substitutes);
  e.equipment = line.list(equipment);
  for (const std::string& item : e.equipment)
    if (const Spelling s = spelling_of(IdKind::equipment, item); !s.holds())
      line.fail(equipment, s.what, s.right);
  e.per_side = line.truth(per_side);
  e.how = line.sentence(how);
  e.caution = line.sentence(caution);
  return e;
}

/// Where each column stands, by the header.
std::array<std::size_t, count> places_of(const CsvRow& header, const std::string& file) {
  std::array<std::size_t, count> places{};
  std::vector<std::string> written;
  for (const CsvField& f : header.fields) written.push_back(f.text);
  for (std::size_t c = 0; c < count; ++c) {
    const auto it = std::find(written.begin(), written.end(), columns[c]);
    places[c] = static_cast<std::size_t>(it - written.begin());
    if (it != written.end()) continue;
    if (c >= needed) {
      places[c] = left_out;
      continue;
    }
    std::string all;
    for (std::string_view k : std::span(columns).first(needed))
      all += (all.empty() ? "" : ",") + std::string(k);
    throw Failure{{file, header.line, 1, "", "the table has no column " + std::string(columns[c]),
                   "the first line names at least " + all}};
  }
  return places;
}

ExerciseTable table_of(const std::vector<CsvRow>& rows, const std::string& file) {
  if (rows.empty())
    throw Failure{{file, 1, 1, "", "the table is empty", "begin with a line of column names"}};
  const auto places = places_of(rows.front(), file);
  ExerciseTable table;
  std::vector<std::string> ids;
  for (auto row = rows.begin() + 1; row != rows.end(); ++row) {
    if (row->fields.size() != rows.front().fields.size())
      throw Failure{{file, row->line, 1, "", "the line has " + std::to_string(row->fields.size()) + " fields",
                     "write " + std::to_string(rows.front().fields.size()) + ", as many as the first line"}};
    const Line line(*row, places, file);
    Exercise e = exercise_of(line);
    ids.push_back(e.id);
    if (!table.emplace(e.id, e).second) line.fail(id, e.id + " stands there twice", "leave one of them out");
  }
  for (auto row = rows.begin() + 1; row != rows.end(); ++row) {
    const Line line(*row, places, file);
    for (const std::string& s : line.list(substitutes))
      if (!table.contains(s)) line.fail(substitutes, "there is no exercise " + s, did_you_mean(s, ids));
  }
  if (table.empty())
    throw Failure{{file, 1, 1, "", "the table has no exercises", "write one a line after the column names"}};
  return table;
}

}  // namespace

OrFileError<ExerciseTable> parse_exercises(std::string_view csv, const std::string& file) {
  auto rows = parse_csv(csv, file);
  if (auto* error = std::get_if<FileError>(&rows)) return std::move(*error);
  try {
    return table_of(std::get<std::vector<CsvRow>>(rows), file);
  } catch (const Failure& failure) {
    return failure.error;
  }
}

const ExerciseTable& shipped_exercises() {
  static const ExerciseTable table = [] {
    auto parsed = parse_exercises(shipped_exercises_csv, "config/exercises.csv");
    if (const auto* error = std::get_if<FileError>(&parsed)) {
      std::fprintf(stderr, "%s\n", text_of(*error).c_str());
      std::abort();  // the table inside the program is ours; a test reads it
    }
    return std::get<ExerciseTable>(std::move(parsed));
  }();
  return table;
}

}  // namespace floorwheel::files
