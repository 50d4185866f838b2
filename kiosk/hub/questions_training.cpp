// SPDX-License-Identifier: GPL-3.0-or-later
// The instructor's questions about training: dose of a week, a member's page, who stalls and where it hurts.
#include "kiosk/hub/questions_training.h"

#include "kiosk/hub/new_members.h"
#include "kiosk/hub/talk_sheet.h"
#include "kiosk/hub/training_page.h"
#include "kiosk/store/local_day.h"
#include "kiosk/store/people.h"
#include "kiosk/store/training_sets.h"

namespace floorwheel::hub {
namespace json = boost::json;
using training::Day;
namespace {

/// People who were here in the last four weeks are looked at for stalls.
constexpr int days_of_the_floor = 28;

Day today_of(const Room& room, const Fields& f) {
  const std::string text = f.text_or("today", store::local_day(room.now.ms, room.now.utc_offset_s).date);
  const auto day = training::day_from(text);
  if (!day) refuse("bad_body", "'" + text + "' is not a day.", "Write it as 2026-03-05.");
  return *day;
}

std::string alias_of(Room& room, const std::string& member) {
  const auto m = store::find_member(room.database, member);
  return m && !m->shown_as.empty() ? m->shown_as : member;
}

MemberSpec known_member(Room& room, const Fields& f) {
  const std::string member = f.text("member");
  auto m = store::find_member(room.database, member);
  if (!m) refuse("not_found", "There is no member '" + member + "'.", "Ask 'members' for those there are.");
  return *std::move(m);
}

/// The alias beside each row's member; rows of one member follow each other.
void name_rows(Room& room, json::array& rows) {
  std::string last;
  std::string alias;
  for (json::value& row : rows) {
    const json::string& member = row.at("member").as_string();
    if (last != std::string_view(member)) alias = alias_of(room, last = std::string(member));
    row.as_object()["shown_as"] = alias;
  }
}

}  // namespace

AnswerOrPlan dose_of_week(Room& room, const Fields& f) {
  training::IsoWeek week = training::iso_week_of(today_of(room, f));
  if (f.has("week")) {
    const auto named = training::iso_week_from(f.text("week"));
    if (!named) refuse("bad_body", "'" + f.text("week") + "' is no ISO week.", "Write it as 2026-W10.");
    week = *named;
  }
  json::array rows = dose_rows(room.database, room.exercises, week, f.text_or("member", ""));
  name_rows(room, rows);
  return json::object{{"week", text_of(week)}, {"rows", rows}};
}

AnswerOrPlan member_page(Room& room, const Fields& f) {
  const std::string member = known_member(room, f).id;
  if (room.role == wire::Role::touch && !store::page_shown(room.database, member))
    refuse("refused", "This member has not asked for their own week on the touch screen.",
           "Ask at the desk, or the instructor.");
  const Day today = today_of(room, f);
  json::object page{{"member", member},
                    {"shown_as", alias_of(room, member)},
                    {"week", text_of(training::iso_week_of(today))}};
  wire::merge(page, training_of(room, member, today));
  return page;
}

AnswerOrPlan floor_stalls(Room& room, const Fields& f) {
  const Day today = today_of(room, f);
  json::array stalls;
  json::array pain;
  for (const std::string& member :
       store::members_since(room.database, text_of(Day{today.number - days_of_the_floor})))
    for (json::value& row : next_loads(room, member, today)) {
      json::object& o = row.as_object();
      const json::string rule = o.at("rule").as_string();
      if (rule != "stall" && rule != "pain") continue;
      o["member"] = member;
      o["shown_as"] = alias_of(room, member);
      (rule == "stall" ? stalls : pain).push_back(std::move(row));
    }
  return json::object{{"stalls", stalls}, {"pain", pain}};
}

AnswerOrPlan talk_sheet_of(Room& room, const Fields& f) {
  const MemberSpec m = known_member(room, f);
  json::object out{{"member", m.id}, {"shown_as", m.shown_as}, {"level", id_of(m.level)}};
  wire::merge(out, talk_sheet(room, m.id, today_of(room, f)));
  return out;
}

AnswerOrPlan members_new(Room& room, const Fields&) { return json::object{{"rows", new_members(room)}}; }

}  // namespace floorwheel::hub
