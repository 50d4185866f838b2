// SPDX-License-Identifier: GPL-3.0-or-later
// Chooses one row for each member from lists of cheap rows so that places and units suffice and the whole
// stays within a budget: depth first, the limit that must be filled and has the fewest rows left first, rows
// still possible as bits.
#pragma once

#include <cstdint>
#include <functional>
#include <vector>

namespace floorwheel {

struct PackRow {
  int kind = 0;
  std::int32_t over = 0;    // above the cheapest of its kind
  std::vector<int> limits;  // that it takes one of
  std::vector<int> row;     // station by slot
};

struct Packing {
  std::vector<int> room;            // [limit]
  std::vector<std::int32_t> price;  // [limit] of room left over
  std::vector<int> count;           // [kind] rows to choose
  std::vector<PackRow> rows;        // cheapest first
  std::int64_t budget = 0;          // for what is above the cheapest, and for room left over
  int first_kind = -1;  // of one row, in many's way: these are tried first, a little of each in turn
};

/// Indices of the rows chosen; empty: none found. `steps` is used up, below 0 where it came to no end; `stop`
/// ends it early. `without`: rows of the first kind that turned out to be in no choice.
std::vector<int> pack(const Packing&, std::int64_t& steps, const std::function<bool()>& stop = {},
                      std::vector<int>* without = nullptr);

}  // namespace floorwheel
