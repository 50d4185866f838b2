// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/store/talk.h"

#include <boost/json.hpp>

#include "kiosk/wire/shapes.h"

namespace floorwheel::store {
namespace {

/// A note that leaves a field out leaves what stood there.
void take(SaidWords& said, const boost::json::object& words, std::string_view key, std::int64_t civil_ms) {
  const boost::json::value* v = words.if_contains(key);
  if (v != nullptr && v->is_string()) said = {std::string(v->get_string()), civil_ms};
}

}  // namespace

TalkWords talk_words(Database& db, const std::string& member) {
  Statement s = db.statement(
      "SELECT j.civil_ms, w.json FROM journal_words w JOIN journal j ON j.seq = w.seq"
      " WHERE w.member = ? AND j.kind = 'talk.note' ORDER BY j.seq");
  s.bind(member);
  TalkWords out;
  while (s.step()) {
    const boost::json::object words = wire::object_from(s.text(1));
    take(out.goal, words, "goal", s.integer(0));
    take(out.agreed, words, "agreed", s.integer(0));
  }
  return out;
}

std::vector<Uuid> classes_between(Database& db, const std::string& member, const std::string& from,
                                  const std::string& to) {
  Statement s = db.statement(
      "SELECT class FROM check_in WHERE member = ? AND local_day >= ? AND local_day <= ? ORDER BY seq");
  s.bind(member, from, to);
  std::vector<Uuid> out;
  while (s.step()) out.push_back(s.uuid(0));
  return out;
}

}  // namespace floorwheel::store
