// SPDX-License-Identifier: GPL-3.0-or-later
// The desk's tables. A class counts once it has ended; its date is the local day it was opened on.
#pragma once

#include <string>
#include <vector>

#include "kiosk/store/sqlite.h"

namespace floorwheel::store {

/// Local days "2026-03-05", both ends in; "" leaves an end open.
struct Days {
  std::string from;
  std::string to;
};

struct AttendanceRow {
  Uuid class_id;
  std::string name;
  std::string date;
  int expected = 0;  // on the list, guests of the class file too
  int here = 0;      // of anybody, guests and walk-ins too
};
std::vector<AttendanceRow> attendance(Database&, const Days& = {});

struct FrequencyRow {
  std::string member;
  std::string shown_as;
  std::string iso_week;
  int visits = 0;
};
/// Visits by member and ISO week of the local day; guests are nobody's visits.
std::vector<FrequencyRow> frequency(Database&, const Days& = {});

struct VisitCount {
  std::string member;
  std::string shown_as;
  int visits = 0;        // check-ins, of classes that run now too
  std::string last_day;  // "" for never
};
/// Members with at most so many visits, by id.
std::vector<VisitCount> visit_counts(Database&, int most);

}  // namespace floorwheel::store
