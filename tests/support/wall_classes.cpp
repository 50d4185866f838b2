// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/wall_classes.h"

#include <cstdlib>

namespace floorwheel::support {
namespace {

const std::vector<std::string> exercises{
    "Goblet squat", "Seated row", "Press-up",    "Side plank", "Deadlift",     "Shoulder press",
    "Split squat",  "Pull-down",  "Bench press", "Dead bug",   "Leg curl",     "Biceps curl",
    "Step-up",      "Face pull",  "Calf raise",  "Hip thrust", "Farmer carry", "Box squat"};

}  // namespace

const std::vector<std::string>& invented_aliases() {
  static const std::vector<std::string> all{
      "Robin K.", "Ana P.",   "Sam O.",    "Mirela S.", "Kwame O.", "Lena W.",  "Tomás R.", "Yuki H.",
      "Priya N.", "Jonas B.", "Fatima A.", "Erik L.",   "Chloe D.", "Bilal M.", "Ines C.",  "Otto G.",
      "Nadia V.", "Ruth E.",  "Pavel Z.",  "Zoë T.",    "Hana M.",  "Greta U.", "Leo F.",   "Ivo D."};
  return all;
}

wire::ClassView wall_class(const WallClass& w) {
  wire::ClassView c;
  c.id = "class";
  c.name = "Thursday evening ring";
  c.start = "2026-03-05T18:30:00+01:00";
  c.open = true;
  ClassSpec letters;
  for (int i = 0; i < w.stations; ++i) {
    wire::StationView s;
    s.id = "station-" + std::to_string(i);
    s.exercise = "exercise-" + std::to_string(i);
    s.exercise_name = exercises[static_cast<std::size_t>(i) % exercises.size()];
    s.capacity = 2;
    s.reps = 12;
    c.stations.push_back(s);
    StationSpec spec;
    spec.id = s.id;
    letters.stations.push_back(spec);
  }
  const std::vector<std::string> names = wall_letters(letters);
  for (std::size_t i = 0; i < names.size(); ++i) c.stations[i].letter = names[i];

  wire::Timing& t = c.timing;
  t.slots = w.slots;
  t.laps = w.laps;
  t.work_s = w.work_s;
  t.change_s = w.change_s;
  t.show_s = w.show_s;
  t.warm_up_s = w.warm_up_s;
  t.lead_in_s = w.lead_in_s;
  t.cool_down_s = w.cool_down_s;
  if (w.break_after > 0) t.breaks.push_back({w.break_after, w.break_s});

  c.sheet.version = 1;
  c.sheet.style = w.ring ? Style::ring : Style::free;
  c.sheet.timing = t;
  if (w.ring)
    for (const wire::StationView& s : c.stations) c.sheet.ring.push_back(s.id);

  // Where each member begins: a place on the ring of stations, or one before it at the waiting place.
  const std::vector<std::string>& aliases = w.aliases.empty() ? invented_aliases() : w.aliases;
  std::vector<int> begins;
  for (int i = 0; i < w.stations; ++i) {
    const int here = w.at_first.empty() ? w.people / w.stations + (i < w.people % w.stations ? 1 : 0)
                                        : w.at_first[static_cast<std::size_t>(i)];
    for (int k = 0; k < here; ++k) begins.push_back(i);
  }
  for (int k = 0; k < w.waiting; ++k) begins.push_back(-1 - k);
  for (std::size_t m = 0; m < begins.size(); ++m) {
    wire::MemberView view;
    view.id = "m" + std::to_string(100 + m);
    view.shown_as = m < aliases.size() ? aliases[m] : "Guest " + std::to_string(m);
    view.here = true;
    c.members.push_back(view);
    RunSheetRow row;
    row.member = view.id;
    const int cycle = w.waiting > 0 ? w.stations + w.waiting : w.stations;
    for (int slot = 0; slot < w.slots; ++slot) {
      // A free rotation steps by a number of its own, coprime or not: all that matters is that it differs.
      const int step = w.ring || w.waiting > 0 ? slot : slot * (3 + 2 * static_cast<int>(m % 4));
      const int at = ((begins[m] + step) % cycle + cycle) % cycle;
      row.stations.push_back(at < w.stations ? c.stations[static_cast<std::size_t>(at)].id : std::string());
    }
    c.sheet.rows.push_back(row);
  }
  return c;
}

wire::Moment moment_in(const std::vector<wire::Segment>& segments, wire::SegmentKind kind, int slot,
                       double in_s) {
  wire::ClassClock clock;
  clock.segments = segments;
  clock.state = wire::Running::running;
  clock.started = true;
  for (const wire::Segment& s : segments) {
    if (s.kind == kind && (slot == 0 || s.slot == slot)) {
      clock.elapsed_ms += static_cast<std::int64_t>(in_s * 1000);
      return wire::moment_at(clock, 0);
    }
    clock.elapsed_ms += s.length_ms;
  }
  std::abort();  // a test that asks for a segment its class does not have
}

}  // namespace floorwheel::support
