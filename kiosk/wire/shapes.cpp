// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/wire/shapes.h"

#include <algorithm>
#include <limits>

namespace floorwheel::wire {
namespace json = boost::json;
namespace {

constexpr std::size_t max_depth = 24;

int as_int(std::int64_t v) {
  return static_cast<int>(
      std::clamp<std::int64_t>(v, std::numeric_limits<int>::min(), std::numeric_limits<int>::max()));
}
int get_small(const json::object& o, std::string_view key, int otherwise = 0) {
  return as_int(get_int(o, key, otherwise));
}

std::int64_t int_of(const json::value& v, std::int64_t otherwise) {
  if (const auto* i = v.if_int64()) return *i;
  if (const auto* u = v.if_uint64())
    return *u > std::uint64_t{std::numeric_limits<std::int64_t>::max()} ? otherwise
                                                                        : static_cast<std::int64_t>(*u);
  return otherwise;
}

/// [first, last], or [first] to the end, as the class file writes it.
json::array json_of(SlotRange r) {
  json::array out{r.first};
  if (r.last != SlotRange::to_the_end) out.emplace_back(r.last);
  return out;
}

}  // namespace

json::object object_from(std::string_view text) {
  json::parse_options options;
  options.max_depth = max_depth;
  json::error_code error;
  const json::value v = json::parse(text, error, {}, options);
  if (error || !v.is_object()) return {};
  return v.get_object();
}

std::int64_t get_int(const json::object& o, std::string_view key, std::int64_t otherwise) {
  const json::value* v = o.if_contains(key);
  return v ? int_of(*v, otherwise) : otherwise;
}
bool get_bool(const json::object& o, std::string_view key, bool otherwise) {
  const json::value* v = o.if_contains(key);
  return v && v->is_bool() ? v->get_bool() : otherwise;
}
std::string get_string(const json::object& o, std::string_view key) {
  const json::value* v = o.if_contains(key);
  return v && v->is_string() ? std::string(v->get_string()) : std::string();
}
const json::object& get_object(const json::object& o, std::string_view key) {
  static const json::object none;
  const json::value* v = o.if_contains(key);
  return v && v->is_object() ? v->get_object() : none;
}
const json::array& get_array(const json::object& o, std::string_view key) {
  static const json::array none;
  const json::value* v = o.if_contains(key);
  return v && v->is_array() ? v->get_array() : none;
}
std::vector<std::string> get_strings(const json::object& o, std::string_view key) {
  std::vector<std::string> out;
  for (const json::value& v : get_array(o, key)) out.emplace_back(v.is_string() ? v.get_string() : "");
  return out;
}

json::array json_of(const std::vector<std::string>& all) {
  json::array out;
  for (const std::string& s : all) out.emplace_back(s);
  return out;
}

json::object json_of(const Timing& t) {
  json::array breaks;
  for (const BreakSpec& b : t.breaks) breaks.push_back({{"after_slot", b.after_slot}, {"s", b.seconds}});
  return {{"slots", t.slots},         {"laps", t.laps},
          {"work_s", t.work_s},       {"change_s", t.change_s},
          {"show_s", t.show_s},       {"warm_up_s", t.warm_up_s},
          {"lead_in_s", t.lead_in_s}, {"cool_down_s", t.cool_down_s},
          {"breaks", breaks}};
}

SlotRange range_from(const json::array& a) {
  SlotRange r;
  if (!a.empty()) r.first = as_int(int_of(a[0], 1));
  if (a.size() > 1) r.last = as_int(int_of(a[1], SlotRange::to_the_end));
  return r;
}

Timing timing_from(const json::object& o) {
  Timing t;
  t.slots = get_small(o, "slots");
  t.laps = get_small(o, "laps", 1);
  t.work_s = get_small(o, "work_s");
  t.change_s = get_small(o, "change_s");
  t.show_s = get_small(o, "show_s");
  t.warm_up_s = get_small(o, "warm_up_s");
  t.lead_in_s = get_small(o, "lead_in_s");
  t.cool_down_s = get_small(o, "cool_down_s");
  for (const json::value& v : get_array(o, "breaks"))
    if (v.is_object())
      t.breaks.push_back(
          {.after_slot = get_small(v.get_object(), "after_slot"), .seconds = get_small(v.get_object(), "s")});
  return t;
}

json::object json_of(const StationView& s) {
  json::array offers;
  for (const int hg : s.offers_hg) offers.emplace_back(hg);
  json::array closed;
  for (const SlotRange r : s.closed) closed.emplace_back(json_of(r));
  return {{"id", s.id},     {"letter", s.letter}, {"exercise", s.exercise},     {"capacity", s.capacity},
          {"x_cm", s.x_cm}, {"y_cm", s.y_cm},     {"offers_hg", offers},        {"reps", s.reps},
          {"rir", s.rir},   {"hold", s.hold},     {"closed_now", s.closed_now}, {"closed", closed}};
}

json::array json_of(const std::vector<StationView>& all) {
  json::array out;
  for (const StationView& s : all) out.emplace_back(json_of(s));
  return out;
}

StationView station_from(const json::object& o) {
  StationView s;
  s.id = get_string(o, "id");
  s.letter = get_string(o, "letter");
  s.exercise = get_string(o, "exercise");
  s.capacity = get_small(o, "capacity", 1);
  s.x_cm = get_small(o, "x_cm");
  s.y_cm = get_small(o, "y_cm");
  for (const json::value& v : get_array(o, "offers_hg")) s.offers_hg.push_back(as_int(int_of(v, 0)));
  s.reps = get_small(o, "reps");
  s.rir = get_small(o, "rir");
  s.hold = get_bool(o, "hold");
  s.closed_now = get_bool(o, "closed_now");
  for (const json::value& v : get_array(o, "closed"))
    if (v.is_array()) s.closed.push_back(range_from(v.get_array()));
  return s;
}

std::vector<StationView> stations_from(const json::array& all) {
  std::vector<StationView> out;
  for (const json::value& v : all)
    if (v.is_object()) out.push_back(station_from(v.get_object()));
  return out;
}

json::object json_of(const Cost& cost, bool with_moved) {
  json::object out;
  for (const Component c : components)
    if (with_moved || c != Component::moved) out[id_of(c)] = cost[c];
  return out;
}

Cost cost_from(const json::object& o) {
  Cost cost;
  for (const Component c : components) cost[c] = get_int(o, id_of(c));
  return cost;
}

json::array proven_of(int proven, bool with_moved) {
  json::array out;
  for (const Component c : components) {
    if (c == Component::moved && !with_moved) continue;
    if (static_cast<int>(out.size()) == proven) break;
    out.emplace_back(id_of(c));
  }
  return out;
}

json::object sheet_body(const RunSheet& s, const std::vector<StationView>& stations) {
  json::array rows;
  for (const RunSheetRow& r : s.rows) {
    json::array at;
    for (const std::string& id : r.stations) at.emplace_back(id.empty() ? json::value() : json::value(id));
    rows.push_back({{"member", r.member}, {"stations", at}});
  }
  return {{"version", s.version},         {"at_slot", s.at_slot},        {"style", id_of(s.style)},
          {"ring", json_of(s.ring)},      {"timing", json_of(s.timing)}, {"rows", rows},
          {"stations", json_of(stations)}};
}

json::object sheet_words(const RunSheet& s, std::string_view change) {
  const bool repair = s.at_slot > 0;
  return {{"cost", json_of(s.cost, repair)},
          {"bound", json_of(s.bound, repair)},
          {"proven", proven_of(s.proven, repair)},
          {"reasons", json_of(s.reasons)},
          {"change", change}};
}

RunSheet sheet_from(const json::object& body, const json::object& words) {
  RunSheet s;
  s.version = get_small(body, "version");
  s.at_slot = get_small(body, "at_slot");
  s.style = style_from(get_string(body, "style")).value_or(Style::free);
  s.ring = get_strings(body, "ring");
  s.timing = timing_from(get_object(body, "timing"));
  for (const json::value& v : get_array(body, "rows"))
    if (v.is_object())
      s.rows.push_back({.member = get_string(v.get_object(), "member"),
                        .stations = get_strings(v.get_object(), "stations")});
  s.cost = cost_from(get_object(words, "cost"));
  s.bound = cost_from(get_object(words, "bound"));
  s.proven = static_cast<int>(get_array(words, "proven").size());
  s.reasons = get_strings(words, "reasons");
  return s;
}

json::object json_of(const SetRecord& r) {
  json::object out{{"record", r.id}, {"member", r.member}, {"station", r.station}, {"exercise", r.exercise},
                   {"slot", r.slot}, {"done", r.done},     {"reps", r.reps}};
  if (r.load_hg) out["load_hg"] = *r.load_hg;
  if (r.rir) out["rir"] = *r.rir;
  return out;
}

SetRecord record_from(const json::object& o) {
  SetRecord r;
  r.id = get_string(o, "record");
  r.member = get_string(o, "member");
  r.station = get_string(o, "station");
  r.exercise = get_string(o, "exercise");
  r.slot = get_small(o, "slot");
  r.done = get_bool(o, "done", true);
  r.reps = get_small(o, "reps");
  if (o.contains("load_hg")) r.load_hg = get_small(o, "load_hg");
  if (o.contains("rir")) r.rir = get_small(o, "rir");
  return r;
}

void merge(json::object& into, const json::object& from) {
  for (const auto& [key, value] : from) {
    json::value* here = into.if_contains(key);
    if (here && here->is_object() && value.is_object())
      merge(here->get_object(), value.get_object());
    else
      into.insert_or_assign(key, value);
  }
}

}  // namespace floorwheel::wire
