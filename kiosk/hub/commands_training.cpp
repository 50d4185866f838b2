// SPDX-License-Identifier: GPL-3.0-or-later
// Commands about training: what a person decides instead of a suggestion, and whether a member's own week is
// shown where everybody stands.
#include <array>

#include "kiosk/hub/command.h"
#include "kiosk/hub/training_page.h"
#include "kiosk/store/decisions.h"
#include "kiosk/store/local_day.h"
#include "kiosk/store/people.h"

namespace floorwheel::hub {
namespace json = boost::json;
using training::Mass;
using wire::Role;
namespace {

constexpr int heaviest_kg = 600;
constexpr int most_sets = 20;

std::string known_member(const Room& room, const Fields& f) {
  std::string member = f.text("member");
  if (!store::find_member(room.database, member))
    refuse("not_found", "There is no member '" + member + "'.", "Ask 'members' for those there are.");
  return member;
}

Outcome load_decide(Room& room, const Fields& f) {
  if (room.role != Role::instructor && room.role != Role::tool)
    refuse("refused", "What is lifted instead of a suggestion is the instructor's to decide.",
           "Decide it on the instructor's screen.");
  training::Override o;
  o.member = known_member(room, f);
  const Exercise& e = exercise_of(room, {}, f.text("exercise"));
  o.exercise = e.id;
  o.decided_by = wire::id_of(Role::instructor);
  o.load = Mass::grams(f.thousandths("load_kg", heaviest_kg));
  o.reps = f.maybe_range("reps", 1, e.hold ? training::longest_hold_s : training::most_reps);
  o.sets = f.maybe_whole("sets", 1, most_sets);
  o.day =
      training::day_from(store::local_day(room.now.ms, room.now.utc_offset_s).date).value_or(training::Day{});
  o.instant_us = room.now.ms * 1000;
  const Suggestion s = suggestion_for(room, o.member, e, o.day);
  o.suggested = s.load;
  o.suggested_change = s.change;
  Change c;
  c.body = {{"member", o.member},
            {"exercise", o.exercise},
            {"load_g", o.load.whole_grams()},
            {"suggested_g", o.suggested.whole_grams()},
            {"suggested_change", training::id_of(o.suggested_change)}};
  if (o.reps) c.body["reps"] = json::array{(*o.reps)[0], (*o.reps)[1]};
  if (o.sets) c.body["sets"] = *o.sets;
  c.receipt = {{"member", o.member},
               {"exercise", o.exercise},
               {"load_kg", kg_of(o.load)},
               {"suggested_kg", kg_of(o.suggested)}};
  c.write = [o](store::Database& db, std::int64_t seq) { store::add_decision(db, o, seq); };
  return c;
}

Outcome page_show(Room& room, const Fields& f) {
  const std::string member = known_member(room, f);
  const bool on = f.flag("on");
  if (room.role == Role::wall || (on && room.role == Role::touch))
    refuse("refused", "A member's own week is not switched on here: everybody stands before this screen.",
           "Ask at the desk, or the instructor.");
  const json::object receipt{{"member", member}, {"on", on}};
  if (store::page_shown(room.database, member) == on) return Already{receipt};
  Change c;
  c.body = receipt;
  c.receipt = receipt;
  c.write = [member, on](store::Database& db, std::int64_t seq) {
    store::keep_page_shown(db, member, on, seq);
  };
  return c;
}

constexpr std::array table{
    NamedCommand{"load.decide", load_decide},
    NamedCommand{"page.show", page_show},
};

}  // namespace

std::span<const NamedCommand> training_commands() { return table; }

}  // namespace floorwheel::hub
