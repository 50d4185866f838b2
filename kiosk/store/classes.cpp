// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/store/classes.h"

#include "kiosk/store/local_day.h"
#include "kiosk/store/spec_json.h"

namespace floorwheel::store {

void add_class(Database& db, const Uuid& id, const ClassSpec& c) {
  db.statement("INSERT INTO class(id, name, start, spec) VALUES(?, ?, ?, ?)")
      .bind(id, c.name, c.start.value_or(""), class_json(c))
      .run();
  for (const MemberSpec& m : c.members) {
    keep_seat(db, id, m.id, m.guest, true);
    if (!m.guest)
      db.statement("INSERT INTO class_words(class, member, json) VALUES(?, ?, ?)")
          .bind(id, m.id, member_words_json(m))
          .run();
  }
  for (const PairSpec& p : c.pairs)
    db.statement("INSERT OR IGNORE INTO pair_words(class, a, b, rule) VALUES(?, ?, ?, ?)")
        .bind(id, p.a, p.b, id_of(p.rule))
        .run();
}

std::optional<ClassSpec> find_class(Database& db, const Uuid& id) {
  Statement s = db.statement("SELECT spec FROM class WHERE id = ?");
  s.bind(id);
  if (!s.step()) return {};
  ClassSpec c = class_from(s.text(0));
  for (MemberSpec& m : c.members) {
    Statement words = db.statement("SELECT json FROM class_words WHERE class = ? AND member = ?");
    words.bind(id, m.id);
    if (words.step()) read_member_words(words.text(0), m);
  }
  Statement pairs = db.statement("SELECT a, b, rule FROM pair_words WHERE class = ? ORDER BY a, b, rule");
  pairs.bind(id);
  while (pairs.step())
    c.pairs.push_back({.a = pairs.text(0),
                       .b = pairs.text(1),
                       .rule = pair_rule_from(pairs.text(2)).value_or(PairRule::together)});
  return c;
}

std::vector<ClassLine> all_classes(Database& db) {
  std::vector<ClassLine> out;
  Statement s = db.statement(
      "SELECT c.id, c.name, c.start, c.opened_ms IS NOT NULL, c.ended_ms IS NOT NULL,"
      " (SELECT count(*) FROM seat s WHERE s.class = c.id AND s.expected),"
      " (SELECT count(*) FROM check_in i WHERE i.class = c.id)"
      " FROM class c ORDER BY c.ended_ms IS NOT NULL, c.start = '', c.start,"
      " (SELECT min(seq) FROM journal j WHERE j.class = c.id)");
  while (s.step())
    out.push_back({.id = s.uuid(0),
                   .name = s.text(1),
                   .start = s.text(2),
                   .opened = s.integer(3) != 0,
                   .ended = s.integer(4) != 0,
                   .expected = static_cast<int>(s.integer(5)),
                   .here = static_cast<int>(s.integer(6))});
  return out;
}

void mark_opened(Database& db, const Uuid& id, CivilTime t) {
  db.statement("UPDATE class SET opened_ms = ?, opened_offset_s = ?, opened_day = ? WHERE id = ?")
      .bind(t.ms, t.utc_offset_s, local_day(t.ms, t.utc_offset_s).date, id)
      .run();
}

void mark_ended(Database& db, const Uuid& id, std::int64_t civil_ms) {
  db.statement("UPDATE class SET ended_ms = ? WHERE id = ?").bind(civil_ms, id).run();
}

void keep_seat(Database& db, const Uuid& class_id, const std::string& member, bool guest, bool expected) {
  db.statement("INSERT OR IGNORE INTO seat(class, member, guest, expected) VALUES(?, ?, ?, ?)")
      .bind(class_id, member, guest, expected)
      .run();
}

void drop_seat(Database& db, const Uuid& class_id, const std::string& member) {
  db.statement("DELETE FROM seat WHERE class = ? AND member = ?").bind(class_id, member).run();
}

void keep_check_in(Database& db, const Uuid& class_id, const std::string& member, std::int64_t seq,
                   CivilTime t) {
  const LocalDay day = local_day(t.ms, t.utc_offset_s);
  db.statement(
        "INSERT OR IGNORE INTO check_in(class, member, seq, civil_ms, utc_offset_s, local_day, iso_week)"
        " VALUES(?, ?, ?, ?, ?, ?, ?)")
      .bind(class_id, member, seq, t.ms, t.utc_offset_s, day.date, day.iso_week)
      .run();
}

void drop_check_in(Database& db, const Uuid& class_id, const std::string& member) {
  db.statement("DELETE FROM check_in WHERE class = ? AND member = ?").bind(class_id, member).run();
}

void keep_run_sheet(Database& db, const Uuid& class_id, int version, std::int64_t seq, int at_slot,
                    int slots) {
  db.statement("INSERT INTO run_sheet(class, version, seq, at_slot, slots) VALUES(?, ?, ?, ?, ?)")
      .bind(class_id, version, seq, at_slot, slots)
      .run();
}

void keep_pulse(Database& db, const Pulse& p) {
  db.statement(
        "INSERT OR REPLACE INTO pulse(id, class, boot_id, speed, elapsed_ms, civil_ms) VALUES(1, ?, ?, ?, ?, "
        "?)")
      .bind(p.class_id, p.boot_id, p.speed, p.elapsed_ms, p.civil_ms)
      .run();
}

void drop_pulse(Database& db) { db.statement("DELETE FROM pulse").run(); }

std::optional<Pulse> find_pulse(Database& db) {
  Statement s = db.statement("SELECT class, boot_id, speed, elapsed_ms, civil_ms FROM pulse");
  if (!s.step()) return {};
  return Pulse{.class_id = s.uuid(0),
               .boot_id = s.text(1),
               .speed = s.real(2),
               .elapsed_ms = s.integer(3),
               .civil_ms = s.integer(4)};
}

}  // namespace floorwheel::store
