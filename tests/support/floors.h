// SPDX-License-Identifier: GPL-3.0-or-later
// Classes of a real size, made from a number: floors with capacities, equipment, closed slots, exclusions,
// pairs and late members; and floors whose stations get on as the edges of a graph say.
#pragma once

#include <set>
#include <utility>

#include "tests/support/builders.h"
#include "tests/support/tiny_cases.h"

namespace floorwheel::floors {

/// All stations alike in everything but their group; all members alike.
inline ClassSpec plain(int members, int stations, int capacity, std::uint64_t seed, int groups = 9) {
  tiny::Draw d(seed);
  ClassSpec c;
  c.name = "plain";
  for (int s = 0; s < stations; ++s) {
    StationSpec& added = build::station(c, "S" + std::to_string(s), {static_cast<Group>(d.below(groups))},
                                        d.below(1200), d.below(800));
    added.capacity = capacity;
  }
  for (int m = 0; m < members; ++m) build::member(c, "m" + std::to_string(m), static_cast<Level>(d.below(3)));
  return c;
}

/// Every feature of the model at once.
inline ClassSpec hall(std::uint64_t seed, int members, int stations, int slots) {
  tiny::Draw d(seed);
  ClassSpec c;
  c.name = "hall";
  c.laps = d.one_in(4) ? 2 : 1;
  c.breaks.push_back({1 + d.below(slots), 60});
  c.equipment.push_back({"kettlebell", d.from(1, 3)});
  for (int s = 0; s < stations; ++s) {
    const std::string id = "S" + std::to_string(s);
    StationSpec& added = build::station(c, id, {static_cast<Group>(d.below(12))}, d.below(1200), d.below(800),
                                        {static_cast<Group>(12 + d.below(8))});
    added.capacity = d.from(1, 3);
    if (d.one_in(4)) added.equipment.push_back("kettlebell");
    if (d.one_in(3)) c.exercises["do-" + id].features.insert(static_cast<Feature>(d.below(4)));
    if (d.one_in(2)) {
      c.exercises["or-" + id] = build::exercise("or-" + id, {static_cast<Group>(d.below(20))});
      added.substitutes.push_back("or-" + id);
    }
    if (d.one_in(8)) added.closed.push_back({d.from(1, slots), d.one_in(2) ? slots : SlotRange::to_the_end});
  }
  for (int m = 0; m < members; ++m) {
    MemberSpec& added = build::member(c, "m" + std::to_string(m), static_cast<Level>(d.below(3)));
    if (d.one_in(6)) added.present.first = d.from(2, slots);
    if (d.one_in(8)) added.present.last = d.from(added.present.first, slots);
    if (d.one_in(4)) added.excluded_features.insert(static_cast<Feature>(d.below(4)));
    if (d.one_in(5)) added.excluded_groups.insert(static_cast<Group>(d.below(12)));
    for (const StationSpec& s : c.stations)
      if (d.one_in(2)) added.loads_hg[s.id] = 20 * d.below(12);
  }
  for (int m = 0; m + 1 < members; m += 7)
    c.pairs.push_back({"m" + std::to_string(m), "m" + std::to_string(m + 1),
                       d.one_in(2) ? PairRule::together : PairRule::apart});
  add_guests(c, d.below(3));
  return c;
}

/// A class as halls have them, 24 members on 12 stations in 14 slots: 1 to 3 places, two scarce kettlebells
/// too few, one closed range, five members with exclusions and features, two latecomers, one pair together
/// and one apart, three levels. What the figures call hall-like.
inline ClassSpec hall_like(std::uint64_t seed) {
  tiny::Draw d(seed);
  ClassSpec c;
  c.name = "hall-like";
  c.equipment.push_back({"kettlebell", d.from(2, 4)});
  for (int s = 0; s < 12; ++s) {
    const std::string id = "S" + std::to_string(s);
    const int primary = d.below(9);
    const int assisting = (primary + d.from(1, 8)) % 9;
    StationSpec& added = build::station(c, id, {static_cast<Group>(primary)}, s % 4 * 300 + d.below(100),
                                        s / 4 * 300 + d.below(100), {static_cast<Group>(assisting)});
    added.capacity = d.from(1, 3);
    if (s % 4 == 1) added.equipment.push_back("kettlebell");
    if (d.one_in(3)) c.exercises["do-" + id].features.insert(static_cast<Feature>(d.below(6)));
    if (d.one_in(2)) {
      c.exercises["or-" + id] = build::exercise("or-" + id, {static_cast<Group>(d.below(9))});
      added.substitutes.push_back("or-" + id);
    }
  }
  const int first = d.from(1, 14);
  c.stations[static_cast<std::size_t>(d.below(12))].closed.push_back({first, d.from(first, 14)});
  for (int m = 0; m < 24; ++m) {
    MemberSpec& added = build::member(c, "m" + std::to_string(m), static_cast<Level>(m % 3));
    if (m < 5) {
      added.excluded_features.insert(static_cast<Feature>(d.below(6)));
      if (d.one_in(2)) added.excluded_groups.insert(static_cast<Group>(d.below(9)));
    }
    if (m >= 5 && m < 7) added.present.first = d.from(2, 5);
    for (const StationSpec& s : c.stations)
      if (d.one_in(3)) added.loads_hg[s.id] = 20 * d.from(2, 12);
  }
  c.pairs.push_back({"m10", "m11", PairRule::together});
  c.pairs.push_back({"m12", "m13", PairRule::apart});
  return c;
}

using Edges = std::set<std::pair<int, int>>;

/// A floor on which two stations get on exactly where the graph has an edge: each pair without one shares a
/// group of its own. Precondition: no more than 21 pairs without an edge.
inline ClassSpec of_graph(int vertices, const Edges& edges, int members) {
  ClassSpec c;
  c.name = "graph";
  for (int v = 0; v < vertices; ++v) build::station(c, "S" + std::to_string(v), {});
  int group = 0;
  for (int a = 0; a < vertices; ++a)
    for (int b = a + 1; b < vertices; ++b)
      if (!edges.contains({a, b})) {
        c.exercises["do-S" + std::to_string(a)].primary.insert(static_cast<Group>(group));
        c.exercises["do-S" + std::to_string(b)].primary.insert(static_cast<Group>(group++));
      }
  for (int m = 0; m < members; ++m) build::member(c, "m" + std::to_string(m));
  return c;
}

}  // namespace floorwheel::floors
