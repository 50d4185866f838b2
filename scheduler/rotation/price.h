// SPDX-License-Identifier: GPL-3.0-or-later
// The one place that prices a rotation for the search, in integers: every component but the reloads belongs
// to one member's row alone. Source: the rotation model, "Cost" and "Repair".
#pragma once

#include "scheduler/rotation/sheet.h"

namespace floorwheel {

/// Components of one row; `reload_hg` stays 0. The row holds p.slots entries, history included.
Cost price_row(const Problem& p, int m, const StationIndex* row);

/// Reloads at one station between slot t and t + 1.
std::int64_t price_reload(const Problem& p, const Sheet& sheet, int s, int t);

/// Everything.
Cost price(const Problem& p, const Sheet& sheet);

/// In a repair: what history costs by itself, `missed`, `uneven` and `moved` apart. Whatever follows, no
/// rotation costs less in these components.
Cost price_history(const Problem& p);

/// What `uneven` is at least when so many people miss `sum` visits: as even as can be.
constexpr std::int64_t least_squares(std::int64_t sum, std::int64_t people) {
  const std::int64_t each = sum / people;
  const std::int64_t more = sum % people;
  return (people - more) * each * each + more * (each + 1) * (each + 1);
}

inline void add(Cost& sum, const Cost& more) {
  for (std::size_t i = 0; i < sum.value.size(); ++i) sum.value[i] += more.value[i];
}
inline void subtract(Cost& sum, const Cost& less) {
  for (std::size_t i = 0; i < sum.value.size(); ++i) sum.value[i] -= less.value[i];
}

}  // namespace floorwheel
