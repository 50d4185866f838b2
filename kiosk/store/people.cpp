// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/store/people.h"

#include "kiosk/store/spec_json.h"

namespace floorwheel::store {

void add_member(Database& db, const MemberSpec& m, std::int64_t civil_ms) {
  db.statement("INSERT INTO member(id, level, added_ms) VALUES(?, ?, ?)")
      .bind(m.id, id_of(m.level), civil_ms)
      .run();
  db.statement("INSERT INTO member_words(member, shown_as, limits) VALUES(?, ?, ?)")
      .bind(m.id, m.shown_as, limits_json(m))
      .run();
}

std::optional<MemberSpec> find_member(Database& db, const std::string& id) {
  Statement s = db.statement(
      "SELECT m.level, w.shown_as, w.limits FROM member m LEFT JOIN member_words w ON w.member = m.id"
      " WHERE m.id = ?");
  s.bind(id);
  if (!s.step()) return {};
  MemberSpec m;
  m.id = id;
  m.level = level_from(s.text(0)).value_or(Level::novice);
  m.shown_as = s.is_null(1) ? id : s.text(1);
  read_limits(s.text(2), m);
  return m;
}

std::string member_shown_as(Database& db, const std::string& alias) {
  Statement s = db.statement("SELECT member FROM member_words WHERE shown_as = ?");
  s.bind(alias);
  return s.step() ? s.text(0) : std::string();
}

std::vector<MemberSpec> all_members(Database& db) {
  std::vector<MemberSpec> out;
  Statement s = db.statement(
      "SELECT m.id, m.level, w.shown_as FROM member m LEFT JOIN member_words w ON w.member = m.id"
      " ORDER BY w.shown_as IS NULL, w.shown_as, m.id");
  while (s.step()) {
    MemberSpec m;
    m.id = s.text(0);
    m.level = level_from(s.text(1)).value_or(Level::novice);
    m.shown_as = s.is_null(2) ? m.id : s.text(2);
    out.push_back(std::move(m));
  }
  return out;
}

bool page_shown(Database& db, const std::string& member) {
  Statement s = db.statement("SELECT shown FROM own_page WHERE member = ?");
  s.bind(member);
  return s.step() && s.integer(0) != 0;
}

void keep_page_shown(Database& db, const std::string& member, bool on, std::int64_t seq) {
  db.statement("INSERT OR REPLACE INTO own_page(member, shown, seq) VALUES(?, ?, ?)")
      .bind(member, on, seq)
      .run();
}

void erase_words_of(Database& db, const std::string& member) {
  Transaction all(db);
  db.statement("UPDATE journal_words SET json = '{}' WHERE member = ?").bind(member).run();
  db.statement(
        "UPDATE journal_words SET json = '{}' WHERE member = '*' AND seq IN"
        " (SELECT j.seq FROM journal j JOIN seat s ON s.class = j.class WHERE s.member = ?)")
      .bind(member)
      .run();
  db.statement("DELETE FROM own_page WHERE member = ?").bind(member).run();
  db.statement("DELETE FROM class_words WHERE member = ?").bind(member).run();
  db.statement("DELETE FROM pair_words WHERE a = ?1 OR b = ?1").bind(member).run();
  db.statement("DELETE FROM member_words WHERE member = ?").bind(member).run();
  all.commit();
}

}  // namespace floorwheel::store
