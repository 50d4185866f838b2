// SPDX-License-Identifier: GPL-3.0-or-later
// How ids and texts about people may be spelled in files.
#pragma once

#include <string>
#include <string_view>

namespace floorwheel::files {

enum class IdKind { exercise, station, member, equipment };

/// Why `id` is no id of this kind and what would be right, or two empty texts. Exercises and stations: lower
/// case words of letters a-z and figures, joined by '-'; a station may be one capital other than I, O, Q, W.
/// Members and equipment may join words by '_' as well.
struct Spelling {
  std::string what;
  std::string right;
  [[nodiscard]] bool holds() const { return what.empty(); }
};
Spelling spelling_of(IdKind, std::string_view id);

/// The same for a text that a person reads on a screen: not empty, not too long, on one line, no control or
/// direction characters.
Spelling spelling_of_text(std::string_view text, std::size_t most_characters);

}  // namespace floorwheel::files
