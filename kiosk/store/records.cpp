// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/store/records.h"

#include "kiosk/store/local_day.h"

namespace floorwheel::store {

void add_record(Database& db, const KeptRecord& r, std::int64_t seq, CivilTime t) {
  const LocalDay day = local_day(t.ms, t.utc_offset_s);
  db.statement(
        "INSERT INTO set_record(id, seq, class, member, station, exercise, slot, done, load_hg, reps, rir,"
        " civil_ms, local_day, iso_week, corrects) VALUES(?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
      .bind(r.id, seq, r.class_id, r.set.member, r.set.station, r.set.exercise, r.set.slot, r.set.done,
            r.set.load_hg, r.set.reps, r.set.rir, t.ms, day.date, day.iso_week, r.corrects)
      .run();
}

std::optional<KeptRecord> find_record(Database& db, const Uuid& id) {
  Statement s = db.statement(
      "SELECT class, member, station, exercise, slot, done, load_hg, reps, rir, corrects FROM set_record"
      " WHERE id = ?");
  s.bind(id);
  if (!s.step()) return {};
  KeptRecord r;
  r.id = id;
  r.class_id = s.uuid(0);
  r.set.id = text_of(id);
  r.set.member = s.text(1);
  r.set.station = s.text(2);
  r.set.exercise = s.text(3);
  r.set.slot = static_cast<int>(s.integer(4));
  r.set.done = s.integer(5) != 0;
  if (!s.is_null(6)) r.set.load_hg = static_cast<int>(s.integer(6));
  r.set.reps = static_cast<int>(s.integer(7));
  if (!s.is_null(8)) r.set.rir = static_cast<int>(s.integer(8));
  if (!s.is_null(9)) r.corrects = s.uuid(9);
  return r;
}

bool is_corrected(Database& db, const Uuid& id) {
  Statement s = db.statement("SELECT 1 FROM set_record WHERE corrects = ?");
  s.bind(id);
  return s.step();
}

}  // namespace floorwheel::store
