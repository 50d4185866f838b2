// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/store/local_day.h"

#include <chrono>
#include <cstdio>

namespace floorwheel::store {
namespace {

using std::chrono::days;
using std::chrono::sys_days;

std::string padded(const char* pattern, int a, unsigned b, unsigned c = 0) {
  char out[48];
  std::snprintf(out, sizeof out, pattern, a, b, c);
  return out;
}

}  // namespace

std::int64_t days_from(int year, int month, int day) {
  const std::chrono::year_month_day date{std::chrono::year(year),
                                         std::chrono::month(static_cast<unsigned>(month)),
                                         std::chrono::day(static_cast<unsigned>(day))};
  return sys_days(date).time_since_epoch().count();
}

LocalDay local_day(std::int64_t civil_ms, int utc_offset_s) {
  const std::chrono::sys_time<std::chrono::milliseconds> local{
      std::chrono::milliseconds(civil_ms + std::int64_t{1000} * utc_offset_s)};
  const sys_days day = std::chrono::floor<days>(local);
  const std::chrono::year_month_day date{day};
  const unsigned weekday = std::chrono::weekday{day}.iso_encoding();
  // A week belongs to the year of its Thursday.
  const sys_days thursday = day + days(4 - static_cast<int>(weekday));
  const std::chrono::year year = std::chrono::year_month_day{thursday}.year();
  const auto first = sys_days(year / std::chrono::January / 1);
  const unsigned week = static_cast<unsigned>((thursday - first).count()) / 7 + 1;
  LocalDay out;
  out.date = padded("%04d-%02u-%02u", int{date.year()}, unsigned{date.month()}, unsigned{date.day()});
  out.iso_week = padded("%04d-W%02u", int{year}, week);
  out.weekday = static_cast<int>(weekday);
  return out;
}

}  // namespace floorwheel::store
