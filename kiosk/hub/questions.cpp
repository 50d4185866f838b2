// SPDX-License-Identifier: GPL-3.0-or-later
// The answers to questions: read from the hall, the store and the planner; nothing changes.
#include <array>

#include "kiosk/hub/command.h"
#include "kiosk/hub/questions_programme.h"
#include "kiosk/hub/questions_training.h"
#include "kiosk/hub/sentences.h"
#include "kiosk/store/people.h"
#include "kiosk/store/reports.h"
#include "kiosk/store/schema.h"
#include "kiosk/wire/kinds.h"

namespace floorwheel::hub {
namespace json = boost::json;
using wire::ClassView;
using wire::Running;
namespace {

std::string_view state_of(const store::ClassLine& line, const ClassView* c) {
  if (line.ended) return "ended";
  if (!c) return "ready";
  switch (c->clock.state) {
    case Running::running:
      return "running";
    case Running::held:
      return "held";
    case Running::stopped:
      return "stopped";
    case Running::over:
      return "ended";
    case Running::not_started:
      break;
  }
  return c->open ? "open" : "ready";
}

AnswerOrPlan classes(Room& room, const Fields&) {
  json::array rows;
  for (const store::ClassLine& line : store::all_classes(room.database)) {
    const std::string id = store::text_of(line.id);
    const auto view = room.hall.classes.find(id);
    rows.push_back({{"class", id},
                    {"name", line.name},
                    {"start", line.start},
                    {"state", state_of(line, view == room.hall.classes.end() ? nullptr : &view->second)},
                    {"expected", line.expected},
                    {"here", line.here}});
  }
  return json::object{{"classes", rows}};
}

AnswerOrPlan members(Room& room, const Fields&) {
  json::array rows;
  for (const MemberSpec& m : store::all_members(room.database))
    rows.push_back({{"member", m.id}, {"shown_as", m.shown_as}, {"level", id_of(m.level)}});
  return json::object{{"members", rows}};
}

template <class E>
json::array ids_of(EnumSet<E> set, int count) {
  json::array out;
  for (int i = 0; i < count; ++i)
    if (set.contains(static_cast<E>(i))) out.emplace_back(id_of(static_cast<E>(i)));
  return out;
}

AnswerOrPlan exercises(Room& room, const Fields&) {
  json::array rows;
  for (const auto& [id, e] : room.exercises)
    rows.push_back({{"id", id},
                    {"name", e.name},
                    {"primary", ids_of(e.primary, group_count)},
                    {"assisting", ids_of(e.assisting, group_count)},
                    {"features", ids_of(e.features, feature_count)},
                    {"kind", id_of(e.kind)},
                    {"substitutes", wire::json_of(e.substitutes)}});
  return json::object{{"exercises", rows}};
}

json::object json_of(const Refusal& r) {
  json::array slots;
  for (const int s : r.slots) slots.emplace_back(s);
  return {{"rule", r.rule},
          {"members", wire::json_of(r.members)},
          {"stations", wire::json_of(r.stations)},
          {"slots", slots},
          {"reason", r.reason}};
}

AnswerOrPlan proposal(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  if (c.clock.started)
    refuse("refused", "The class runs: its run sheet is not laid out anew.",
           "Ask for a preview of a change.");
  PlanRequest request{.spec = spec_now(base_of(room, c), c, finder(room), People::here),
                      .slots = f.maybe_whole("slots", 1, 200),
                      .old = {},
                      .at_slot = 0};
  if (!request.slots) request.slots = request.spec.slots;
  if (request.spec.members.empty()) refuse("refused", "Nobody is here.", "Count heads or check in first.");
  const PlanShelf::Entry* entry = room.plans.find(request);
  if (!entry) return NeedsPlan{std::move(request)};
  if (const auto* refusal = std::get_if<Refusal>(&entry->result))
    return json::object{{"refusal", json_of(*refusal)}};
  const auto& table = std::get<SlotTable>(entry->result);
  const wire::RunSheet sheet = sheet_of(request.spec, table.chosen, c.sheet.version + 1);
  json::array rows;
  const SlotRow* before = nullptr;
  for (const SlotRow& r : table.rows) {
    rows.push_back({{"slots", r.slots},
                    {"class_s", r.class_s},
                    {"fits", r.fits},
                    {"style", id_of(r.style)},
                    {"cost", wire::json_of(r.cost, false)},
                    {"gain", gain_of(before, r)}});
    before = &r;
  }
  return json::object{{"proposal", entry->id},
                      {"sheet", wire::sheet_body(sheet, c.stations)},
                      {"words", merged(words_of(request.spec, sheet, ""))},
                      {"rows", rows},
                      {"ends_s", class_seconds(request.spec, sheet.timing.slots)}};
}

AnswerOrPlan preview(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  check_saw(c, f);
  const json::object& change = f.object("change");
  const std::string kind = wire::get_string(change, "kind");
  if (!is_floor_change(kind)) describe_change(room, c, kind, f);  // refuses and says which there are
  std::string allowed = std::string(wire::find_command(kind)->fields);
  allowed.replace(0, std::string_view("class, saw").size(), "kind");
  return preview_of(room, c, describe_change(room, c, kind, Fields(change, allowed)));
}

store::Days days(const Fields& f) {
  store::Days d{.from = f.text_or("from", ""), .to = f.text_or("to", "")};
  for (const std::string& day : {d.from, d.to})
    if (!day.empty() && (day.size() != 10 || day[4] != '-' || day[7] != '-' ||
                         day.find_first_not_of("0123456789-") != std::string::npos))
      refuse("bad_body", "'" + day + "' is not a day.", "Write it as 2026-03-05.");
  return d;
}

AnswerOrPlan attendance(Room& room, const Fields& f) {
  json::array rows;
  for (const store::AttendanceRow& r : store::attendance(room.database, days(f)))
    rows.push_back({{"class", store::text_of(r.class_id)},
                    {"name", r.name},
                    {"date", r.date},
                    {"expected", r.expected},
                    {"here", r.here}});
  return json::object{{"rows", rows}};
}

AnswerOrPlan frequency(Room& room, const Fields& f) {
  json::array rows;
  for (const store::FrequencyRow& r : store::frequency(room.database, days(f)))
    rows.push_back(
        {{"member", r.member}, {"shown_as", r.shown_as}, {"iso_week", r.iso_week}, {"visits", r.visits}});
  return json::object{{"rows", rows}};
}

AnswerOrPlan journal(Room& room, const Fields& f) {
  const int after = f.maybe_whole("after", 0, SlotRange::to_the_end).value_or(0);
  const int most = f.maybe_whole("most", 1, 1000).value_or(1000);
  json::array rows;
  for (const wire::Row& r :
       store::rows_after(room.database, wire::Role::tool, after, most, std::size_t{1} << 20).rows)
    rows.push_back(
        {{"seq", r.seq}, {"civil_ms", r.civil_ms}, {"kind", r.kind}, {"body", wire::object_from(r.body)}});
  return json::object{{"rows", rows}};
}

AnswerOrPlan health(Room& room, const Fields&) {
  json::object out = room.health;
  out["schema"] = store::schema_version();
  out["journal"] = store::last_seq(room.database);
  return out;
}

struct NamedQuestion {
  std::string_view kind;
  QuestionFunction function;
};
constexpr std::array table{
    NamedQuestion{"classes", classes},
    NamedQuestion{"members", members},
    NamedQuestion{"exercises", exercises},
    NamedQuestion{"proposal", proposal},
    NamedQuestion{"preview", preview},
    NamedQuestion{"attendance", attendance},
    NamedQuestion{"frequency", frequency},
    NamedQuestion{"journal", journal},
    NamedQuestion{"health", health},
    NamedQuestion{"dose", dose_of_week},
    NamedQuestion{"member.page", member_page},
    NamedQuestion{"floor.stalls", floor_stalls},
    NamedQuestion{"talk.sheet", talk_sheet_of},
    NamedQuestion{"members.new", members_new},
    NamedQuestion{"programmes", programmes},
    NamedQuestion{"programme.check", programme_check},
};

}  // namespace

QuestionFunction question_function(std::string_view kind) {
  for (const NamedQuestion& q : table)
    if (q.kind == kind) return q.function;
  return nullptr;
}

}  // namespace floorwheel::hub
