// SPDX-License-Identifier: GPL-3.0-or-later
// Commands about talks with members.
#include <array>

#include "kiosk/hub/command.h"
#include "kiosk/store/people.h"
#include "kiosk/store/talk.h"

namespace floorwheel::hub {
namespace json = boost::json;
using wire::Role;
namespace {

constexpr wire::Audience teacher{Role::instructor, Role::tool};
constexpr int longest_note = 200;  // characters: two lines of the instructor's screen

Outcome talk_note(Room& room, const Fields& f) {
  const std::string member = f.text("member");
  if (!store::find_member(room.database, member))
    refuse("not_found", "There is no member '" + member + "'.", "Ask 'members' for those there are.");
  const store::TalkWords stands = store::talk_words(room.database, member);
  json::object words;
  const auto take = [&](const char* key, const store::SaidWords& before) {
    const auto line = f.maybe_line(key, longest_note);
    if (line && *line != before.text) words[key] = *line;
    return line.has_value();
  };
  const bool goal = take("goal", stands.goal);
  const bool agreed = take("agreed", stands.agreed);
  if (!goal && !agreed) refuse("bad_body", "The note says nothing.", "Give 'goal' or 'agreed', or both.");
  const json::object receipt{{"member", member}};
  if (words.empty()) return Already{receipt};
  Change change;
  change.body = {{"member", member}};
  change.words.push_back({.audience = teacher, .member = member, .json = json::serialize(words)});
  change.receipt = receipt;
  return change;
}

constexpr std::array table{NamedCommand{"talk.note", talk_note}};

}  // namespace

std::span<const NamedCommand> talk_commands() { return table; }

}  // namespace floorwheel::hub
