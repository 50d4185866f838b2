// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/ids.h"

namespace floorwheel::files {
namespace {

constexpr std::size_t longest_id = 64;

bool is_word_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); }
bool is_capital(char c) { return c >= 'A' && c <= 'Z'; }

/// The id that was probably meant: lower case, other characters as joints.
std::string mended(std::string_view id, bool joins_with_line) {
  std::string out;
  for (char c : id) {
    if (is_capital(c)) c = static_cast<char>(c - 'A' + 'a');
    if (is_word_letter(c))
      out += c;
    else if (!out.empty() && out.back() != '-' && out.back() != '_')
      out += c == '_' && joins_with_line ? '_' : '-';
  }
  while (!out.empty() && !is_word_letter(out.back())) out.pop_back();
  return out;
}

}  // namespace

Spelling spelling_of(IdKind kind, std::string_view id) {
  const bool joins_with_line = kind == IdKind::member || kind == IdKind::equipment;
  if (kind == IdKind::station && id.size() == 1 && is_capital(id[0])) {
    if (std::string_view("IOQW").find(id[0]) == std::string_view::npos) return {};
    return {"the station id " + std::string(id) + " cannot be a letter on the wall",
            "take another capital: I and O look like figures, Q like O, and W is the waiting place"};
  }
  if (id.empty()) return {"the id is empty", "give it a short one in lower case"};
  if (id.size() > longest_id)
    return {"the id is longer than " + std::to_string(longest_id) + " characters", "give it a shorter one"};

  bool good = is_word_letter(id.front()) && is_word_letter(id.back());
  for (std::size_t i = 0; good && i < id.size(); ++i) {
    const bool joint = id[i] == '-' || (id[i] == '_' && joins_with_line);
    good = is_word_letter(id[i]) || (joint && is_word_letter(id[i - 1]));
  }
  if (good) return {};
  const std::string better = mended(id, joins_with_line);
  return {"the id \"" + std::string(id) + "\" is not spelled as ids are",
          "write lower case letters and figures, words joined by '-'" +
              (better.empty() ? std::string() : ": " + better)};
}

Spelling spelling_of_text(std::string_view text, std::size_t most_characters) {
  std::size_t characters = 0;
  bool visible = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    if ((c & 0xC0U) != 0x80U) ++characters;
    if (c > 0x20 && c != 0x7F) visible = true;
    // U+0080..U+009F are C2 80..C2 9F; U+200E/F, U+2028..202E and U+2066..2069 turn the line about.
    const auto next = [&](std::size_t k) {
      return i + k < text.size() ? static_cast<unsigned char>(text[i + k]) : 0U;
    };
    const bool control = c < 0x20 || c == 0x7F || (c == 0xC2 && next(1) < 0xA0);
    const bool turns =
        c == 0xE2 &&
        ((next(1) == 0x80 && (next(2) == 0x8E || next(2) == 0x8F || (next(2) >= 0xA8 && next(2) <= 0xAE))) ||
         (next(1) == 0x81 && next(2) >= 0xA6 && next(2) <= 0xA9));
    if (control || turns) return {"the text has a control character", "write visible characters on one line"};
  }
  if (!visible) return {"the text is empty", "write what people shall read"};
  if (characters > most_characters)
    return {"the text is longer than " + std::to_string(most_characters) + " characters",
            "write a shorter one, so that it can be read on the wall"};
  return {};
}

}  // namespace floorwheel::files
