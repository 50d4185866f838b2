// SPDX-License-Identifier: GPL-3.0-or-later
// Pieces of JSON text that is laid out by hand, so that people can read and compare it; strings go through
// the JSON library.
#pragma once

#include <string>
#include <string_view>

namespace floorwheel::files {

/// With its quotes, what needs it escaped.
std::string in_quotes(std::string_view text);
/// `null` for an empty text.
std::string in_quotes_or_null(std::string_view text);
std::string_view truth(bool);

/// "[a, b]" of what `each` makes of the items.
template <class Range, class Each>
std::string list(const Range& items, Each each, std::string_view separator = ", ") {
  std::string out = "[";
  bool first = true;
  for (const auto& item : items) {
    if (!first) out += separator;
    first = false;
    out += each(item);
  }
  return out + "]";
}

}  // namespace floorwheel::files
