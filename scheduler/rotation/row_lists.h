// SPDX-License-Identifier: GPL-3.0-or-later
// Every row a member can have by rules 1 to 4, with its price: possible for small classes only, and what the
// exhaustive search chooses from.
#pragma once

#include <optional>

#include "scheduler/rotation/price.h"

namespace floorwheel {

struct PricedRow {
  Row row;
  Cost cost;
};
/// [member] all rows, history included, cheapest first.
using RowLists = std::vector<std::vector<PricedRow>>;

/// Nothing when there are more than `most` rows in all.
std::optional<RowLists> list_rows(const Problem&, std::size_t most);

/// Only those that keep rule 6 on a ring.
RowLists rows_on_ring(const Problem&, const RowLists&, const std::vector<int>& place);

}  // namespace floorwheel
