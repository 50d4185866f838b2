// SPDX-License-Identifier: GPL-3.0-or-later
// Short makers of classes, rotations and run sheets for tests. Everything is a plain value afterwards and may
// be changed further by hand.
#pragma once

#include <initializer_list>
#include <sstream>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "scheduler/class_spec.h"
#include "scheduler/rotation/rotation.h"

namespace floorwheel::build {

inline Exercise exercise(const std::string& id, GroupSet primary, GroupSet assisting = {},
                         FeatureSet features = {}) {
  Exercise e;
  e.id = id;
  e.name = id;
  e.primary = primary;
  e.assisting = assisting;
  e.features = features;
  return e;
}

/// Adds a station with an exercise of its own ("do-A" at station A) with the groups given.
inline StationSpec& station(ClassSpec& c, const std::string& id, GroupSet primary, int x_cm = 0, int y_cm = 0,
                            GroupSet assisting = {}) {
  c.exercises["do-" + id] = exercise("do-" + id, primary, assisting);
  StationSpec s;
  s.id = id;
  s.exercise = "do-" + id;
  s.x_cm = x_cm;
  s.y_cm = y_cm;
  c.stations.push_back(s);
  return c.stations.back();
}

inline MemberSpec& member(ClassSpec& c, const std::string& id, Level level = Level::advanced) {
  MemberSpec m;
  m.id = id;
  m.shown_as = id;
  m.level = level;
  c.members.push_back(m);
  return c.members.back();
}

inline StationIndex station_index(const ClassSpec& c, const std::string& id) {
  for (std::size_t s = 0; s < c.stations.size(); ++s)
    if (c.stations[s].id == id) return static_cast<StationIndex>(s);
  throw std::invalid_argument("no station " + id);
}

inline std::vector<StationIndex> indices(const ClassSpec& c, const std::string& words) {
  std::vector<StationIndex> out;
  std::istringstream in(words);
  for (std::string id; in >> id;) out.push_back(id == "-" ? nowhere : station_index(c, id));
  return out;
}

/// One string a member, such as "A - B": stations slot by slot, a dash for a slot not worked.
inline Rotation rotation(const ClassSpec& c, const std::vector<std::string>& rows) {
  Rotation r;
  for (const std::string& row : rows) r.at.push_back(indices(c, row));
  r.slots = r.at.empty() ? 0 : static_cast<int>(r.at.front().size());
  return r;
}

inline Rotation ring_rotation(const ClassSpec& c, const std::string& ring,
                              const std::vector<std::string>& rows) {
  Rotation r = rotation(c, rows);
  r.style = Style::ring;
  r.ring = indices(c, ring);
  return r;
}

/// The rotation as a run sheet that a repair can start from.
inline EarlierSheet sheet(const ClassSpec& c, const Rotation& r) {
  const auto id = [&](StationIndex s) {
    return s == nowhere ? std::string() : c.stations[static_cast<std::size_t>(s)].id;
  };
  EarlierSheet out;
  out.slots = r.slots;
  out.style = r.style;
  for (StationIndex s : r.ring) out.ring.push_back(id(s));
  for (std::size_t m = 0; m < r.at.size(); ++m) {
    RunSheetRow row;
    row.member = c.members[m].id;
    for (StationIndex s : r.at[m]) row.stations.push_back(id(s));
    out.rows.push_back(row);
  }
  return out;
}

/// A cost with the components named and 0 elsewhere.
inline Cost cost(std::initializer_list<std::pair<Component, std::int64_t>> parts) {
  Cost out;
  for (const auto& [component, value] : parts) out[component] = value;
  return out;
}

}  // namespace floorwheel::build
