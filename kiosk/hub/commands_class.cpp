// SPDX-License-Identifier: GPL-3.0-or-later
// Commands about a class as a whole: add, open, publish, start, end.
#include <array>

#include "kiosk/files/class_file.h"
#include "kiosk/hub/command.h"
#include "kiosk/store/people.h"
#include "scheduler/rotation/audit.h"

namespace floorwheel::hub {
namespace json = boost::json;
using wire::ClassView;
using wire::Role;
using wire::Running;
namespace {

constexpr wire::Audience everybody{Role::wall, Role::touch, Role::instructor, Role::desk, Role::tool};
constexpr wire::Audience teacher{Role::instructor, Role::tool};

json::object alone(const std::string& key, const std::string& member, json::value value) {
  return {{key, json::object{{member, std::move(value)}}}};
}

/// Members of the file that the store lacks; refused where an alias is another's or has changed.
std::vector<MemberSpec> new_members(const Room& room, const ClassSpec& spec) {
  std::vector<MemberSpec> out;
  std::map<std::string, std::string> by_alias;
  for (const MemberSpec& m : spec.members) {
    if (m.guest) continue;
    const auto [other, fresh] = by_alias.emplace(m.shown_as, m.id);
    if (!fresh)
      refuse("refused", "'" + other->second + "' and '" + m.id + "' are both shown as '" + m.shown_as + "'.",
             "Give one of them another shown_as.");
    const auto kept = store::find_member(room.database, m.id);
    if (kept && kept->shown_as != m.shown_as)
      refuse("refused",
             "Member '" + m.id + "' is shown as '" + kept->shown_as + "' here and as '" + m.shown_as +
                 "' in the file.",
             "Use the same shown_as, or another id for another person.");
    if (kept) continue;
    const std::string holder = store::member_shown_as(room.database, m.shown_as);
    if (!holder.empty())
      refuse("refused", "'" + m.shown_as + "' is the alias of member '" + holder + "' already.",
             "Give '" + m.id + "' another shown_as.");
    out.push_back(m);
  }
  return out;
}

Outcome class_add(Room& room, const Fields& f) {
  auto read = files::parse_class(f.text("toml"), "class", room.exercises);
  if (const auto* error = std::get_if<files::FileError>(&read))
    refuse("bad_body",
           "The class file cannot be read, line " + std::to_string(error->line) + ", column " +
               std::to_string(error->column) + ": " + error->what + ".",
           error->right, {{"line", error->line}, {"column", error->column}});
  const ClassSpec spec = std::get<ClassSpec>(std::move(read));
  const store::Uuid id = f.has("class") ? f.uuid("class") : room.command;
  const std::string text = store::text_of(id);
  if (store::find_class(room.database, id))
    refuse("refused", "There is a class " + text + " already.", "Leave 'class' out and the hub makes an id.");
  const std::vector<MemberSpec> fresh = new_members(room, spec);
  Change c;
  c.class_id = id;
  json::array members;
  json::array guests;
  for (const MemberSpec& m : spec.members)
    if (m.guest)
      guests.emplace_back(m.id);
    else
      members.push_back({{"member", m.id}, {"level", id_of(m.level)}});
  c.body = {{"class", text},
            {"start", spec.start.value_or("")},
            {"length_s", spec.length_s.value_or(0)},
            {"timing", wire::json_of(wire::timing_of(spec, spec.slots.value_or(0)))},
            {"stations", wire::json_of(stations_of(spec))},
            {"members", members},
            {"guests", guests}};
  json::object names;
  for (const StationSpec& s : spec.stations)
    if (const auto e = spec.exercises.find(s.exercise); e != spec.exercises.end())
      names[s.exercise] = e->second.name;
  c.words.push_back({.audience = everybody,
                     .member = {},
                     .json = json::serialize(json::object{{"name", spec.name}, {"exercise_names", names}})});
  const json::object notes = notes_of(spec);
  for (const MemberSpec& m : spec.members) {
    if (m.guest) continue;
    c.words.push_back({.audience = everybody,
                       .member = m.id,
                       .json = json::serialize(alone("aliases", m.id, json::value(m.shown_as)))});
    json::object loads;
    for (const auto& [station, hg] : m.loads_hg) loads[station] = hg;
    if (!loads.empty())
      c.words.push_back(
          {.audience = teacher, .member = m.id, .json = json::serialize(alone("loads_hg", m.id, loads))});
  }
  if (!notes.empty())  // they name others too
    c.words.push_back(
        {.audience = teacher, .member = "*", .json = json::serialize(json::object{{"notes", notes}})});
  c.receipt = {{"class", text}};
  c.write = [id, spec, fresh, at = room.now.ms](store::Database& db, std::int64_t) {
    for (const MemberSpec& m : fresh) store::add_member(db, m, at);
    store::add_class(db, id, spec);
  };
  return c;
}

Outcome class_open(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  if (room.hall.current == c.id) return Already{{{"class", c.id}}};
  if (const ClassView* now = wire::current_class(room.hall); now && now->clock.state != Running::not_started)
    refuse("refused", "The class '" + now->name + "' is under way.", "End it first, then open this one.",
           {{"class", now->id}});
  Change change;
  change.class_id = id_of_class(c);
  change.body = {{"class", c.id}};
  change.receipt = change.body;
  change.write = [id = *change.class_id, now = room.now](store::Database& db, std::int64_t) {
    store::mark_opened(db, id, now);
  };
  return change;
}

Outcome class_publish(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  check_saw(c, f);
  if (c.clock.started)
    refuse("refused", "The class runs: its run sheet is not laid out anew.",
           "Change it by class.late, class.leave or the station commands.");
  const PlanShelf::Entry* entry = room.plans.find(store::text_of(f.uuid("proposal")));
  if (!entry) refuse("not_found", "The hub does not hold this proposal any more.", "Ask for a new proposal.");
  const PlanRequest now{.spec = spec_now(base_of(room, c), c, finder(room), People::here),
                        .slots = entry->request.slots,
                        .old = {},
                        .at_slot = 0};
  if (!(now == entry->request))
    refuse("stale", "Somebody came or went, or the floor changed, since this proposal was made.",
           "Ask for a new proposal.", {{"version", c.sheet.version}});
  if (const auto* refusal = std::get_if<Refusal>(&entry->result))
    refuse("refused", refusal->reason, "Change what clashes and ask again.");
  const Plan& plan = std::get<SlotTable>(entry->result).chosen;
  const wire::RunSheet sheet = sheet_of(now.spec, plan, c.sheet.version + 1);
  Change change;
  change.class_id = id_of_class(c);
  change.body = {{"class", c.id}, {"sheet", wire::sheet_body(sheet, c.stations)}};
  change.words = words_of(now.spec, sheet, "");
  change.receipt = {{"class", c.id}, {"version", sheet.version}};
  change.write = [id = *change.class_id, sheet](store::Database& db, std::int64_t seq) {
    store::keep_run_sheet(db, id, sheet.version, seq, sheet.at_slot, sheet.timing.slots);
  };
  return change;
}

/// The sheet must still keep every rule for the people on it: an exclusion or a closure may have come since.
void check_sheet_holds(const Room& room, const ClassView& c) {
  const ClassSpec spec = spec_now(base_of(room, c), c, finder(room), People::on_sheet);
  const auto rotation = rotation_of(spec, c.sheet);
  std::string why;
  if (!rotation) {
    why = "People or stations of the run sheet are not those of the class any more.";
  } else {
    const Audit a = audit(spec, *rotation);
    if (!a.holds()) why = a.breaches.front().text;
  }
  if (!why.empty())
    refuse("stale", "The run sheet does not fit the class any more: " + why,
           "Ask for a new proposal and publish it.", {{"version", c.sheet.version}});
}

Outcome class_start(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  check_saw(c, f);
  if (c.clock.started) return Already{{{"class", c.id}, {"version", c.sheet.version}}};
  if (room.hall.current != c.id)
    refuse("refused", "'" + c.name + "' is not the class at hand.", "Open it first (class.open).");
  if (c.clock.state == Running::stopped)
    refuse("refused", "'Stop and help' is on.", "Say that it is over first (class.over).");
  if (c.sheet.version == 0)
    refuse("refused", "No run sheet is published.", "Ask for a proposal and publish it first.");
  check_sheet_holds(room, c);
  Change change;
  change.class_id = id_of_class(c);
  change.body = {{"class", c.id}, {"version", c.sheet.version}};
  change.receipt = change.body;
  return change;
}

Outcome class_end(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  if (!c.open) refuse("refused", "'" + c.name + "' was never opened.", "Open it first (class.open).");
  Change change;
  change.class_id = id_of_class(c);
  change.body = {{"class", c.id}};
  change.receipt = change.body;
  change.write = [id = *change.class_id, at = room.now.ms](store::Database& db, std::int64_t) {
    store::mark_ended(db, id, at);
  };
  return change;
}

constexpr std::array table{
    NamedCommand{"class.add", class_add},         NamedCommand{"class.open", class_open},
    NamedCommand{"class.publish", class_publish}, NamedCommand{"class.start", class_start},
    NamedCommand{"class.end", class_end},
};

}  // namespace

std::span<const NamedCommand> class_commands() { return table; }

}  // namespace floorwheel::hub
