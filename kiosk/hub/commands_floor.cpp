// SPDX-License-Identifier: GPL-3.0-or-later
// Changes of the floor and of who is there: what each is (describe_change), so that a preview and the command
// say and do the same. The rest, the new run sheet, is in new_sheet.cpp.
#include <algorithm>
#include <array>

#include "kiosk/hub/command.h"
#include "kiosk/hub/sentences.h"
#include "kiosk/store/people.h"
#include "kiosk/wire/kinds.h"

namespace floorwheel::hub {
namespace json = boost::json;
using wire::ClassView;
using wire::MemberView;
using wire::Role;
using wire::StationView;
namespace {

constexpr wire::Audience everybody{Role::wall, Role::touch, Role::instructor, Role::desk, Role::tool};

int open_slot(const Room& room, const ClassView& c) { return wire::first_open_slot(c.clock, room.at_ms); }

bool on_sheet(const ClassView& c, const std::string& member) {
  return std::any_of(c.sheet.rows.begin(), c.sheet.rows.end(),
                     [&member](const RunSheetRow& r) { return r.member == member; });
}

void check_slots_left(const Room& room, const ClassView& c) {
  if (c.sheet.version > 0 && open_slot(room, c) > c.sheet.timing.slots)
    refuse("refused", "The last slot is under way or announced: the run sheet has nothing left to change.",
           "Let the class end as it is.");
}

void check_has_sheet(const ClassView& c, const char* instead) {
  if (c.sheet.version == 0) refuse("refused", "No run sheet is published yet.", instead);
}

/// The slot being worked or left, 0 before the first work.
int present_slot(const Room& room, const ClassView& c) {
  const wire::Moment m = wire::moment_at(c.clock, room.at_ms);
  return m.segment < 0 ? 0 : c.clock.segments[static_cast<std::size_t>(m.segment)].slot;
}

store::WordPart names_part(const json::object& names) {
  return {
      .audience = everybody, .member = {}, .json = json::serialize(json::object{{"exercise_names", names}})};
}

FloorChange late(Room& room, const ClassView& c, const Fields& f) {
  check_has_sheet(c, "Check in instead (check_in).");
  check_slots_left(room, c);
  FloorChange d;
  d.from_slot = open_slot(room, c);
  MemberView m;
  if (f.has("member")) {
    m.id = f.text("member");
    if (const MemberView* known = wire::find_member(c, m.id)) {
      m = *known;
    } else if (const auto kept = store::find_member(room.database, m.id)) {
      m.shown_as = kept->shown_as;
      m.level = kept->level;
    } else {
      refuse("not_found", "There is no member '" + m.id + "'.",
             "Add the member first, or leave 'member' out for a guest.");
    }
  } else {
    m.guest = true;
    for (int n = 1; m.id.empty() || wire::find_member(c, m.id) || on_sheet(c, m.id); ++n)
      m.id = "G" + std::to_string(n);
    m.shown_as = m.id;
  }
  const bool left = m.present.last != SlotRange::to_the_end;
  if (on_sheet(c, m.id) && !left)
    refuse("refused", m.shown_as + " is on the run sheet already.", "Nothing needs doing.");
  // Somebody who comes back keeps the slots worked before.
  const int first = left && on_sheet(c, m.id) ? m.present.first : d.from_slot;
  d.body = {{"class", c.id},
            {"member", m.id},
            {"guest", m.guest},
            {"level", id_of(m.level)},
            {"present", json::array{first}}};
  d.words.push_back({.audience = everybody,
                     .member = m.guest ? std::string() : m.id,
                     .json = json::serialize(json::object{{"shown_as", m.shown_as}})});
  d.added = {m.id};
  d.sentence = late_sentence(m.shown_as, d.from_slot);
  d.write = [id = id_of_class(c), m, now = room.now](store::Database& db, std::int64_t seq) {
    store::keep_seat(db, id, m.id, m.guest, m.expected);
    store::keep_check_in(db, id, m.id, seq, now);
  };
  return d;
}

FloorChange leave(Room& room, const ClassView& c, const Fields& f) {
  check_has_sheet(c, "Take the check-in back instead (check_in.undo).");
  const std::string id = f.text("member");
  const MemberView* m = wire::find_member(c, id);
  if (!m || !on_sheet(c, id))
    refuse("not_found", "'" + id + "' is not on the run sheet.", "Name a member of it.");
  if (m->present.last != SlotRange::to_the_end)
    refuse("refused", m->shown_as + " has left already.", "Nothing needs doing.");
  check_slots_left(room, c);
  FloorChange d;
  const int last = present_slot(room, c);
  d.from_slot = open_slot(room, c);
  d.body = {{"class", c.id}, {"member", id}, {"present", json::array{m->present.first, last}}};
  d.sentence = leave_sentence(m->shown_as, last);
  return d;
}

FloorChange close(Room& room, const ClassView& c, const Fields& f) {
  const StationView& s = station_of(c, f);
  check_slots_left(room, c);
  FloorChange d;
  d.from_slot = open_slot(room, c);
  const int until = f.maybe_whole("until_slot", 1, SlotRange::to_the_end).value_or(SlotRange::to_the_end);
  if (until < d.from_slot)
    refuse("refused", "Slot " + std::to_string(until) + " is over or announced.",
           "The first slot that can still change is " + std::to_string(d.from_slot) + ".");
  for (const SlotRange r : s.closed)
    if (r.contains(d.from_slot) && r.last >= until)
      refuse("refused", "Station " + s.letter + " is closed already.", "Nothing needs doing.");
  d.body = {{"class", c.id}, {"station", s.id}, {"from_slot", d.from_slot}};
  if (until != SlotRange::to_the_end) d.body["to_slot"] = until;
  d.sentence = "Station " + s.letter + " is closed from slot " + std::to_string(d.from_slot) + " on" +
               (until == SlotRange::to_the_end ? "." : ", to slot " + std::to_string(until) + ".");
  return d;
}

FloorChange open(Room& room, const ClassView& c, const Fields& f) {
  const StationView& s = station_of(c, f);
  check_slots_left(room, c);
  FloorChange d;
  d.from_slot = open_slot(room, c);
  if (std::none_of(s.closed.begin(), s.closed.end(), [&d](SlotRange r) { return r.last >= d.from_slot; }))
    refuse("refused", "Station " + s.letter + " is open already.", "Nothing needs doing.");
  d.body = {{"class", c.id}, {"station", s.id}, {"from_slot", d.from_slot}};
  d.sentence = "Station " + s.letter + " is open from slot " + std::to_string(d.from_slot) + " on.";
  return d;
}

/// The body and words of a change that lays stations out otherwise.
FloorChange laid_out(const Room& room, const ClassView& c, const std::vector<StationView>& stations,
                     const json::object& names) {
  FloorChange d;
  d.from_slot = open_slot(room, c);
  d.body = {{"class", c.id}, {"stations", wire::json_of(stations)}};
  if (!names.empty()) d.words.push_back(names_part(names));
  return d;
}

FloorChange set(Room& room, const ClassView& c, const Fields& f) {
  const StationView& s = station_of(c, f);
  const Exercise& e = exercise_of(room, c, f.text("exercise"));
  check_slots_left(room, c);
  std::vector<StationView> stations = c.stations;
  for (StationView& each : stations)
    if (each.id == s.id) put_exercise(each, e);
  FloorChange d = laid_out(room, c, stations, {{e.id, e.name}});
  d.body["station"] = s.id;
  d.body["exercise"] = e.id;
  d.sentence = "At station " + s.letter + ": " + e.name + ".";
  return d;
}

FloorChange swap(Room& room, const ClassView& c, const Fields& f) {
  const StationView& a = station_of(c, f);
  const StationView& b = station_of(c, f, "with");
  if (a.id == b.id) refuse("bad_body", "A station cannot be swapped with itself.", "Name two stations.");
  check_slots_left(room, c);
  std::vector<StationView> stations = c.stations;
  // What stands there changes places; letters, positions and closures stay.
  const auto move_to = [](StationView& to, const StationView& from) {
    StationView v = from;
    v.id = to.id;
    v.letter = to.letter;
    v.x_cm = to.x_cm;
    v.y_cm = to.y_cm;
    v.closed = to.closed;
    v.closed_now = to.closed_now;
    to = std::move(v);
  };
  for (StationView& each : stations) {
    if (each.id == a.id) move_to(each, b);
    if (each.id == b.id) move_to(each, a);
  }
  FloorChange d = laid_out(room, c, stations, {});
  d.body["station"] = a.id;
  d.body["with"] = b.id;
  d.sentence = "Stations " + a.letter + " and " + b.letter + " change places.";
  return d;
}

/// The next letter that no station has, by the rule of the class file.
std::string free_letter(const std::vector<StationView>& stations) {
  ClassSpec probe;
  for (const StationView& v : stations) {
    StationSpec s;
    s.id = v.letter;
    probe.stations.push_back(std::move(s));
  }
  std::string letter;
  do {
    probe.stations.emplace_back();
    letter = wall_letters(probe).back();
    probe.stations.back().id = letter;
  } while (std::any_of(stations.begin(), stations.end(),
                       [&letter](const StationView& v) { return v.id == letter || v.letter == letter; }));
  return letter;
}

FloorChange add(Room& room, const ClassView& c, const Fields& f) {
  const Exercise& e = exercise_of(room, c, f.text("exercise"));
  check_slots_left(room, c);
  std::vector<StationView> stations = c.stations;
  auto place = stations.end();
  if (f.has("after")) {
    const StationView& after = station_of(c, f, "after");
    place = std::find_if(stations.begin(), stations.end(),
                         [&after](const StationView& s) { return s.id == after.id; }) +
            1;
  }
  StationView v;
  put_exercise(v, e);
  v.id = v.letter = free_letter(stations);
  v.capacity = f.maybe_whole("capacity", 1, 99).value_or(1);
  if (!stations.empty()) {  // between its neighbours, the last one's being the first
    const StationView& before = place == stations.begin() ? stations.back() : *(place - 1);
    const StationView& behind = place == stations.end() ? stations.front() : *place;
    v.x_cm = (before.x_cm + behind.x_cm) / 2;
    v.y_cm = (before.y_cm + behind.y_cm) / 2;
  }
  const std::string id = v.id;
  stations.insert(place, std::move(v));
  FloorChange d = laid_out(room, c, stations, {{e.id, e.name}});
  d.body["station"] = id;
  d.sentence = "One more station, " + id + ": " + e.name + ".";
  return d;
}

struct Described {
  std::string_view kind;
  FloorChange (*describe)(Room&, const ClassView&, const Fields&);
};
constexpr std::array described{
    Described{"class.late", late},   Described{"class.leave", leave}, Described{"station.close", close},
    Described{"station.open", open}, Described{"station.set", set},   Described{"station.swap", swap},
    Described{"station.add", add},
};

Outcome change(Room& room, const Fields& f, std::string_view kind) {
  const ClassView& c = class_of(room, f);
  check_saw(c, f);
  return with_sheet(room, c, describe_change(room, c, kind, f));
}

Outcome as_in_file(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  check_saw(c, f);
  if (c.clock.started)
    refuse("refused", "The class runs.",
           "Change one station at a time (station.set, station.swap, station.open).");
  const ClassSpec base = base_of(room, c);
  const std::vector<StationView> stations = stations_of(base);
  json::object names;
  for (const StationView& s : stations) names[s.exercise] = s.exercise_name;
  Change row;
  row.class_id = id_of_class(c);
  row.body = {{"class", c.id}, {"stations", wire::json_of(stations)}};
  row.words.push_back(names_part(names));
  row.receipt = {{"class", c.id}};
  return row;
}

constexpr std::array table{
    NamedCommand{"class.late", [](Room& r, const Fields& f) { return change(r, f, "class.late"); }},
    NamedCommand{"class.leave", [](Room& r, const Fields& f) { return change(r, f, "class.leave"); }},
    NamedCommand{"station.close", [](Room& r, const Fields& f) { return change(r, f, "station.close"); }},
    NamedCommand{"station.open", [](Room& r, const Fields& f) { return change(r, f, "station.open"); }},
    NamedCommand{"station.set", [](Room& r, const Fields& f) { return change(r, f, "station.set"); }},
    NamedCommand{"station.swap", [](Room& r, const Fields& f) { return change(r, f, "station.swap"); }},
    NamedCommand{"station.add", [](Room& r, const Fields& f) { return change(r, f, "station.add"); }},
    NamedCommand{"floor.as_in_file", as_in_file},
};

}  // namespace

bool is_floor_change(std::string_view kind) {
  return std::any_of(described.begin(), described.end(),
                     [kind](const Described& d) { return d.kind == kind; });
}

FloorChange describe_change(Room& room, const ClassView& c, std::string_view kind, const Fields& f) {
  for (const Described& d : described)
    if (d.kind == kind) {
      FloorChange change = d.describe(room, c, f);
      change.kind = kind;
      return change;
    }
  refuse("bad_body", "'" + std::string(kind) + "' is not a change that can be previewed.",
         "It is class.late, class.leave, station.close, station.open, station.set, station.swap or "
         "station.add.");
}

std::span<const NamedCommand> floor_commands() { return table; }

}  // namespace floorwheel::hub
