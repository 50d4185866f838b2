// SPDX-License-Identifier: GPL-3.0-or-later
// Local calendar days and ISO weeks of Unix times, by arithmetic: SQLite 3.40 cannot write ISO weeks.
// Source: ISO 8601 week dates; days from the proleptic Gregorian calendar (checked in tests/reference).
#pragma once

#include <cstdint>
#include <string>

namespace floorwheel::store {

struct LocalDay {
  std::string date;      // "2026-03-05"
  std::string iso_week;  // "2026-W10"
  int weekday = 1;       // 1 Monday to 7 Sunday
};

/// The local day of a Unix time where local time is `utc_offset_s` ahead of UTC.
LocalDay local_day(std::int64_t civil_ms, int utc_offset_s);

/// Days since 1970-01-01 of a date.
std::int64_t days_from(int year, int month, int day);

}  // namespace floorwheel::store
