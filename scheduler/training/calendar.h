// SPDX-License-Identifier: GPL-3.0-or-later
// Calendar days and ISO weeks as numbers; no clock. The day of a set is the date written beside it.
// Source: ISO 8601-1:2019 week dates (tests/reference/iso_week_cases.csv); proleptic Gregorian calendar.
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace floorwheel::training {

struct Day {
  std::int32_t number = 0;  // days since 1970-01-01
  friend constexpr auto operator<=>(Day, Day) = default;
  friend constexpr int operator-(Day a, Day b) { return a.number - b.number; }
};

struct IsoWeek {
  int year = 1970;  // the year of the week's Thursday
  int week = 1;     // 1 to 53
  friend constexpr auto operator<=>(IsoWeek, IsoWeek) = default;
};

IsoWeek iso_week_of(Day);
/// Monday first.
inline constexpr std::array<std::string_view, 7> weekday_names{"Monday", "Tuesday",  "Wednesday", "Thursday",
                                                               "Friday", "Saturday", "Sunday"};

/// 1 Monday to 7 Sunday.
int weekday_of(Day);
Day monday_of(IsoWeek);

std::string text_of(Day);      // "2026-03-05"
std::string text_of(IsoWeek);  // "2026-W10"
/// Nothing for a date or week that the calendar does not have.
std::optional<Day> day_from(std::string_view date);
std::optional<IsoWeek> iso_week_from(std::string_view week);

}  // namespace floorwheel::training
