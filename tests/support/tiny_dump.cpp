// SPDX-License-Identifier: GPL-3.0-or-later
// Tiny cases in words like those of the class file, so that a failure can be read and typed in.
#include "tests/support/tiny_cases.h"

namespace floorwheel::tiny {
namespace {

std::string range(const SlotRange& r) {
  if (r.last == SlotRange::to_the_end) return "[" + std::to_string(r.first) + "]";
  return "[" + std::to_string(r.first) + ", " + std::to_string(r.last) + "]";
}

template <class List, class Word>
std::string list(const List& items, Word word) {
  std::string out = "[";
  for (const auto& item : items) out += (out.size() > 1 ? ", " : "") + word(item);
  return out + "]";
}

std::string list(const std::vector<std::string>& ids) {
  return list(ids, [](const std::string& id) { return id; });
}

template <class E>
std::string list(EnumSet<E> set, int count) {
  std::vector<std::string> ids;
  for (int i = 0; i < count; ++i)
    if (set.contains(static_cast<E>(i))) ids.emplace_back(id_of(static_cast<E>(i)));
  return list(ids);
}

std::string number(const char* key, int value) {
  return std::string(key) + " = " + std::to_string(value) + "  ";
}

std::string station_text(const StationSpec& s) {
  return "station " + s.id + "  exercise = " + s.exercise + "  substitutes = " + list(s.substitutes) + "  " +
         number("capacity", s.capacity) + "equipment = " + list(s.equipment) + "  at_cm = [" +
         std::to_string(s.x_cm) + ", " + std::to_string(s.y_cm) + "]  closed = " + list(s.closed, range) +
         "\n";
}

std::string member_text(const MemberSpec& m) {
  std::string out = "member " + m.id + (m.guest ? " (guest)" : "") +
                    "  level = " + std::string(id_of(m.level)) + "  present = " + range(m.present);
  if (!m.excluded_groups.empty()) out += "  excluded_groups = " + list(m.excluded_groups, group_count);
  if (!m.excluded_features.empty())
    out += "  excluded_features = " + list(m.excluded_features, feature_count);
  if (!m.excluded_exercises.empty()) out += "  excluded_exercises = " + list(m.excluded_exercises);
  if (!m.allowed_exercises.empty()) out += "  allowed_exercises = " + list(m.allowed_exercises);
  if (m.required) out += "  required = " + list(*m.required);
  const auto load = [](const auto& l) { return l.first + " = " + std::to_string(l.second); };
  if (!m.loads_hg.empty()) out += "  loads_hg = " + list(m.loads_hg, load);
  return out + "\n";
}

}  // namespace

std::string dump(const ClassSpec& c, int slots) {
  std::string out = number("slots", slots) + number("laps", c.laps) + number("work_s", c.work_s) +
                    number("change_s", c.change_s) + "style = " + std::string(id_of(c.style)) +
                    "  recovery_s = " + list(c.recovery_s, [](int s) { return std::to_string(s); }) + "\n";
  for (const BreakSpec& b : c.breaks)
    out += "break  " + number("after_slot", b.after_slot) + number("s", b.seconds) + "\n";
  for (const EquipmentSpec& e : c.equipment)
    out += "equipment " + e.id + "  " + number("units", e.units) + "\n";
  for (const StationSpec& s : c.stations) out += station_text(s);
  for (const auto& [id, e] : c.exercises)
    out += "exercise " + id + "  primary = " + list(e.primary, group_count) +
           "  assisting = " + list(e.assisting, group_count) +
           "  features = " + list(e.features, feature_count) + "\n";
  for (const MemberSpec& m : c.members) out += member_text(m);
  for (const PairSpec& p : c.pairs)
    out += "pair [" + p.a + ", " + p.b + "]  rule = " + std::string(id_of(p.rule)) + "\n";
  return out;
}

std::string dump(const EarlierSheet& sheet) {
  std::string out = "run sheet  " + number("slots", sheet.slots) +
                    "style = " + std::string(id_of(sheet.style)) + "  ring = " + list(sheet.ring) + "\n";
  for (const RunSheetRow& row : sheet.rows) {
    out += "  " + row.member + ":";
    for (const std::string& s : row.stations) out += s.empty() ? " -" : " " + s;
    out += "\n";
  }
  return out;
}

std::string dump(const ClassSpec& c, const Rotation& r) {
  const auto id = [&](StationIndex s) {
    return s == nowhere ? "-" : c.stations[static_cast<std::size_t>(s)].id;
  };
  std::string out =
      "rotation  style = " + std::string(id_of(r.style)) + "  ring = " + list(r.ring, id) + "\n";
  for (std::size_t m = 0; m < r.at.size(); ++m) {
    out += "  " + c.members[m].id + ":";
    for (StationIndex s : r.at[m]) out += " " + id(s);
    out += "\n";
  }
  return out;
}

std::string dump(const Cost& cost) {
  std::string out;
  for (Component c : components) out += number(std::string(id_of(c)).c_str(), static_cast<int>(cost[c]));
  return out;
}

}  // namespace floorwheel::tiny
