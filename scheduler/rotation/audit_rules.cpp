// SPDX-License-Identifier: GPL-3.0-or-later
// Rules 1 to 6 of the rotation model and, as rule 0, what a repair must leave alone: one function each. Rules
// are judged from the slot of the repair on; laps and ring steps count history in.
#include <algorithm>
#include <set>

#include "scheduler/rotation/audit_facts.h"

namespace floorwheel::audit_detail {
namespace {

std::string in_slot(int t) { return " in slot " + std::to_string(t); }

std::string named(std::string_view station_id) {
  return station_id.empty() ? std::string("nowhere") : "at " + std::string(station_id);
}

std::string range(const SlotRange& r) {
  if (r.last == SlotRange::to_the_end) return "slot " + std::to_string(r.first) + " to the end";
  return "slots " + std::to_string(r.first) + " to " + std::to_string(r.last);
}

void breach(std::vector<Breach>& out, int rule, std::string_view member, std::string_view station, int slot,
            std::string text) {
  out.push_back({rule, std::string(member), std::string(station), slot, std::move(text)});
}

/// Calls judge(m, t, s) for each slot from the first judged one on in which member m works at station s.
template <class Judge>
void for_each_judged_entry(const Facts& f, Judge judge) {
  for (int m = 0; m < f.members; ++m)
    for (int t = f.first_slot; t <= f.slots; ++t)
      if (f.works(m, t)) judge(m, t, f.at(m, t));
}

int members_at(const Facts& f, StationIndex s, int t) {
  int count = 0;
  for (int m = 0; m < f.members; ++m) count += f.at(m, t) == s ? 1 : 0;
  return count;
}

int members_using(const Facts& f, const std::string& equipment, int t) {
  int count = 0;
  for (int m = 0; m < f.members; ++m) {
    if (!f.works(m, t)) continue;
    const auto& taken = f.station(f.at(m, t)).equipment;
    count += std::find(taken.begin(), taken.end(), equipment) != taken.end() ? 1 : 0;
  }
  return count;
}

/// In which lap of member m each worked slot lies, from 1: "a new lap begins at the first worked slot whose
/// station has already been visited in the present lap".
std::vector<int> laps_of(const Facts& f, int m) {
  std::vector<int> laps;
  std::set<StationIndex> visited;
  int lap = 1;
  for (int t : f.worked_slots(m)) {
    if (!visited.insert(f.at(m, t)).second) {
      ++lap;
      visited = {f.at(m, t)};
    }
    laps.push_back(lap);
  }
  return laps;
}

/// One working, at a station that does not occur in the other's row, while the other waits.
bool one_may_wait(const Facts& f, StationIndex works_at, int waiting) {
  return !f.occurs_in_row(works_at, waiting);
}

void judge_together(const Facts& f, int a, int b, int t, std::vector<Breach>& out) {
  if (!f.present(a, t) || !f.present(b, t)) return;
  const StationIndex at_a = f.at(a, t);
  const StationIndex at_b = f.at(b, t);
  if (at_a == at_b) return;
  if (at_b == nowhere && one_may_wait(f, at_a, b)) return;
  if (at_a == nowhere && one_may_wait(f, at_b, a)) return;
  const std::string& id_a = f.member(a).id;
  const std::string& id_b = f.member(b).id;
  const StationIndex seen = at_a != nowhere ? at_a : at_b;
  std::string text = id_a + " and " + id_b + " are held together, but" + in_slot(t) + " " + id_a + " is " +
                     named(f.station_id(at_a)) + " and " + id_b + " is " + named(f.station_id(at_b));
  if (at_a == nowhere || at_b == nowhere)
    text += ", and " + (at_a == nowhere ? id_a : id_b) + " works at " + std::string(f.station_id(seen)) +
            " in another slot";
  breach(out, 5, id_a, f.station_id(seen), t, text + ".");
}

void judge_apart(const Facts& f, int a, int b, int t, std::vector<Breach>& out) {
  if (!f.works(a, t) || f.at(a, t) != f.at(b, t)) return;
  const std::string& id_a = f.member(a).id;
  const std::string& id_b = f.member(b).id;
  breach(out, 5, id_a, f.station_id(f.at(a, t)), t,
         id_a + " and " + id_b + " are held apart, but both are " + named(f.station_id(f.at(a, t))) +
             in_slot(t) + ".");
}

bool is_order_of_all_stations(const Facts& f) {
  std::vector<StationIndex> sorted = f.rotation.ring;
  std::sort(sorted.begin(), sorted.end());
  if (static_cast<int>(sorted.size()) != f.stations) return false;
  for (StationIndex s = 0; s < f.stations; ++s)
    if (sorted[static_cast<std::size_t>(s)] != s) return false;
  return true;
}

/// Whether the ring has the earlier ring's stations in the earlier ring's cyclic order.
bool keeps_order_of(const Facts& f, std::vector<std::string> earlier) {
  std::vector<std::string> now;
  for (StationIndex s : f.rotation.ring)
    if (std::find(earlier.begin(), earlier.end(), f.station(s).id) != earlier.end())
      now.push_back(f.station(s).id);
  if (now.empty() || now.size() != earlier.size()) return false;
  std::rotate(earlier.begin(), std::find(earlier.begin(), earlier.end(), now.front()), earlier.end());
  return now == earlier;
}

void judge_kept_ring(const Facts& f, std::vector<Breach>& out) {
  if (f.rotation.style != Style::ring) return;
  if (f.before->style != Style::ring)
    breach(out, 0, "", "", 0, "The earlier run sheet is a free rotation, and a free rotation stays free.");
  else if (!keeps_order_of(f, f.before->ring))
    breach(out, 0, "", "", 0, "The ring does not have the order of the earlier run sheet's ring.");
}

}  // namespace

/// Rule 0: slots before the repair equal the earlier run sheet, and are null where the member was not
/// present.
void judge_history(const Facts& f, std::vector<Breach>& out) {
  if (f.before == nullptr) return;
  judge_kept_ring(f, out);
  for (int m = 0; m < f.members; ++m) {
    const RunSheetRow* row = f.earlier_row(m);
    for (int t = 1; t < f.first_slot && t <= f.slots; ++t) {
      const bool was_there = row != nullptr && f.present(m, t);
      const std::string_view wanted = was_there ? Facts::earlier_station(*row, t) : std::string_view();
      const std::string_view found = f.station_id(f.at(m, t));
      if (found == wanted) continue;
      const std::string& id = f.member(m).id;
      const std::string reason = row == nullptr     ? " has no row in the earlier run sheet and was nowhere"
                                 : !f.present(m, t) ? " was not present and so was nowhere"
                                                    : " was " + named(wanted) + " by the earlier run sheet";
      breach(out, 0, id, found, t,
             "Slot " + std::to_string(t) + " is history: " + id + reason + ", but this rotation says " +
                 named(found) + ".");
    }
  }
}

/// Rule 1. A row holds one entry a slot, so what is left to judge is presence.
void judge_presence(const Facts& f, std::vector<Breach>& out) {
  for_each_judged_entry(f, [&](int m, int t, StationIndex s) {
    if (f.present(m, t)) return;
    const MemberSpec& who = f.member(m);
    breach(out, 1, who.id, f.station(s).id, t,
           who.id + " works " + named(f.station(s).id) + in_slot(t) + ", but is present from " +
               range(who.present) + " only.");
  });
}

/// Rule 2: places, closed slots, units of equipment.
void judge_places_and_equipment(const Facts& f, std::vector<Breach>& out) {
  for (int t = f.first_slot; t <= f.slots; ++t) {
    for (StationIndex s = 0; s < f.stations; ++s) {
      const StationSpec& station = f.station(s);
      const int here = members_at(f, s, t);
      if (here > station.capacity)
        breach(out, 2, "", station.id, t,
               "Station " + station.id + " has places for " + std::to_string(station.capacity) +
                   ", but holds " + std::to_string(here) + in_slot(t) + ".");
      for (const SlotRange& closed : station.closed)
        if (here > 0 && closed.contains(t)) {
          breach(out, 2, "", station.id, t,
                 "Station " + station.id + " is closed from " + range(closed) + ", but is used" + in_slot(t) +
                     ".");
          break;
        }
    }
    for (const EquipmentSpec& kind : f.spec.equipment) {
      const int using_it = members_using(f, kind.id, t);
      if (using_it > kind.units)
        breach(out, 2, "", "", t,
               std::to_string(using_it) + " members use " + kind.id + in_slot(t) + ", but there are " +
                   std::to_string(kind.units) + " units.");
    }
  }
}

/// Rule 3: only exercises that the member may do.
void judge_exercises(const Facts& f, std::vector<Breach>& out) {
  for_each_judged_entry(f, [&](int m, int t, StationIndex s) {
    if (f.exercise(m, s) != nullptr) return;
    const std::string& id = f.member(m).id;
    breach(out, 3, id, f.station(s).id, t,
           id + " works at " + f.station(s).id + in_slot(t) + ", but may do neither its exercise " +
               f.station(s).exercise + " nor a substitute.");
  });
}

/// Rule 4: required stations only, and at most L laps. A station without an exercise is rule 3's matter.
void judge_required_and_laps(const Facts& f, std::vector<Breach>& out) {
  for_each_judged_entry(f, [&](int m, int t, StationIndex s) {
    if (f.required(m, s) || f.exercise(m, s) == nullptr) return;
    const std::string& id = f.member(m).id;
    breach(out, 4, id, f.station(s).id, t,
           id + " works at " + f.station(s).id + in_slot(t) + ", which is not required of " + id + ".");
  });
  for (int m = 0; m < f.members; ++m) {
    const std::vector<int> worked = f.worked_slots(m);
    const std::vector<int> laps = laps_of(f, m);
    for (std::size_t i = 0; i < worked.size(); ++i) {
      if (worked[i] < f.first_slot || laps[i] <= f.spec.laps) continue;
      const std::string& id = f.member(m).id;
      breach(out, 4, id, f.station_id(f.at(m, worked[i])), worked[i],
             id + " is in lap " + std::to_string(laps[i]) + " with " +
                 std::string(f.station_id(f.at(m, worked[i]))) + in_slot(worked[i]) + ", but the class has " +
                 std::to_string(f.spec.laps) + (f.spec.laps == 1 ? " lap." : " laps."));
    }
  }
}

/// Rule 5: together and apart.
void judge_pairs(const Facts& f, std::vector<Breach>& out) {
  for (const PairSpec& pair : f.spec.pairs) {
    const int a = f.member_index(pair.a);
    const int b = f.member_index(pair.b);
    if (a < 0 || b < 0) continue;  // whoever reads the class refuses an unknown member
    for (int t = f.first_slot; t <= f.slots; ++t)
      pair.rule == PairRule::together ? judge_together(f, a, b, t, out) : judge_apart(f, a, b, t, out);
  }
}

/// Rule 6: one cyclic order; steps within a lap add up to less than n, those of the whole row to less than
/// L·n.
void judge_ring(const Facts& f, std::vector<Breach>& out) {
  if (f.rotation.style != Style::ring) return;
  if (!is_order_of_all_stations(f)) {
    breach(out, 6, "", "", 0, "The ring must name every station of the class once.");
    return;
  }
  const int n = f.stations;
  std::vector<int> place(static_cast<std::size_t>(n));
  for (int i = 0; i < n; ++i)
    place[static_cast<std::size_t>(f.rotation.ring[static_cast<std::size_t>(i)])] = i;

  for (int m = 0; m < f.members; ++m) {
    const std::string& id = f.member(m).id;
    const std::vector<int> worked = f.worked_slots(m);
    const std::vector<int> laps = laps_of(f, m);
    std::int64_t in_lap = 0;
    std::int64_t in_row = 0;
    for (std::size_t i = 1; i < worked.size(); ++i) {
      const StationIndex from = f.at(m, worked[i - 1]);
      const StationIndex to = f.at(m, worked[i]);
      const int ahead = (place[static_cast<std::size_t>(to)] - place[static_cast<std::size_t>(from)] + n) % n;
      const int step = ahead == 0 ? n : ahead;  // 1 to n places forward
      in_lap = laps[i] == laps[i - 1] ? in_lap + step : 0;
      in_row += step;
      if (worked[i] < f.first_slot) continue;
      const std::string arrives = id + " arrives at " + f.station(to).id + in_slot(worked[i]) + " after ";
      if (in_lap >= n)
        breach(out, 6, id, f.station(to).id, worked[i],
               arrives + std::to_string(in_lap) + " steps round the ring within a lap; a lap has less than " +
                   std::to_string(n) + ".");
      else if (in_row >= std::int64_t{f.spec.laps} * n)
        breach(out, 6, id, f.station(to).id, worked[i],
               arrives + std::to_string(in_row) + " steps round the ring in all; " +
                   std::to_string(f.spec.laps) + (f.spec.laps == 1 ? " lap has" : " laps have") +
                   " less than " + std::to_string(std::int64_t{f.spec.laps} * n) + ".");
    }
  }
}

}  // namespace floorwheel::audit_detail
