// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/store/spec_json.h"

#include <boost/json.hpp>

#include "kiosk/wire/shapes.h"

namespace floorwheel::store {
namespace json = boost::json;
using wire::get_array;
using wire::get_bool;
using wire::get_int;
using wire::get_object;
using wire::get_string;
using wire::get_strings;
using wire::json_of;
namespace {

int small(const json::object& o, std::string_view key, int otherwise = 0) {
  return static_cast<int>(get_int(o, key, otherwise));
}

json::array range(SlotRange r) { return {r.first, r.last}; }
SlotRange range_from(const json::value& v) {
  SlotRange r;
  if (v.is_array() && v.get_array().size() == 2) {
    r.first = static_cast<int>(v.get_array()[0].as_int64());
    r.last = static_cast<int>(v.get_array()[1].as_int64());
  }
  return r;
}

json::array numbers(const std::vector<int>& all) {
  json::array out;
  for (const int n : all) out.emplace_back(n);
  return out;
}
std::vector<int> numbers_from(const json::object& o, std::string_view key) {
  std::vector<int> out;
  for (const json::value& v : get_array(o, key))
    if (v.is_int64()) out.push_back(static_cast<int>(v.get_int64()));
  return out;
}

template <class E>
json::array ids_of(EnumSet<E> set, int count) {
  json::array out;
  for (int i = 0; i < count; ++i)
    if (set.contains(static_cast<E>(i))) out.emplace_back(id_of(static_cast<E>(i)));
  return out;
}
GroupSet groups_from(const json::object& o, std::string_view key) {
  GroupSet out;
  for (const std::string& id : get_strings(o, key))
    if (const auto g = group_from(id)) out.insert(*g);
  return out;
}
FeatureSet features_from(const json::object& o, std::string_view key) {
  FeatureSet out;
  for (const std::string& id : get_strings(o, key))
    if (const auto f = feature_from(id)) out.insert(*f);
  return out;
}

json::object json_of_exercise(const Exercise& e) {
  return {{"id", e.id},
          {"name", e.name},
          {"primary", ids_of(e.primary, group_count)},
          {"assisting", ids_of(e.assisting, group_count)},
          {"features", ids_of(e.features, feature_count)},
          {"kind", id_of(e.kind)},
          {"loads_hg", numbers(e.loads_hg)},
          {"reps", json::array{e.reps[0], e.reps[1]}},
          {"rir", json::array{e.rir[0], e.rir[1]}},
          {"hold", e.hold},
          {"substitutes", json_of(e.substitutes)},
          {"equipment", json_of(e.equipment)},
          {"per_side", e.per_side},
          {"how", e.how},
          {"caution", e.caution}};
}
std::array<int, 2> two(const json::object& o, std::string_view key) {
  const std::vector<int> v = numbers_from(o, key);
  return v.size() == 2 ? std::array<int, 2>{v[0], v[1]} : std::array<int, 2>{};
}
Exercise exercise_from(const json::object& o) {
  Exercise e;
  e.id = get_string(o, "id");
  e.name = get_string(o, "name");
  e.primary = groups_from(o, "primary");
  e.assisting = groups_from(o, "assisting");
  e.features = features_from(o, "features");
  e.kind = exercise_kind_from(get_string(o, "kind")).value_or(ExerciseKind::compound);
  e.loads_hg = numbers_from(o, "loads_hg");
  e.reps = two(o, "reps");
  e.rir = two(o, "rir");
  e.hold = get_bool(o, "hold");
  e.substitutes = get_strings(o, "substitutes");
  e.equipment = get_strings(o, "equipment");
  e.per_side = get_bool(o, "per_side");
  e.how = get_string(o, "how");
  e.caution = get_string(o, "caution");
  return e;
}

json::object json_of_station(const StationSpec& s) {
  json::array closed;
  for (const SlotRange r : s.closed) closed.emplace_back(range(r));
  json::object out{{"id", s.id},
                   {"exercise", s.exercise},
                   {"substitutes", json_of(s.substitutes)},
                   {"capacity", s.capacity},
                   {"equipment", json_of(s.equipment)},
                   {"x_cm", s.x_cm},
                   {"y_cm", s.y_cm},
                   {"closed", closed},
                   {"offers_hg", numbers(s.offers_hg)}};
  if (s.reps) out["reps"] = *s.reps;
  if (s.rir) out["rir"] = *s.rir;
  return out;
}
StationSpec station_from(const json::object& o) {
  StationSpec s;
  s.id = get_string(o, "id");
  s.exercise = get_string(o, "exercise");
  s.substitutes = get_strings(o, "substitutes");
  s.capacity = small(o, "capacity", 1);
  s.equipment = get_strings(o, "equipment");
  s.x_cm = small(o, "x_cm");
  s.y_cm = small(o, "y_cm");
  for (const json::value& v : get_array(o, "closed")) s.closed.push_back(range_from(v));
  s.offers_hg = numbers_from(o, "offers_hg");
  if (o.contains("reps")) s.reps = small(o, "reps");
  if (o.contains("rir")) s.rir = small(o, "rir");
  return s;
}

json::object json_of_member(const MemberSpec& m) {
  json::object out{
      {"id", m.id}, {"level", id_of(m.level)}, {"present", range(m.present)}, {"guest", m.guest}};
  if (m.required) out["required"] = json_of(*m.required);
  return out;
}
MemberSpec member_from(const json::object& o) {
  MemberSpec m;
  m.id = get_string(o, "id");
  m.shown_as = m.id;
  m.level = level_from(get_string(o, "level")).value_or(Level::novice);
  if (o.contains("present")) m.present = range_from(o.at("present"));
  m.guest = get_bool(o, "guest");
  if (o.contains("required")) m.required = get_strings(o, "required");
  return m;
}

json::object limits(const MemberSpec& m) {
  return {{"excluded_groups", ids_of(m.excluded_groups, group_count)},
          {"excluded_features", ids_of(m.excluded_features, feature_count)},
          {"excluded_exercises", json_of(m.excluded_exercises)},
          {"allowed_exercises", json_of(m.allowed_exercises)}};
}
void take_limits(const json::object& o, MemberSpec& m) {
  m.excluded_groups = groups_from(o, "excluded_groups");
  m.excluded_features = features_from(o, "excluded_features");
  m.excluded_exercises = get_strings(o, "excluded_exercises");
  m.allowed_exercises = get_strings(o, "allowed_exercises");
}

template <class F>
void each(const json::object& o, std::string_view key, F&& f) {
  for (const json::value& v : get_array(o, key))
    if (v.is_object()) f(v.get_object());
}

}  // namespace

std::string class_json(const ClassSpec& c) {
  json::array equipment;
  for (const EquipmentSpec& e : c.equipment) equipment.push_back({{"id", e.id}, {"units", e.units}});
  json::array stations;
  for (const StationSpec& s : c.stations) stations.emplace_back(json_of_station(s));
  json::array members;
  for (const MemberSpec& m : c.members) members.emplace_back(json_of_member(m));
  json::array exercises;
  for (const auto& [id, e] : c.exercises) exercises.emplace_back(json_of_exercise(e));
  json::object out{{"name", c.name},
                   {"style", id_of(c.style)},
                   {"timing", json_of(wire::timing_of(c, c.slots.value_or(0)))},
                   {"recovery_s", json::array{c.recovery_s[0], c.recovery_s[1], c.recovery_s[2]}},
                   {"equipment", equipment},
                   {"stations", stations},
                   {"members", members},
                   {"exercises", exercises}};
  if (c.start) out["start"] = *c.start;
  if (c.length_s) out["length_s"] = *c.length_s;
  return json::serialize(out);
}

ClassSpec class_from(const std::string& text) {
  const json::object o = wire::object_from(text);
  const wire::Timing t = wire::timing_from(get_object(o, "timing"));
  ClassSpec c;
  c.name = get_string(o, "name");
  if (o.contains("start")) c.start = get_string(o, "start");
  if (o.contains("length_s")) c.length_s = small(o, "length_s");
  c.laps = t.laps;
  c.work_s = t.work_s;
  c.change_s = t.change_s;
  if (t.slots > 0) c.slots = t.slots;
  c.style = style_from(get_string(o, "style")).value_or(Style::automatic);
  c.show_s = t.show_s;
  c.warm_up_s = t.warm_up_s;
  c.lead_in_s = t.lead_in_s;
  c.cool_down_s = t.cool_down_s;
  c.breaks = t.breaks;
  if (const std::vector<int> recovery = numbers_from(o, "recovery_s"); recovery.size() == level_count)
    c.recovery_s = {recovery[0], recovery[1], recovery[2]};
  each(o, "equipment", [&c](const json::object& e) {
    c.equipment.push_back({get_string(e, "id"), small(e, "units")});
  });
  each(o, "stations", [&c](const json::object& s) { c.stations.push_back(station_from(s)); });
  each(o, "members", [&c](const json::object& m) { c.members.push_back(member_from(m)); });
  each(o, "exercises", [&c](const json::object& e) {
    Exercise made = exercise_from(e);
    std::string id = made.id;
    c.exercises.emplace(std::move(id), std::move(made));
  });
  return c;
}

std::string limits_json(const MemberSpec& m) { return json::serialize(limits(m)); }
void read_limits(const std::string& text, MemberSpec& m) { take_limits(wire::object_from(text), m); }

std::string member_words_json(const MemberSpec& m) {
  json::object loads;
  for (const auto& [station, hg] : m.loads_hg) loads[station] = hg;
  json::object out = limits(m);
  out["shown_as"] = m.shown_as;
  out["loads_hg"] = loads;
  return json::serialize(out);
}

void read_member_words(const std::string& text, MemberSpec& m) {
  const json::object o = wire::object_from(text);
  take_limits(o, m);
  m.shown_as = get_string(o, "shown_as");
  m.loads_hg.clear();
  for (const auto& [station, hg] : get_object(o, "loads_hg"))
    if (hg.is_int64()) m.loads_hg[std::string(station)] = static_cast<int>(hg.get_int64());
}

}  // namespace floorwheel::store
