// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/class_file.h"

#include "kiosk/files/class_parts.h"
#include "kiosk/files/text_file.h"

namespace floorwheel::files {
namespace {

constexpr std::array<Key, 7> document_keys{{
    {"class", "[class]"},
    {"break", "[[break]]"},
    {"equipment", "[[equipment]]"},
    {"station", "[[station]]"},
    {"member", "[[member]]"},
    {"pair", "[[pair]]"},
    {"exercise", "[[exercise]]"},
}};

ClassSpec read_document(std::string_view toml, const std::string& file, const ExerciseTable& table) {
  const TomlDocument document(toml, file, "class file");
  const TomlTable root(document, document.root(), "a class file", document_keys);
  ClassParts parts{document, {}};
  parts.spec.exercises = table;
  for (const auto& [id, exercise] : table) parts.exercises.add(id);
  read_head(parts);
  read_exercises(parts);
  read_stations(parts);
  read_members(parts);
  return std::move(parts.spec);
}

}  // namespace

std::vector<const toml::table*> tables_of(const ClassParts& parts, std::string_view key) {
  std::vector<const toml::table*> tables;
  const toml::node* n = parts.document.root().get(key);
  if (!n) return tables;
  const std::string right = "write [[" + std::string(key) + "]], once for each";
  const auto* list = n->as_array();
  if (!list) parts.document.fail(n->source(), std::string(key) + " is no list of tables", right);
  for (const toml::node& entry : *list) {
    if (!entry.is_table())
      parts.document.fail(entry.source(), "an entry of " + std::string(key) + " is no table", right);
    tables.push_back(entry.as_table());
  }
  return tables;
}

OrFileError<ClassSpec> parse_class(std::string_view toml, const std::string& file,
                                   const ExerciseTable& exercises) {
  return or_stopped([&] { return read_document(toml, file, exercises); });
}

OrFileError<ClassSpec> read_class(const std::string& path, const ExerciseTable& exercises) {
  return parse_file(path, "class file (*.class.toml)",
                    [&](const std::string& text) { return parse_class(text, path, exercises); });
}

}  // namespace floorwheel::files
