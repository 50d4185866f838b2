// SPDX-License-Identifier: GPL-3.0-or-later
// A file that cannot be read: where, what is wrong and what would be right. Exit code 2 of the command line.
#pragma once

#include <string>
#include <variant>

namespace floorwheel::files {

struct FileError {
  std::string file;
  int line = 0;  // 0: not known
  int column = 0;
  std::string pointer;  // JSON Pointer (RFC 6901), in place of line and column
  std::string what;
  std::string right;
};

/// `file:line:column: what is wrong; what would be right`.
std::string text_of(const FileError&);

template <class T>
using OrFileError = std::variant<T, FileError>;

}  // namespace floorwheel::files
