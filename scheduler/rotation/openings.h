// SPDX-License-Identifier: GPL-3.0-or-later
// Where one member could work, slot by slot, while everybody else stays where they are: rules 1, 2, 3 and 5.
// Members of a team are placed one after the other; the first keeps room for those who are to follow.
#pragma once

#include "scheduler/rotation/sheet.h"

namespace floorwheel {

struct Openings {
  Grid<std::uint8_t> may;          // (slot, station)
  bool any = false;                // somewhere is open
  std::vector<StationIndex> must;  // [slot] where a mate already stands and this member belongs, or nowhere
};

/// Precondition: the row of m is clear, and so are those of mates that are not `placed`.
Openings find_openings(const Problem&, const Sheet&, int m, const std::vector<std::uint8_t>& placed);

}  // namespace floorwheel
