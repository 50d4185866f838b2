// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/file_error.h"

namespace floorwheel::files {

std::string text_of(const FileError& e) {
  std::string text = e.file;
  if (e.line > 0) text += ":" + std::to_string(e.line) + ":" + std::to_string(e.column);
  // A JSON Pointer takes the place of line and column; the pointer of the whole document is empty.
  if (!e.pointer.empty()) text += ":" + e.pointer;
  text += ": " + e.what;
  if (!e.right.empty()) text += "; " + e.right;
  return text;
}

}  // namespace floorwheel::files
