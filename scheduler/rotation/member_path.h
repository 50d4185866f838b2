// SPDX-License-Identifier: GPL-3.0-or-later
// A good row for one member while everybody else stays: the cheapest path through slots and stations, by
// dynamic programming over labels. Free rows keep the best labels of each slot (a beam); ring rows are
// settled by (slot, steps gone). Rows returned keep rules 1 to 4 and 6; rule 5 is up to the openings.
#pragma once

#include "scheduler/rotation/openings.h"
#include "scheduler/rotation/random.h"

namespace floorwheel {

/// What a partial row costs, packed so that two compare in the order of the components: `high` holds visits
/// (more is better), back-to-backs and moved entries, `low` short rests, idle slots, assists and walking.
struct PathPrice {
  std::int64_t high = 0;
  std::int64_t low = 0;
  friend auto operator<=>(const PathPrice&, const PathPrice&) = default;
};

/// `width` labels are kept for each slot.
Row free_path(const Problem&, const Sheet&, int m, const Openings&, int width, Random&);

/// place[s] and ring[i] are inverse. `thorough`: every starting station, skip and wait; otherwise a few.
Row ring_path(const Problem&, const Sheet&, int m, const Openings&, const std::vector<StationIndex>& ring,
              const std::vector<int>& place, bool thorough, Random&);

namespace path {

constexpr int worked_bit = 40, back_to_back_bit = 20;               // in `high`
constexpr int short_rest_bit = 48, idle_bit = 36, assist_bit = 26;  // in `low`; walking below
constexpr std::int64_t walk_most = (std::int64_t{1} << assist_bit) - 1;

inline std::int64_t idle_price(int slots) { return std::int64_t{slots} << idle_bit; }

/// Price of working s in slot t after `before` (worked in slot t_before, -1: none), short rests apart.
PathPrice step_price(const Problem&, int m, StationIndex s, int t, StationIndex before, int t_before);

}  // namespace path
}  // namespace floorwheel
