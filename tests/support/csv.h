// SPDX-License-Identifier: GPL-3.0-or-later
// Reads the tables of tests/reference and config: RFC 4180 with a header row, quotes included. Apart from the
// program's own reader, so that a test of the shipped table does not lean on it.
#pragma once

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace floorwheel::csv {

using Record = std::map<std::string, std::string>;

/// Rows by column name. `file` is relative to the source tree.
inline std::vector<Record> read(const std::string& file) {
  const char* source = std::getenv("FLOORWHEEL_SOURCE");
  std::ifstream in(std::string(source != nullptr ? source : ".") + "/" + file, std::ios::binary);
  if (!in) throw std::runtime_error("cannot read " + file + "; set FLOORWHEEL_SOURCE to the source tree");
  const std::string text{std::istreambuf_iterator<char>(in), {}};

  std::vector<std::vector<std::string>> rows(1, std::vector<std::string>(1));
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    std::string& cell = rows.back().back();
    if (c == '"') {
      if (quoted && i + 1 < text.size() && text[i + 1] == '"')
        cell += text[++i];
      else
        quoted = !quoted;
    } else if (quoted || (c != ',' && c != '\n' && c != '\r')) {
      cell += c;
    } else if (c == ',') {
      rows.back().emplace_back();
    } else if (c == '\n') {
      rows.emplace_back(1);
    }
  }
  if (rows.back().size() == 1 && rows.back()[0].empty()) rows.pop_back();

  std::vector<Record> records;
  for (std::size_t r = 1; r < rows.size(); ++r) {
    if (rows[r].size() != rows[0].size())
      throw std::runtime_error(file + ":" + std::to_string(r + 1) +
                               ": another number of cells than the header");
    records.emplace_back();
    for (std::size_t c = 0; c < rows[r].size(); ++c) records.back()[rows[0][c]] = rows[r][c];
  }
  return records;
}

/// The parts of a list such as "chest;triceps"; none for "".
inline std::vector<std::string> split(const std::string& list, char by) {
  std::vector<std::string> out;
  std::istringstream in(list);
  for (std::string part; std::getline(in, part, by);) out.push_back(part);
  return out;
}

}  // namespace floorwheel::csv
