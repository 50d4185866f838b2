// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/csv_table.h"

#include <algorithm>

#include "kiosk/files/nearest.h"

namespace floorwheel::files {
namespace {

constexpr std::size_t nowhere_yet = static_cast<std::size_t>(-1);

std::string header_line(std::span<const std::string_view> columns) {
  std::string all;
  for (std::string_view c : columns) all += (all.empty() ? "" : ",") + std::string(c);
  return all;
}

/// Where each column stands, by the header.
std::vector<std::size_t> places_of(const CsvRow& header, const std::string& file,
                                   std::span<const std::string_view> columns, std::string_view kind) {
  std::vector<std::size_t> places(columns.size(), nowhere_yet);
  const auto fail = [&](const CsvField& f, const std::string& what, const std::string& right) {
    throw CsvStop{{file, f.line, f.column, "", what, right}};
  };
  for (std::size_t i = 0; i < header.fields.size(); ++i) {
    const CsvField& f = header.fields[i];
    const auto it = std::ranges::find(columns, f.text);
    if (it == columns.end())
      fail(f, "\"" + f.text + "\" is no column of " + std::string(kind),
           did_you_mean(f.text, std::vector<std::string>(columns.begin(), columns.end())));
    std::size_t& place = places[static_cast<std::size_t>(it - columns.begin())];
    if (place != nowhere_yet)
      fail(f, "the column " + f.text + " stands there twice", "leave one of them out");
    place = i;
  }
  for (std::size_t c = 0; c < columns.size(); ++c)
    if (places[c] == nowhere_yet)
      fail(header.fields.front(), "there is no column " + std::string(columns[c]),
           "begin with the line " + header_line(columns));
  return places;
}

}  // namespace

void CsvLine::fail(std::size_t column, const std::string& what, const std::string& right) const {
  const CsvField& f = row_.fields[places_[column]];
  throw CsvStop{{file_, f.line, f.column, "", std::string(columns_[column]) + ": " + what, right}};
}

void CsvLine::wrong(std::size_t column, const std::string& what, const std::string& right) const {
  fail(column, text(column).empty() ? "nothing stands there" : "\"" + text(column) + "\" " + what, right);
}

int CsvLine::whole(std::size_t column, int low, int high) const {
  const std::string& t = text(column);
  const std::string right =
      "write a whole number from " + std::to_string(low) + " to " + std::to_string(high);
  if (t.empty() || t.find_first_not_of("0123456789") != std::string::npos)
    wrong(column, t.starts_with('-') ? "is negative" : "is no whole number", right);
  // Nine digits fit; more can only be too many.
  const int n = t.size() > 9 ? high + 1 : std::stoi(t);
  if (n < low || n > high) wrong(column, n < low ? "is too few" : "is too many", right);
  return n;
}

CsvTable csv_table(std::string_view csv, const std::string& file, std::span<const std::string_view> columns,
                   std::string_view kind) {
  auto parsed = parse_csv(csv, file);
  if (auto* error = std::get_if<FileError>(&parsed)) throw CsvStop{std::move(*error)};
  CsvTable table{std::get<std::vector<CsvRow>>(std::move(parsed)), {}};
  if (table.rows.empty())
    throw CsvStop{{file, 1, 1, "", "the file is empty", "begin with the line " + header_line(columns)}};
  table.places = places_of(table.rows.front(), file, columns, kind);
  table.rows.erase(table.rows.begin());
  for (const CsvRow& row : table.rows)
    if (row.fields.size() != columns.size())
      throw CsvStop{{file, row.line, 1, "", "the line has " + std::to_string(row.fields.size()) + " fields",
                     "write " + std::to_string(columns.size()) +
                         ", one for each column; a number takes a point, not a comma"}};
  return table;
}

}  // namespace floorwheel::files
