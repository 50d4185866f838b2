// SPDX-License-Identifier: GPL-3.0-or-later
// CSV with named columns in any order: every column there once and no other, as many fields in each row. What
// is wrong is thrown as `CsvStop` with its place and caught by the public functions of kiosk/files.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "kiosk/files/csv.h"

namespace floorwheel::files {

struct CsvStop {
  FileError error;
};

/// One row; columns are numbered as in the list given to `csv_table`.
class CsvLine {
 public:
  CsvLine(const CsvRow& row, const std::vector<std::size_t>& places,
          std::span<const std::string_view> columns, const std::string& file)
      : row_(row), places_(places), columns_(columns), file_(file) {}

  [[nodiscard]] const std::string& text(std::size_t column) const {
    return row_.fields[places_[column]].text;
  }
  /// `column: what; right`.
  [[noreturn]] void fail(std::size_t column, const std::string& what, const std::string& right) const;
  /// `column: "the text" what; right`.
  [[noreturn]] void wrong(std::size_t column, const std::string& what, const std::string& right) const;
  [[nodiscard]] int whole(std::size_t column, int low, int high) const;

 private:
  const CsvRow& row_;
  const std::vector<std::size_t>& places_;
  std::span<const std::string_view> columns_;
  const std::string& file_;
};

/// The rows and where each column stands in them.
struct CsvTable {
  std::vector<CsvRow> rows;  // without the header
  std::vector<std::size_t> places;
};
CsvTable csv_table(std::string_view csv, const std::string& file, std::span<const std::string_view> columns,
                   std::string_view kind);

/// Calls `each` with every row after the header. `kind` names the table for messages: "set records".
template <class Each>
void each_line(std::string_view csv, const std::string& file, std::span<const std::string_view> columns,
               std::string_view kind, Each each) {
  const CsvTable table = csv_table(csv, file, columns, kind);
  for (const CsvRow& row : table.rows) each(CsvLine(row, table.places, columns, file));
}

}  // namespace floorwheel::files
