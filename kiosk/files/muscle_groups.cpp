// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/muscle_groups.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>

#include "kiosk/files/csv.h"

namespace floorwheel::files {
extern const std::string_view shipped_muscle_groups_csv;  // made from config/muscle_groups.csv by CMake

namespace {

std::vector<std::string> parts(const std::string& list) {
  std::vector<std::string> out;
  for (std::size_t from = 0; from < list.size();) {
    const std::size_t end = std::min(list.find(';', from), list.size());
    out.push_back(list.substr(from, end - from));
    from = end + 1;
  }
  return out;
}

}  // namespace

OrFileError<MuscleGroups> parse_muscle_groups(std::string_view csv, const std::string& file) {
  auto read = parse_csv(csv, file);
  if (auto* error = std::get_if<FileError>(&read)) return std::move(*error);
  const auto& rows = std::get<std::vector<CsvRow>>(read);
  MuscleGroups groups;
  for (std::size_t i = 1; i < rows.size(); ++i) {
    const CsvRow& row = rows[i];
    if (row.fields.size() < 3)
      return FileError{file, row.line, 1, "", "the line is too short", "write id,word,members,latin,source"};
    const auto group = group_from(row.fields[0].text);
    if (!group)
      return FileError{file,
                       row.line,
                       1,
                       "",
                       "there is no muscle group " + row.fields[0].text,
                       "write an id of the vocabulary, such as chest"};
    MuscleGroup& g = groups[static_cast<std::size_t>(*group)];
    if (!g.word.empty())
      return FileError{file, row.line, 1, "", row.fields[0].text + " stands there twice", "leave one out"};
    g.word = row.fields[1].text;
    g.members = parts(row.fields[2].text);
  }
  for (int i = 0; i < group_count; ++i)
    if (const MuscleGroup& g = groups[static_cast<std::size_t>(i)]; g.word.empty() || g.members.empty())
      return FileError{file,
                       1,
                       1,
                       "",
                       std::string(id_of(static_cast<Group>(i))) + " has no word or no members",
                       "write one line for each group"};
  return groups;
}

const MuscleGroups& muscle_groups() {
  static const MuscleGroups groups = [] {
    auto parsed = parse_muscle_groups(shipped_muscle_groups_csv, "config/muscle_groups.csv");
    if (const auto* error = std::get_if<FileError>(&parsed)) {
      std::fprintf(stderr, "%s\n", text_of(*error).c_str());
      std::abort();  // the table inside the program is ours; a test reads it
    }
    return std::get<MuscleGroups>(std::move(parsed));
  }();
  return groups;
}

}  // namespace floorwheel::files
