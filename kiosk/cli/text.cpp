// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/cli/text.h"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <cwchar>
#include <stdexcept>

namespace floorwheel::cli {

std::size_t width_of(std::string_view text) {
  std::size_t width = 0;
  std::mbstate_t state{};
  while (!text.empty()) {
    wchar_t c = 0;
    const std::size_t size = std::mbrtowc(&c, text.data(), text.size(), &state);
    if (size == 0 || size > text.size()) {  // not UTF-8 here: one column a byte
      state = {};
      ++width;
      text.remove_prefix(1);
      continue;
    }
    width += static_cast<std::size_t>(std::max(0, ::wcwidth(c)));
    text.remove_prefix(size);
  }
  return width;
}

std::string padded(std::string_view text, std::size_t width) {
  const std::size_t has = width_of(text);
  return std::string(text) + std::string(has < width ? width - has : 0, ' ');
}

std::string columns(const std::vector<std::vector<std::string>>& rows, std::string_view indent) {
  std::vector<std::size_t> widths;
  for (const auto& row : rows)
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (i == widths.size()) widths.push_back(0);
      widths[i] = std::max(widths[i], width_of(row[i]));
    }
  std::string out;
  for (const auto& row : rows) {
    std::string line(indent);
    for (std::size_t i = 0; i < row.size(); ++i) line += padded(row[i], widths[i] + 2);
    line.erase(line.find_last_not_of(' ') + 1);
    out += line + "\n";
  }
  return out;
}

std::string counted(std::int64_t n, std::string_view one, std::string_view many) {
  return std::to_string(n) + " " + std::string(n == 1 ? one : many);
}

std::string clock_text(int seconds) {
  const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
  const int hours = seconds / 3600;
  const int minutes = seconds / 60 % 60;
  return (hours > 0 ? std::to_string(hours) + ":" + two(minutes) : std::to_string(minutes)) + ":" +
         two(seconds % 60);
}

std::string decimal_text(std::int64_t scaled, int places) {
  std::string digits = std::to_string(scaled);
  const auto wanted = static_cast<std::size_t>(places) + 1;
  if (digits.size() < wanted) digits.insert(0, wanted - digits.size(), '0');
  digits.insert(digits.size() - static_cast<std::size_t>(places), ".");
  return digits;
}

std::string listed(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " and " : ", ";
    out += words[i];
  }
  return out;
}

void print(std::string_view text) {
  if (std::fwrite(text.data(), 1, text.size(), stdout) != text.size() || std::fflush(stdout) != 0)
    throw std::runtime_error("standard output cannot be written (" + std::string(std::strerror(errno)) + ")");
}

}  // namespace floorwheel::cli
