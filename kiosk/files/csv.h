// SPDX-License-Identifier: GPL-3.0-or-later
// CSV as RFC 4180 has it: quoted fields with "" for a quote, line ends inside quotes, spaces kept. Reading is
// libcsv in strict mode; here only line and column are added.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "kiosk/files/file_error.h"

namespace floorwheel::files {

struct CsvField {
  std::string text;
  int column = 1;  // in characters, where the field starts
  int line = 1;
};
struct CsvRow {
  std::vector<CsvField> fields;
  int line = 1;
};

/// All rows in order, empty lines left out.
OrFileError<std::vector<CsvRow>> parse_csv(std::string_view csv, const std::string& file);

/// One line with CRLF; a field is quoted where it has to be.
std::string csv_line(const std::vector<std::string>& fields);

}  // namespace floorwheel::files
