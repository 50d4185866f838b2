// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/typed_mass.h"

#include <algorithm>
#include <optional>

namespace floorwheel::files {
namespace {

using training::Mass;
using training::MassUnit;
using training::Weight;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::string quoted(std::string_view text) { return "\"" + std::string(text) + "\""; }

/// digits[.digits] times 10^places as a whole number; nothing where more decimals count, or beyond 10^15.
std::optional<std::int64_t> exact(std::string_view whole, std::string_view decimals, int places) {
  while (!decimals.empty() && decimals.back() == '0') decimals.remove_suffix(1);
  if (decimals.size() > static_cast<std::size_t>(places)) return std::nullopt;
  std::int64_t n = 0;
  for (std::size_t i = 0; i < whole.size() + static_cast<std::size_t>(places); ++i) {
    const std::size_t d = i - std::min(i, whole.size());
    const char c = i < whole.size() ? whole[i] : d < decimals.size() ? decimals[d] : '0';
    n = n * 10 + (c - '0');
  }
  return n;
}

NoMass why_not(std::string_view number, std::string_view text) {
  const std::string right = "write a mass from 0 to 600 kg, such as 12.5";
  if (number.empty()) return {"there is no mass", right};
  if (number.front() == '-') return {quoted(text) + " is negative", right};
  const auto comma = number.find(',');
  if (comma != std::string_view::npos) {
    std::string with_point(number);
    with_point[comma] = '.';
    return {quoted(text) + " has a decimal comma", "write a point: " + with_point};
  }
  return {quoted(text) + " is no mass", right};
}

std::variant<Weight, NoMass> mass_of(std::string_view number, MassUnit unit, std::string_view text) {
  const auto point = number.find('.');
  const std::string_view whole = number.substr(0, point);
  const std::string_view decimals =
      point == std::string_view::npos ? std::string_view{} : number.substr(point + 1);
  const bool digits = std::all_of(whole.begin(), whole.end(), is_digit) &&
                      std::all_of(decimals.begin(), decimals.end(), is_digit);
  if (whole.empty() || !digits || (point != std::string_view::npos && decimals.empty()))
    return why_not(number, text);
  const NoMass too_heavy{quoted(text) + " is more than 600 kg", "write a mass from 0 to 600 kg"};
  if (whole.find_first_not_of('0') != std::string_view::npos && whole.size() > 6) return too_heavy;
  const bool pounds = unit == MassUnit::lb;
  const auto n = exact(whole, decimals, pounds ? 3 : 11);
  if (!n)
    return NoMass{quoted(text) + " is finer than any scale",
                  pounds ? "write at most 3 decimals" : "write at most 11 decimals"};
  const Mass mass{pounds ? *n * (Mass::per_lb / 1000) : *n};
  if (mass > training::heaviest_load) return too_heavy;
  return Weight{mass, unit};
}

}  // namespace

std::variant<Weight, NoMass> typed_kg(std::string_view text) { return mass_of(text, MassUnit::kg, text); }

std::variant<Weight, NoMass> typed_mass(std::string_view text) {
  std::string_view number = text;
  MassUnit unit = MassUnit::kg;
  for (const auto& [word, meant] : {std::pair{"kg", MassUnit::kg}, std::pair{"lb", MassUnit::lb}}) {
    if (!number.ends_with(word)) continue;
    number.remove_suffix(2);
    unit = meant;
    break;
  }
  if (number.ends_with(' ')) number.remove_suffix(1);
  return mass_of(number, unit, text);
}

}  // namespace floorwheel::files
