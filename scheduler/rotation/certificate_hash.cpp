// SPDX-License-Identifier: GPL-3.0-or-later
// The text that the hash of a class is taken of: one line an item, `key=value` joined by blanks, lists by
// commas, sets of groups and features as numbers of their bits, in the order of the class file. Exercises
// that stations and substitutes name follow in the order of their ids.
#include <set>
#include <string>

#include "scheduler/rotation/certificate.h"

namespace floorwheel {
namespace {

class Text {
 public:
  Text& line(std::string_view what) {
    out_ += '\n';
    out_ += what;
    return *this;
  }
  Text& add(std::string_view key, std::string_view value) {
    // The length keeps two texts apart that would join to the same.
    out_ += ' ';
    out_ += key;
    out_ += '=' + std::to_string(value.size()) + ':';
    out_ += value;
    return *this;
  }
  Text& add(std::string_view key, std::int64_t value) { return add(key, std::to_string(value)); }
  template <class List>
  Text& all(std::string_view key, const List& list) {
    add(key, static_cast<std::int64_t>(list.size()));
    for (const std::string& item : list) add(key, item);
    return *this;
  }
  [[nodiscard]] const std::string& text() const { return out_; }

 private:
  std::string out_ = "floorwheel class 1";
};

std::string canonical(const ClassSpec& c) {
  Text out;
  out.line("class").add("laps", c.laps).add("work_s", c.work_s).add("change_s", c.change_s);
  for (int s : c.recovery_s) out.add("recovery_s", s);
  for (const BreakSpec& b : c.breaks) out.line("break").add("after", b.after_slot).add("s", b.seconds);
  for (const EquipmentSpec& e : c.equipment) out.line("equipment").add("id", e.id).add("units", e.units);
  std::set<std::string> exercises;
  for (const StationSpec& s : c.stations) {
    out.line("station").add("id", s.id).add("exercise", s.exercise).all("substitutes", s.substitutes);
    out.add("capacity", s.capacity).all("equipment", s.equipment).add("x_cm", s.x_cm).add("y_cm", s.y_cm);
    for (const SlotRange& r : s.closed) out.add("from", r.first).add("to", r.last);
    exercises.insert(s.exercise);
    exercises.insert(s.substitutes.begin(), s.substitutes.end());
  }
  for (const MemberSpec& m : c.members) {
    out.line("member").add("id", m.id).add("level", id_of(m.level));
    out.add("from", m.present.first).add("to", m.present.last);
    out.add("groups", m.excluded_groups.bits()).add("features", m.excluded_features.bits());
    out.all("excluded", m.excluded_exercises).all("allowed", m.allowed_exercises);
    if (m.required) out.all("required", *m.required);
    for (const auto& [station, load] : m.loads_hg) out.add(station, load);
  }
  for (const PairSpec& p : c.pairs) out.line(id_of(p.rule)).add("a", p.a).add("b", p.b);
  for (const std::string& id : exercises) {
    const auto e = c.exercises.find(id);
    if (e == c.exercises.end()) continue;
    out.line("exercise").add("id", id).add("primary", e->second.primary.bits());
    out.add("assisting", e->second.assisting.bits()).add("features", e->second.features.bits());
  }
  return out.text();
}

}  // namespace

std::uint64_t class_hash(const ClassSpec& c) {
  std::uint64_t hash = 0xcbf29ce484222325U;
  for (const char byte : canonical(c)) {
    hash ^= static_cast<unsigned char>(byte);
    hash *= 0x100000001b3U;
  }
  return hash;
}

}  // namespace floorwheel
