// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/calendar.h"

#include <chrono>

namespace floorwheel::training {
namespace {

using std::chrono::days;
using std::chrono::sys_days;

sys_days chrono_of(Day d) { return sys_days(days(d.number)); }
Day day_of(sys_days d) { return {static_cast<std::int32_t>(d.time_since_epoch().count())}; }

std::string digits(unsigned n, std::size_t width) {
  const std::string text = std::to_string(n);
  return std::string(text.size() < width ? width - text.size() : 0, '0') + text;
}

/// The number that `text` is, all of it digits; nothing otherwise.
std::optional<int> number(std::string_view text) {
  int n = 0;
  for (char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    n = n * 10 + (c - '0');
  }
  return n;
}

}  // namespace

int weekday_of(Day d) { return static_cast<int>(std::chrono::weekday{chrono_of(d)}.iso_encoding()); }

IsoWeek iso_week_of(Day d) {
  const sys_days thursday = chrono_of(d) + days(4 - weekday_of(d));
  const std::chrono::year year = std::chrono::year_month_day{thursday}.year();
  const auto nth = (thursday - sys_days(year / std::chrono::January / 1)).count();
  return {int{year}, static_cast<int>(nth / 7) + 1};
}

Day monday_of(IsoWeek w) {
  // 4 January is always in the first week.
  const Day fourth = day_of(sys_days(std::chrono::year(w.year) / std::chrono::January / 4));
  return {fourth.number - (weekday_of(fourth) - 1) + 7 * (w.week - 1)};
}

std::string text_of(Day d) {
  const std::chrono::year_month_day date{chrono_of(d)};
  return digits(static_cast<unsigned>(int{date.year()}), 4) + "-" + digits(unsigned{date.month()}, 2) + "-" +
         digits(unsigned{date.day()}, 2);
}

std::string text_of(IsoWeek w) {
  return digits(static_cast<unsigned>(w.year), 4) + "-W" + digits(static_cast<unsigned>(w.week), 2);
}

std::optional<Day> day_from(std::string_view date) {
  if (date.size() != 10 || date[4] != '-' || date[7] != '-') return std::nullopt;
  const auto year = number(date.substr(0, 4));
  const auto month = number(date.substr(5, 2));
  const auto day = number(date.substr(8, 2));
  if (!year || !month || !day) return std::nullopt;
  const std::chrono::year_month_day ymd{std::chrono::year(*year),
                                        std::chrono::month(static_cast<unsigned>(*month)),
                                        std::chrono::day(static_cast<unsigned>(*day))};
  if (!ymd.ok()) return std::nullopt;
  return day_of(sys_days(ymd));
}

std::optional<IsoWeek> iso_week_from(std::string_view week) {
  if (week.size() != 8 || week[4] != '-' || week[5] != 'W') return std::nullopt;
  const auto year = number(week.substr(0, 4));
  const auto nth = number(week.substr(6, 2));
  if (!year || !nth || *nth < 1) return std::nullopt;
  const IsoWeek w{*year, *nth};
  if (iso_week_of(monday_of(w)) != w) return std::nullopt;  // week 53 of a year that has 52
  return w;
}

}  // namespace floorwheel::training
