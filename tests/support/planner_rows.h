// SPDX-License-Identifier: GPL-3.0-or-later
// The rows of the figures that look at many answers of the planner: the short run does a few and counts, the
// bench does them all and reads the clock. Each answer is judged by the auditor; `fault` is the first that is
// wrong, with its seed, and ends the row.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "scheduler/rotation/rotation.h"

namespace floorwheel::rows {

/// Seconds that the calling thread has used; empty: nobody reads a clock, and nothing is stopped by one.
using CpuClock = std::function<double()>;

struct Measured {
  int cases = 0;
  std::vector<double> cpu_s;  // of each answer, where there is a clock
  std::string fault;
};

/// Classes of floors::hall_like with 14 slots, one for each seed, each stopped after `limit_s`.
struct HallLike : Measured {
  int proven = 0;                         // missed, uneven and back_to_back
  std::vector<std::int64_t> short_rests;  // above their bound, of those proven
};
HallLike hall_like(std::uint64_t first_seed, int cases, double limit_s, const CpuClock& = {});

/// Repairs of floors as below: a late arrival, a leaver or a closed station at any slot from the second on.
struct Repairs : Measured {
  int proven = 0;                // the fewest entries moved
  std::int64_t worst_gap = 0;    // of `moved` to its bound
  std::uint64_t worst_seed = 0;  // where that is
  std::int64_t moved = 0;        // in all
  std::int64_t altered = 0;      // entries of history
};
struct RepairFloor {
  int members = 12;
  int stations = 10;
  int slots = 12;
  int fewest_places = 1;  // at a station, the same at all of a floor
  int most_places = 2;
  int events_each = 10;  // on one floor, each from its first run sheet; seed / this: the floor
};
Repairs repairs(const RepairFloor&, std::uint64_t first_seed, int cases, const CpuClock& = {});

/// Chains of up to four changes of any kind, each repairing the sheet before, on floors with every feature,
/// most of them tiny and one in a hundred of a middle size.
struct History : Measured {
  std::int64_t entries = 0;  // of history, looked at
  std::int64_t altered = 0;
  int refused = 0;
};
History history(std::uint64_t first_seed, int cases, const CpuClock& = {});

}  // namespace floorwheel::rows
