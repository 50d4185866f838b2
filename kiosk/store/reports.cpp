// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/store/reports.h"

namespace floorwheel::store {

std::vector<AttendanceRow> attendance(Database& db, const Days& days) {
  std::vector<AttendanceRow> out;
  Statement s = db.statement(
      "SELECT c.id, c.name, c.opened_day,"
      " (SELECT count(*) FROM seat s WHERE s.class = c.id AND s.expected),"
      " (SELECT count(*) FROM check_in i WHERE i.class = c.id)"
      " FROM class c WHERE c.ended_ms IS NOT NULL AND c.opened_ms IS NOT NULL"
      " AND (?1 = '' OR c.opened_day >= ?1) AND (?2 = '' OR c.opened_day <= ?2)"
      " ORDER BY c.opened_ms, c.id");
  s.bind(days.from, days.to);
  while (s.step())
    out.push_back({.class_id = s.uuid(0),
                   .name = s.text(1),
                   .date = s.text(2),
                   .expected = static_cast<int>(s.integer(3)),
                   .here = static_cast<int>(s.integer(4))});
  return out;
}

std::vector<FrequencyRow> frequency(Database& db, const Days& days) {
  std::vector<FrequencyRow> out;
  Statement s = db.statement(
      "SELECT i.member, w.shown_as, i.iso_week, count(*)"
      " FROM check_in i JOIN class c ON c.id = i.class JOIN seat s ON s.class = i.class AND s.member = "
      "i.member"
      " LEFT JOIN member_words w ON w.member = i.member"
      " WHERE c.ended_ms IS NOT NULL AND NOT s.guest"
      " AND (?1 = '' OR i.local_day >= ?1) AND (?2 = '' OR i.local_day <= ?2)"
      " GROUP BY i.member, i.iso_week ORDER BY i.iso_week, i.member");
  s.bind(days.from, days.to);
  while (s.step())
    out.push_back({.member = s.text(0),
                   .shown_as = s.is_null(1) ? s.text(0) : s.text(1),
                   .iso_week = s.text(2),
                   .visits = static_cast<int>(s.integer(3))});
  return out;
}

std::vector<VisitCount> visit_counts(Database& db, int most) {
  std::vector<VisitCount> out;
  Statement s = db.statement(
      "SELECT m.id, coalesce(w.shown_as, m.id), coalesce(i.visits, 0), coalesce(i.last_day, '')"
      " FROM member m LEFT JOIN member_words w ON w.member = m.id"
      " LEFT JOIN (SELECT member, count(*) AS visits, max(local_day) AS last_day FROM check_in GROUP BY "
      "member) i"
      " ON i.member = m.id WHERE coalesce(i.visits, 0) <= ? ORDER BY m.id");
  s.bind(most);
  while (s.step())
    out.push_back({.member = s.text(0),
                   .shown_as = s.text(1),
                   .visits = static_cast<int>(s.integer(2)),
                   .last_day = s.text(3)});
  return out;
}

}  // namespace floorwheel::store
