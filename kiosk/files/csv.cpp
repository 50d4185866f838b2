// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/csv.h"

#include <csv.h>

#include <memory>

namespace floorwheel::files {
namespace {

/// What the callbacks of the parser fill. Bytes go in one at a time, so that the place is known.
struct Place {
  std::vector<CsvRow> rows;
  CsvRow row;
  int line = 1;
  int column = 0;  // of the byte just given, in characters
  int field_line = 1;
  int field_column = 1;
  bool field_open = false;
};

void end_field(void* text, std::size_t size, void* data) {
  auto& place = *static_cast<Place*>(data);
  if (place.row.fields.empty()) place.row.line = place.field_line;
  place.row.fields.push_back(
      {std::string(static_cast<const char*>(text), size), place.field_column, place.field_line});
  place.field_open = false;
}

void end_row(int, void* data) {
  auto& place = *static_cast<Place*>(data);
  place.rows.push_back(std::move(place.row));
  place.row = {};
}

bool starts_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }

}  // namespace

OrFileError<std::vector<CsvRow>> parse_csv(std::string_view csv, const std::string& file) {
  csv_parser parser{};
  if (csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI) != 0)
    return FileError{file, 0, 0, "", "cannot be parsed", "the CSV library did not start"};
  const std::unique_ptr<csv_parser, void (*)(csv_parser*)> guard(&parser, &csv_free);
  // RFC 4180, section 2, rule 4: spaces are part of a field.
  csv_set_space_func(&parser, [](unsigned char) { return 0; });

  if (csv.starts_with("\xEF\xBB\xBF")) csv.remove_prefix(3);
  Place place;
  for (char c : csv) {
    if (starts_character(c)) ++place.column;
    if (!place.field_open && c != '\r' && c != '\n') {
      place.field_open = true;
      place.field_line = place.line;
      place.field_column = place.column;
    }
    if (csv_parse(&parser, &c, 1, end_field, end_row, &place) != 1)
      return FileError{file,
                       place.line,
                       place.column,
                       "",
                       "a quote stands where none can",
                       "put the whole field in quotes and double each quote inside it (RFC 4180)"};
    if (c == '\n') {
      ++place.line;
      place.column = 0;
    }
  }
  if (csv_fini(&parser, end_field, end_row, &place) != 0)
    return FileError{file,
                     place.field_line,
                     place.field_column,
                     "",
                     "a quoted field does not end",
                     "close it with a quote"};
  return std::move(place.rows);
}

std::string csv_line(const std::vector<std::string>& fields) {
  std::string line;
  for (const std::string& f : fields) {
    if (!line.empty() || &f != &fields.front()) line += ',';
    const bool quote = f.find_first_of(",\"\r\n") != std::string::npos;
    if (!quote) {
      line += f;
      continue;
    }
    line += '"';
    for (char c : f) {
      if (c == '"') line += '"';
      line += c;
    }
    line += '"';
  }
  return line + "\r\n";
}

}  // namespace floorwheel::files
