// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/decimal.h"

#include <string>

namespace floorwheel::files {
namespace {

constexpr std::int64_t limit = 1'000'000'000'000'000;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Takes digits off the front of `text`, with single underscores between them; none at all is a failure.
bool take_digits(std::string_view& text, std::string& digits) {
  std::size_t i = 0;
  while (i < text.size()) {
    const bool joint =
        text[i] == '_' && i > 0 && is_digit(text[i - 1]) && i + 1 < text.size() && is_digit(text[i + 1]);
    if (!is_digit(text[i]) && !joint) break;
    if (!joint) digits += text[i];
    ++i;
  }
  text.remove_prefix(i);
  return i > 0;
}

bool take(std::string_view& text, char c) {
  if (text.empty() || text.front() != c) return false;
  text.remove_prefix(1);
  return true;
}

bool take_sign(std::string_view& text) {
  if (take(text, '-')) return true;
  take(text, '+');
  return false;
}

}  // namespace

std::optional<std::int64_t> scaled_decimal(std::string_view text, int places) {
  const bool negative = take_sign(text);
  std::string digits;
  if (!take_digits(text, digits)) return std::nullopt;
  const std::size_t whole = digits.size();
  if (take(text, '.') && !take_digits(text, digits)) return std::nullopt;

  std::int64_t exponent = 0;
  if (take(text, 'e') || take(text, 'E')) {
    const bool down = take_sign(text);
    std::string written;
    if (!take_digits(text, written)) return std::nullopt;
    for (char c : written)
      if (exponent < 100'000) exponent = exponent * 10 + (c - '0');
    if (down) exponent = -exponent;
  }
  if (!text.empty()) return std::nullopt;

  // value = 0.digits * 10^kept: `kept` digits stand before the point once it is scaled.
  const std::int64_t kept = static_cast<std::int64_t>(whole) + exponent + places;
  std::int64_t magnitude = 0;
  for (std::int64_t i = 0; i < kept; ++i) {
    const char c = i < static_cast<std::int64_t>(digits.size()) ? digits[static_cast<std::size_t>(i)] : '0';
    if (magnitude == 0 && i >= static_cast<std::int64_t>(digits.size())) break;  // nothing but zeros
    magnitude = magnitude * 10 + (c - '0');
    if (magnitude > limit) return std::nullopt;
  }

  // What is cut off, against one half: -1 below, 0 exactly, 1 above.
  int rest = -1;
  if (kept >= 0 && kept < static_cast<std::int64_t>(digits.size())) {
    const auto first = static_cast<std::size_t>(kept);
    const bool more = digits.find_first_not_of('0', first + 1) != std::string::npos;
    if (digits[first] > '5' || (digits[first] == '5' && more)) rest = 1;
    if (digits[first] == '5' && !more) rest = 0;
  }
  if (rest > 0 || (rest == 0 && !negative)) ++magnitude;
  return negative ? -magnitude : magnitude;
}

}  // namespace floorwheel::files
