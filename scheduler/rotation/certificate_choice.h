// SPDX-License-Identifier: GPL-3.0-or-later
// For the check of a certificate only: whether one row for each member can be chosen from lists so that
// rules 2 and 5 hold, the earlier components are as given, and the claim's own is less than claimed. Depth
// first over all choices; branches are left only where every rotation in them costs too much.
#pragma once

#include "scheduler/rotation/certificate_facts.h"

namespace floorwheel::certify {

struct PricedRow {
  std::vector<int> at;  // station by slot, -1: not worked
  Cost cost;            // without reloads
};
using RowsOfAll = std::vector<std::vector<PricedRow>>;  // [member]

enum class Chosen : std::uint8_t { nothing, less, no_end };

/// `steps` is used up, about one for each row tried in a class of a dozen.
Chosen choose_less(const Facts&, const Certificate&, const Claim&, RowsOfAll, std::int64_t& steps);

}  // namespace floorwheel::certify
