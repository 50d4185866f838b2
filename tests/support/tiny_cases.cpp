// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/tiny_cases.h"

#include <algorithm>
#include <cstdlib>
#include <functional>

#include "tests/support/brute_force.h"
#include "tests/support/builders.h"

namespace floorwheel::tiny {

std::uint64_t Draw::word() {
  std::uint64_t z = (state_ += 0x9e3779b97f4a7c15U);
  z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
  z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
  return z ^ (z >> 31U);
}

namespace {

constexpr std::array few_groups{Group::chest, Group::quadriceps, Group::biceps, Group::abs};
constexpr std::array few_features{Feature::floor, Feature::overhead};

Group a_group(Draw& d) { return few_groups[static_cast<std::size_t>(d.below(4))]; }

Exercise an_exercise(Draw& d, const std::string& id) {
  Exercise e = build::exercise(id, {a_group(d)});
  if (d.one_in(4)) e.primary.insert(a_group(d));
  if (d.one_in(2)) e.assisting.insert(a_group(d));
  for (Group g : few_groups)
    if (e.primary.contains(g)) e.assisting.erase(g);
  if (d.one_in(3)) e.features.insert(few_features[static_cast<std::size_t>(d.below(2))]);
  return e;
}

SlotRange a_range(Draw& d, int slots) {
  const int first = d.from(1, slots);
  if (d.one_in(3)) return {first, SlotRange::to_the_end};
  return {first, d.from(first, slots + (d.one_in(4) ? 1 : 0))};
}

void add_station(Draw& d, ClassSpec& c, int slots) {
  StationSpec s;
  s.id = std::string(1, static_cast<char>('A' + static_cast<int>(c.stations.size())));
  s.exercise = "do-" + s.id;
  c.exercises[s.exercise] = an_exercise(d, s.exercise);
  for (int i = d.one_in(3) ? d.from(1, 2) : 0; i > 0; --i) {
    const std::string id = "or-" + s.id + std::to_string(i);
    c.exercises[id] = an_exercise(d, id);
    s.substitutes.push_back(id);
  }
  s.capacity = d.one_in(2) ? 1 : d.from(2, 3);
  for (const EquipmentSpec& kind : c.equipment)
    if (d.one_in(3)) s.equipment.push_back(kind.id);
  s.x_cm = d.below(600);
  s.y_cm = d.below(600);
  if (d.one_in(5)) s.closed.push_back(a_range(d, slots));
  c.stations.push_back(s);
}

std::vector<std::string> some_stations(Draw& d, const ClassSpec& c) {
  std::vector<std::string> ids;
  for (const StationSpec& s : c.stations)
    if (!d.one_in(3)) ids.push_back(s.id);
  if (ids.empty() && !d.one_in(8)) ids.push_back(c.stations.front().id);
  return ids;
}

const std::string& some_exercise(Draw& d, const ClassSpec& c) {
  return std::next(c.exercises.begin(), d.below(static_cast<int>(c.exercises.size())))->first;
}

void add_member(Draw& d, ClassSpec& c, int slots, const std::string& id) {
  MemberSpec& m = build::member(c, id, static_cast<Level>(d.below(3)));
  if (d.one_in(3)) m.present = a_range(d, slots);
  if (d.one_in(6)) m.excluded_groups.insert(a_group(d));
  if (d.one_in(5)) m.excluded_features.insert(few_features[static_cast<std::size_t>(d.below(2))]);
  if (d.one_in(5)) m.excluded_exercises.push_back(some_exercise(d, c));
  if (d.one_in(4)) m.allowed_exercises.push_back(some_exercise(d, c));
  if (d.one_in(4)) m.required = some_stations(d, c);
  for (const StationSpec& s : c.stations)
    if (d.one_in(2)) m.loads_hg[s.id] = 20 * d.below(8);
}

void add_pairs(Draw& d, ClassSpec& c, int named) {
  for (int a = 0; a < named; ++a)
    for (int b = a + 1; b < named; ++b)
      if (d.one_in(4))
        c.pairs.push_back({c.members[static_cast<std::size_t>(a)].id,
                           c.members[static_cast<std::size_t>(b)].id,
                           d.one_in(3) ? PairRule::apart : PairRule::together});
}

ClassSpec a_class(Draw& d, int stations, int members, int slots) {
  ClassSpec c;
  c.name = "tiny";
  c.laps = d.one_in(4) ? 2 : 1;
  c.work_s = d.from(20, 60);
  c.change_s = d.from(10, 30);
  c.style = static_cast<Style>(d.below(3));
  if (d.one_in(3)) c.recovery_s = {d.from(0, 100), d.from(30, 150), d.from(60, 300)};
  if (d.one_in(3)) c.breaks.push_back({d.from(1, slots), d.from(10, 120)});
  for (int i = d.one_in(3) ? d.from(1, 2) : 0; i > 0; --i)
    c.equipment.push_back({"kind" + std::to_string(i), d.one_in(8) ? 0 : d.from(1, 2)});
  for (int s = 0; s < stations; ++s) add_station(d, c, slots);
  const int guests = d.one_in(4) ? 1 : 0;
  const int named = members - guests;
  for (int m = 1; m <= named; ++m) add_member(d, c, slots, "m" + std::to_string(m));
  add_pairs(d, c, named);
  add_guests(c, guests);
  return c;
}

double work(const ClassSpec& c, int slots) {
  return brute::combinations({c, slots}) +
         brute::combinations({.spec = c, .slots = slots, .style = Style::ring});
}

// ---- what can happen in the middle of a class

using Happening = std::function<std::string(Draw&, ClassSpec&, int& slots, int at_slot)>;

MemberSpec& somebody(Draw& d, ClassSpec& c) {
  return c.members[static_cast<std::size_t>(d.below(static_cast<int>(c.members.size())))];
}
StationSpec& some_station(Draw& d, ClassSpec& c) {
  return c.stations[static_cast<std::size_t>(d.below(static_cast<int>(c.stations.size())))];
}

std::string somebody_comes(Draw& d, ClassSpec& c, int& slots, int k) {
  std::string id = "late";
  while (std::any_of(c.members.begin(), c.members.end(), [&](const MemberSpec& m) { return m.id == id; }))
    id += "r";
  add_member(d, c, slots, id);
  c.members.back().present = {k, SlotRange::to_the_end};
  return id + " comes";
}
std::string somebody_was_late(Draw& d, ClassSpec& c, int&, int k) {
  MemberSpec& m = somebody(d, c);
  if (m.present.last < k) return "nothing";
  m.present.first = k;
  return m.id + " comes late";
}
std::string somebody_leaves(Draw& d, ClassSpec& c, int&, int k) {
  MemberSpec& m = somebody(d, c);
  if (k == 1 || m.present.first >= k) return "nothing";
  m.present.last = std::min(m.present.last, k - 1);
  return m.id + " leaves";
}
std::string a_row_drops_out(Draw& d, ClassSpec& c, int&, int) {
  if (c.members.size() < 2) return "nothing";
  const std::string id = somebody(d, c).id;
  std::erase_if(c.members, [&](const MemberSpec& m) { return m.id == id; });
  std::erase_if(c.pairs, [&](const PairSpec& p) { return p.a == id || p.b == id; });
  return id + " drops out of the file";
}
std::string a_station_closes(Draw& d, ClassSpec& c, int&, int k) {
  StationSpec& s = some_station(d, c);
  s.closed.push_back({k, SlotRange::to_the_end});
  return s.id + " closes";
}
std::string a_station_opens(Draw& d, ClassSpec& c, int&, int) {
  StationSpec& s = some_station(d, c);
  s.closed.clear();
  return s.id + " opens";
}
std::string its_exercise_changes(Draw& d, ClassSpec& c, int&, int) {
  StationSpec& s = some_station(d, c);
  s.exercise = "new-" + s.id;
  c.exercises[s.exercise] = an_exercise(d, s.exercise);
  return s.id + " gets another exercise";
}
std::string equipment_runs_short(Draw& d, ClassSpec& c, int&, int) {
  if (c.equipment.empty()) return "nothing";
  EquipmentSpec& e = c.equipment[static_cast<std::size_t>(d.below(static_cast<int>(c.equipment.size())))];
  e.units = std::max(0, e.units - 1);
  return e.id + " runs short";
}
std::string an_exercise_becomes_excluded(Draw& d, ClassSpec& c, int&, int) {
  MemberSpec& m = somebody(d, c);
  m.excluded_exercises.push_back(some_exercise(d, c));
  return m.id + " may not do " + m.excluded_exercises.back();
}
std::string a_slot_is_added(Draw&, ClassSpec&, int& slots, int) {
  ++slots;
  return "a slot is added";
}
std::string a_slot_is_dropped(Draw&, ClassSpec&, int& slots, int k) {
  if (slots < k || slots < 2) return "nothing";
  --slots;
  return "a slot is dropped";
}

}  // namespace

Case make_case(std::uint64_t seed, double most) {
  Draw d(seed);
  for (;;) {
    const int members = d.from(1, 4);
    const int stations = d.from(1, 4);
    const int slots = d.from(1, 5);
    Case out{a_class(d, stations, members, slots), slots};
    if (work(out.spec, out.slots) <= most) return out;
  }
}

ClassSpec make_class(std::uint64_t seed, int stations, int members, int slots) {
  Draw d(seed);
  return a_class(d, stations, members, slots);
}

std::string happen(Draw& d, ClassSpec& c, int& slots, int at_slot) {
  static const std::array<Happening, 11> happenings{
      somebody_comes,       somebody_was_late,    somebody_leaves,
      a_row_drops_out,      a_station_closes,     a_station_opens,
      its_exercise_changes, equipment_runs_short, an_exercise_becomes_excluded,
      a_slot_is_added,      a_slot_is_dropped};
  const auto& happening = happenings[static_cast<std::size_t>(d.below(static_cast<int>(happenings.size())))];
  return happening(d, c, slots, at_slot);
}

Change make_change(std::uint64_t seed, double most) {
  Draw d(seed ^ 0x5eedU);
  for (std::uint64_t next = d.word();; next = d.word()) {
    const Case was = make_case(next, most);
    if (!brute::refusals(was.spec, was.slots, false).empty()) continue;
    const Style style = d.one_in(2) ? Style::ring : Style::free;
    const brute::Best old = brute::best({.spec = was.spec, .slots = was.slots, .style = style});
    Change out;
    out.spec = was.spec;
    out.slots = was.slots;
    out.before = build::sheet(was.spec, old.rotation);
    out.at_slot = d.from(1, was.slots);
    for (int i = d.one_in(3) ? 2 : 1; i > 0; --i)
      out.what += (out.what.empty() ? "" : ", then ") + happen(d, out.spec, out.slots, out.at_slot);
    const brute::Question q{
        .spec = out.spec, .slots = out.slots, .at_slot = out.at_slot, .before = &out.before};
    if (brute::combinations(q) <= most) return out;
  }
}

int cases_wanted(int by_default) {
  if (const char* wanted = std::getenv("FLOORWHEEL_TINY_CASES")) return std::atoi(wanted);
  return std::getenv("FLOORWHEEL_LONG") != nullptr ? 100 * by_default : by_default;
}

double most_wanted(double by_default) {
  const char* wanted = std::getenv("FLOORWHEEL_TINY_MOST");
  return wanted != nullptr ? std::atof(wanted) : by_default;
}

std::uint64_t first_seed() {
  const char* wanted = std::getenv("FLOORWHEEL_TINY_SEED");
  if (wanted == nullptr) wanted = std::getenv("FLOORWHEEL_SEED");
  return wanted != nullptr ? std::strtoull(wanted, nullptr, 10) : 1;
}

}  // namespace floorwheel::tiny
