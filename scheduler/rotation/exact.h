// SPDX-License-Identifier: GPL-3.0-or-later
// Exhaustive search over the row lists of a small class: one row for each member, by branch and bound. What
// is left out costs at least as much as the best known; when it comes to its end, the best known is the best.
#pragma once

#include "scheduler/rotation/row_lists.h"

namespace floorwheel {

/// The best rotation known, to be beaten.
struct Incumbent {
  std::vector<Row> rows;
  Cost cost;
};

/// Looks for rotations that are better in the first `leading` components of ranking(); `steps` is used up.
/// `floor`: a bound; the search ends when the incumbent has come down to it. True: it came to its end.
bool search_all(const Problem&, const RowLists&, int leading, const Cost& floor, Incumbent&,
                std::int64_t& steps);

}  // namespace floorwheel
