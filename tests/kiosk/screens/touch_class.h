// SPDX-License-Identifier: GPL-3.0-or-later
// A small class for the tests of the touch screen: three stations, a waiting slot, a body-weight hold, a
// member with a substitute, a guest. Two laps of a ring, so that a station comes round again.
#pragma once

#include "kiosk/wire/hall.h"

namespace floorwheel::test {

inline constexpr std::int64_t work_ms = 40'000;
inline constexpr std::int64_t change_ms = 20'000;

inline wire::StationView station(std::string id, std::string exercise, std::string name) {
  wire::StationView s;
  s.id = s.letter = std::move(id);
  s.exercise = std::move(exercise);
  s.exercise_name = std::move(name);
  return s;
}

inline wire::MemberView member(std::string id, std::string alias) {
  wire::MemberView m;
  m.id = std::move(id);
  m.shown_as = std::move(alias);
  m.expected = true;
  return m;
}

inline wire::Hall touch_hall() {
  wire::ClassView c;
  c.id = "11111111-1111-4111-8111-111111111111";
  c.name = "Test evening";
  c.start = "2026-03-05T18:30:00+01:00";
  c.length_s = 2400;
  c.open = true;
  wire::StationView a = station("A", "goblet-squat", "Goblet squat");
  a.offers_hg = {80, 120, 160, 200};
  a.reps = 12;
  a.rir = 2;
  wire::StationView b = station("B", "plank", "Plank");
  b.reps = 30;
  b.rir = 1;
  b.hold = true;
  wire::StationView d = station("C", "seated-row", "Seated row");
  d.offers_hg = {100, 150, 225};
  d.reps = 10;
  d.rir = 3;
  c.stations = {a, b, d};

  wire::MemberView ana = member("m1", "Ana P.");
  ana.loads_hg = {{"A", 160}};
  wire::MemberView zoe = member("m2", "Zoë T.");
  zoe.exercises = {{"C", "inverted-row"}};
  wire::MemberView guest = member("G1", "G1");
  guest.guest = true;
  guest.expected = false;
  const wire::MemberView ben = member("m3", "Ben");  // has no row in the sheet
  c.members = {ana, zoe, ben, guest};

  c.sheet.version = 1;
  c.sheet.ring = {"A", "B", "C"};
  c.sheet.timing.slots = 6;
  c.sheet.timing.laps = 2;
  c.sheet.timing.lead_in_s = 20;
  c.sheet.rows = {{"m1", {"A", "B", "", "A", "B", "C"}},
                  {"m2", {"B", "C", "A", "B", "C", "A"}},
                  {"G1", {"C", "A", "B", "C", "A", ""}}};
  wire::Hall hall;
  hall.exercise_names = {{"inverted-row", "Inverted row"}};
  hall.current = c.id;
  hall.classes.emplace(c.id, std::move(c));
  return hall;
}

inline const wire::ClassView& the_class(const wire::Hall& hall) { return hall.classes.begin()->second; }
inline wire::ClassView& the_class(wire::Hall& hall) { return hall.classes.begin()->second; }

/// The class started at 0 of the class clock; slot t works from 20 s + (t - 1) minutes.
inline void start(wire::Hall& hall) {
  auto& c = the_class(hall);
  wire::apply_start(c.clock, c.sheet.timing, 0);
}
inline std::int64_t work_at(int slot, std::int64_t in_ms = 0) {
  return 20'000 + (slot - 1) * (work_ms + change_ms) + in_ms;
}
inline std::int64_t change_at(int slot, std::int64_t in_ms = 0) { return work_at(slot, work_ms + in_ms); }

}  // namespace floorwheel::test
