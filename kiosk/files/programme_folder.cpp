// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/programme_folder.h"

#include <algorithm>
#include <filesystem>

#include "kiosk/files/text_file.h"

namespace floorwheel::files {
namespace fs = std::filesystem;
namespace {

constexpr std::string_view ending = ".programme.toml";
constexpr std::size_t longest_name = 64;
constexpr std::size_t most_bytes = 1 << 20;  // a programme takes a few thousand

bool is_plain(char c) {
  const auto u = static_cast<unsigned char>(c);
  return (u >= '0' && u <= '9') || ((u | 0x20) >= 'a' && (u | 0x20) <= 'z');
}
bool joins(char c) { return c == '-' || c == '_' || c == ' ' || c == '.'; }

}  // namespace

bool is_programme_name(std::string_view name) {
  if (name.empty() || name.size() > longest_name || !is_plain(name.front()) || !is_plain(name.back()))
    return false;
  for (std::size_t i = 0; i < name.size(); ++i) {
    if (!is_plain(name[i]) && !joins(name[i])) return false;
    if ((name[i] == '.' || name[i] == ' ') && !is_plain(name[i + 1])) return false;
  }
  return true;
}

std::vector<std::string> programme_names(const std::string& folder) {
  std::vector<std::string> out;
  std::error_code error;
  for (auto entry = fs::directory_iterator(folder, error); !error && entry != fs::directory_iterator();
       entry.increment(error)) {
    const std::string file = entry->path().filename().string();
    std::error_code unknown;
    if (!file.ends_with(ending) || !entry->is_regular_file(unknown)) continue;
    std::string name = file.substr(0, file.size() - ending.size());
    if (is_programme_name(name)) out.push_back(std::move(name));
  }
  std::ranges::sort(out);
  return out;
}

OrFileError<Programme> read_programme_in(const std::string& folder, const std::string& name,
                                         const ExerciseTable& table) {
  const std::string file = name + std::string(ending);
  auto text = read_text(folder + "/" + file, "programme file");
  if (auto* error = std::get_if<FileError>(&text)) {
    error->file = file;
    return std::move(*error);
  }
  if (std::get<std::string>(text).size() > most_bytes)
    return FileError{file, 0, 0, "", "is larger than 1 MB", "give a programme file; it takes a few kB"};
  return parse_programme(std::get<std::string>(text), file, table);
}

}  // namespace floorwheel::files
