// SPDX-License-Identifier: GPL-3.0-or-later
// Commands about people: members, check-in, the count of heads, today's answers.
#include <algorithm>
#include <array>
#include <set>

#include "kiosk/hub/command.h"
#include "kiosk/store/people.h"

namespace floorwheel::hub {
namespace json = boost::json;
using wire::ClassView;
using wire::MemberView;
using wire::Role;
namespace {

constexpr wire::Audience everybody{Role::wall, Role::touch, Role::instructor, Role::desk, Role::tool};
constexpr wire::Audience teacher{Role::instructor, Role::tool};
constexpr std::size_t longest_alias = 120;  // bytes: 40 characters of any script, and then some

template <class E, class From>
EnumSet<E> set_of(const Fields& f, std::string_view key, From from, std::string_view what) {
  EnumSet<E> out;
  for (const std::string& id : f.texts(key)) {
    const auto e = from(id);
    if (!e)
      refuse("bad_body", "'" + id + "' in '" + std::string(key) + "' is not known.",
             "Each is the id of " + std::string(what) + ".");
    out.insert(*e);
  }
  return out;
}

bool is_id(std::string_view id) {
  return !id.empty() && id.size() <= 64 &&
         id.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-_") == std::string_view::npos;
}

Outcome member_add(Room& room, const Fields& f) {
  MemberSpec m;
  m.shown_as = f.text("shown_as");
  if (m.shown_as.size() > longest_alias)
    refuse("bad_body", "The alias is too long.", "Give one of at most 40 characters.");
  const auto level = level_from(f.text("level"));
  if (!level) refuse("bad_body", "The level is not known.", "It is novice, intermediate or advanced.");
  m.level = *level;
  m.id = f.text_or("id", "m-" + store::text_of(room.command).substr(0, 8));
  if (!is_id(m.id))
    refuse("bad_body", "'" + m.id + "' cannot be an id.",
           "An id has small letters, figures, '-' and '_', at most 64.");
  m.excluded_groups = set_of<Group>(f, "excluded_groups", group_from, "a muscle group");
  m.excluded_features = set_of<Feature>(f, "excluded_features", feature_from, "a feature of exercises");
  m.excluded_exercises = f.texts("excluded_exercises");
  m.allowed_exercises = f.texts("allowed_exercises");
  for (const auto* list : {&m.excluded_exercises, &m.allowed_exercises})
    for (const std::string& id : *list) exercise_of(room, {}, id);
  if (store::find_member(room.database, m.id))
    refuse("refused", "There is a member '" + m.id + "' already.", "Leave the id out and the hub makes one.");
  if (const std::string who = store::member_shown_as(room.database, m.shown_as); !who.empty())
    refuse("refused", "Somebody is shown as '" + m.shown_as + "' already.",
           "Choose an alias that tells the two apart.", {{"member", who}});
  Change c;
  c.body = {{"member", m.id}, {"level", id_of(m.level)}};
  c.words.push_back({.audience = everybody,
                     .member = m.id,
                     .json = json::serialize(json::object{{"shown_as", m.shown_as}})});
  json::object limits;
  for (const char* key : {"excluded_groups", "excluded_features", "excluded_exercises", "allowed_exercises"})
    if (f.has(key)) limits[key] = wire::json_of(f.texts(key));
  if (!limits.empty())
    c.words.push_back({.audience = teacher, .member = m.id, .json = json::serialize(limits)});
  c.receipt = {{"member", m.id}};
  c.write = [m, at = room.now.ms](store::Database& db, std::int64_t) { store::add_member(db, m, at); };
  return c;
}

void check_open(const ClassView& c) {
  if (!c.open)
    refuse("refused", "Check-in for '" + c.name + "' is not open.",
           "The instructor chooses the class first.");
}

/// Somebody of the class, or a member of the store who takes a seat.
MemberView someone(const Room& room, const ClassView& c, const std::string& id) {
  if (const MemberView* m = wire::find_member(c, id)) return *m;
  const auto kept = store::find_member(room.database, id);
  if (!kept)
    refuse("not_found", "There is no member '" + id + "'.", "Ask 'members' for those there are, or add one.");
  MemberView m;
  m.id = kept->id;
  m.shown_as = kept->shown_as;
  m.level = kept->level;
  return m;
}

Outcome check_in(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  check_open(c);
  const MemberView m = someone(room, c, f.text("member"));
  json::object receipt{{"class", c.id}, {"member", m.id}};
  if (m.here) return Already{receipt};
  Change change;
  change.class_id = id_of_class(c);
  change.body = {{"class", c.id}, {"member", m.id}, {"level", id_of(m.level)}, {"expected", m.expected}};
  change.words.push_back({.audience = everybody,
                          .member = m.id,
                          .json = json::serialize(json::object{{"shown_as", m.shown_as}})});
  change.receipt = receipt;
  change.write = [id = *change.class_id, m, now = room.now](store::Database& db, std::int64_t seq) {
    store::keep_seat(db, id, m.id, m.guest, m.expected);
    store::keep_check_in(db, id, m.id, seq, now);
  };
  return change;
}

Outcome check_in_undo(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  check_open(c);
  const MemberView m = someone(room, c, f.text("member"));
  json::object receipt{{"class", c.id}, {"member", m.id}};
  if (!m.here) return Already{receipt};
  if (c.clock.started && std::any_of(c.sheet.rows.begin(), c.sheet.rows.end(),
                                     [&m](const RunSheetRow& r) { return r.member == m.id; }))
    refuse("refused", m.shown_as + " is on the run sheet of a class that runs.",
           "Say that " + m.shown_as + " leaves (class.leave).");
  Change change;
  change.class_id = id_of_class(c);
  change.body = {{"class", c.id}, {"member", m.id}};
  change.receipt = receipt;
  change.write = [id = *change.class_id, m](store::Database& db, std::int64_t) {
    store::drop_check_in(db, id, m.id);
    if (!m.expected) store::drop_seat(db, id, m.id);
  };
  return change;
}

/// Guests that stay, then new ones with the next free number.
std::vector<std::string> guests(const ClassView& c, int count) {
  std::vector<std::string> out;
  for (const MemberView& m : c.members)
    if (m.guest && static_cast<int>(out.size()) < count) out.push_back(m.id);
  for (int n = 1; static_cast<int>(out.size()) < count; ++n)
    if (std::string id = "G" + std::to_string(n); !wire::find_member(c, id)) out.push_back(std::move(id));
  return out;
}

Outcome heads_count(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  check_open(c);
  if (c.clock.started)
    refuse("refused", "The class runs: its heads are counted.",
           "Say who comes late (class.late) and who leaves (class.leave).");
  std::vector<MemberView> here;
  json::object aliases;
  std::set<std::string> seen;
  for (const std::string& id : f.texts("here")) {
    if (!seen.insert(id).second) continue;
    here.push_back(someone(room, c, id));
    if (here.back().guest)
      refuse("bad_body", "'" + id + "' is a guest.", "Guests are counted in 'guests', not named in 'here'.");
    aliases[id] = here.back().shown_as;
  }
  const int known_guests = static_cast<int>(
      std::count_if(c.members.begin(), c.members.end(), [](const MemberView& m) { return m.guest; }));
  const std::vector<std::string> guest_ids =
      guests(c, f.maybe_whole("guests", 0, 200).value_or(known_guests));
  Change change;
  change.class_id = id_of_class(c);
  json::array ids;
  for (const MemberView& m : here) ids.emplace_back(m.id);
  change.body = {{"class", c.id}, {"here", ids}, {"guests", wire::json_of(guest_ids)}};
  for (const auto& [id, alias] : aliases)
    change.words.push_back({.audience = everybody,
                            .member = std::string(id),
                            .json = json::serialize(json::object{{"aliases", json::object{{id, alias}}}})});
  change.receipt = {{"class", c.id}, {"here", ids.size() + guest_ids.size()}};
  std::vector<MemberView> gone;
  for (const MemberView& m : c.members) {
    const bool stays = m.guest ? std::find(guest_ids.begin(), guest_ids.end(), m.id) != guest_ids.end()
                               : seen.contains(m.id);
    if (!stays) gone.push_back(m);
  }
  change.write = [id = *change.class_id, here, guest_ids, gone, now = room.now](store::Database& db,
                                                                                std::int64_t seq) {
    for (const MemberView& m : gone) {
      store::drop_check_in(db, id, m.id);
      if (!m.expected) store::drop_seat(db, id, m.id);
    }
    for (const MemberView& m : here) {
      store::keep_seat(db, id, m.id, false, m.expected);
      store::keep_check_in(db, id, m.id, seq, now);
    }
    for (const std::string& guest : guest_ids) {
      store::keep_seat(db, id, guest, true, false);
      store::keep_check_in(db, id, guest, seq, now);
    }
  };
  return change;
}

Outcome answer_today(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  const std::string id = f.text("member");
  if (!wire::find_member(c, id)) refuse("not_found", "'" + id + "' is not in this class.", "Check in first.");
  const std::string answer = f.text("answer");
  constexpr std::array<std::string_view, 4> answers{"fine", "take_it_easy", "hurts", "wants_a_word"};
  if (std::find(answers.begin(), answers.end(), answer) == answers.end())
    refuse("bad_body", "The answer '" + answer + "' is not known.",
           "It is fine, take_it_easy, hurts or wants_a_word.");
  const std::string spot = f.text_or("spot", "");
  if (!spot.empty() && (answer != "hurts" || !group_from(spot)))
    refuse("bad_body", "The spot '" + spot + "' does not fit.",
           "With the answer 'hurts' a spot is the id of a muscle group.");
  Change change;
  change.class_id = id_of_class(c);
  change.body = {{"class", c.id}, {"member", id}};
  json::object words{{"answer", answer}};
  if (!spot.empty()) words["spot"] = spot;
  change.words.push_back({.audience = teacher, .member = id, .json = json::serialize(words)});
  change.receipt = {{"class", c.id}, {"member", id}};
  return change;
}

constexpr std::array table{
    NamedCommand{"member.add", member_add},       NamedCommand{"check_in", check_in},
    NamedCommand{"check_in.undo", check_in_undo}, NamedCommand{"heads.count", heads_count},
    NamedCommand{"answer.today", answer_today},
};

}  // namespace

std::span<const NamedCommand> member_commands() { return table; }

}  // namespace floorwheel::hub
