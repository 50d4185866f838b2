// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/certificate_facts.h"

#include <algorithm>
#include <cstdlib>

#include "scheduler/rotation/audit.h"

namespace floorwheel::certify {
namespace {

int leg_cm(const StationSpec& a, const StationSpec& b) {
  const std::int64_t dx = std::int64_t{a.x_cm} - b.x_cm;
  const std::int64_t dy = std::int64_t{a.y_cm} - b.y_cm;
  const std::int64_t square = dx * dx + dy * dy;
  // Newton's steps come down to the whole root; (root + 1/2)² lies between whole numbers, so nothing is a
  // tie.
  std::int64_t root = std::abs(dx) + std::abs(dy);
  while (root > 0 && root * root > square) root = (root + square / root) / 2;
  return static_cast<int>(square > root * root + root ? root + 1 : root);
}

bool stands_in(const std::vector<std::string>& list, const std::string& id) {
  return std::find(list.begin(), list.end(), id) != list.end();
}

}  // namespace

bool Person::like(const Person& o) const {
  if (first != o.first || last != o.last || recovery_s != o.recovery_s || list != o.list) return false;
  return std::all_of(list.begin(), list.end(), [&](int s) {
    return primary[at(s)] == o.primary[at(s)] && assisting[at(s)] == o.assisting[at(s)];
  });
}

Facts::Facts(const ClassSpec& c, int slots_given)
    : spec(c),
      slots(slots_given),
      stations(static_cast<int>(c.stations.size())),
      kinds(static_cast<int>(c.equipment.size())) {
  for (const StationSpec& s : c.stations) {
    takes.emplace_back();
    int most = s.capacity;
    for (int e = 0; e < kinds; ++e)
      if (stands_in(s.equipment, c.equipment[at(e)].id)) {
        takes.back().push_back(e);
        most = std::min(most, c.equipment[at(e)].units);
      }
    places_.emplace_back(at(slots), most);
    for (int t = 1; t <= slots; ++t)
      for (const SlotRange& r : s.closed)
        if (r.contains(t)) places_.back()[at(t - 1)] = 0;
    walk.emplace_back();
    for (const StationSpec& other : c.stations) walk.back().push_back(leg_cm(s, other));
  }
  for (int m = 0; m < static_cast<int>(c.members.size()); ++m) {
    const MemberSpec& who = c.members[at(m)];
    Person p;
    p.first = std::max(who.present.first, 1) - 1;
    p.last = std::min(who.present.last, slots) - 1;
    p.recovery_s = c.recovery_s[static_cast<std::size_t>(who.level)];
    for (int s = 0; s < stations; ++s) {
      const StationSpec& station = c.stations[at(s)];
      const Exercise* e = audited_exercise(c, m, s);
      p.primary.push_back(e ? e->primary.bits() : 0);
      p.assisting.push_back(e ? e->assisting.bits() : 0);
      const auto load = who.loads_hg.find(station.id);
      const bool counts = e && e->id == station.exercise && load != who.loads_hg.end();
      p.load_hg.push_back(counts ? load->second : -1);
      if (e && (!who.required || stands_in(*who.required, station.id))) p.list.push_back(s);
    }
    people.push_back(std::move(p));
  }
}

std::int64_t Facts::forced() const {
  std::int64_t sum = 0;
  for (const Person& p : people) sum += forced(p);
  return sum;
}

bool Facts::too_near(int recovery_s, int u, int t) const {
  std::int64_t gap = std::int64_t{t - u} * spec.change_s + std::int64_t{t - u - 1} * spec.work_s;
  for (const BreakSpec& b : spec.breaks)
    if (u + 1 <= b.after_slot && b.after_slot <= t) gap += b.seconds;
  return gap < recovery_s;
}

std::vector<Component> order() {
  std::vector<Component> out;
  for (Component c : components)
    if (c != Component::moved) out.push_back(c);
  return out;
}

ClaimVerdict reached(const Claim& claim, std::int64_t least) {
  const std::string n = std::to_string(least);
  if (claim.bound <= least) return {Verdict::holds, "at least " + n + " recomputed", least};
  return {Verdict::fails, "recomputed is no more than " + n, least};
}

std::int64_t beyond_given(const Certificate& all, const Claim& claim, Wide weighed) {
  for (Component c : order()) {
    if (c == claim.component) break;
    weighed -= Wide{claim.proof.prices.weights[c]} * all.cost[c];
  }
  const Wide scale = claim.proof.prices.scale;
  Wide least = weighed / scale;
  if (least * scale < weighed) ++least;  // division goes towards 0
  return static_cast<std::int64_t>(std::clamp<Wide>(least, 0, INT64_MAX));
}

}  // namespace floorwheel::certify
