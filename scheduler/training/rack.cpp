// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/rack.h"

#include <algorithm>
#include <cassert>

namespace floorwheel::training {

std::vector<Weight> loads_of(const Stack& s) {
  assert(s.add_ons.size() <= most_add_ons);
  const bool pounds = s.plate.unit == MassUnit::lb &&
                      std::ranges::all_of(s.add_ons, [](const Weight& w) { return w.unit == MassUnit::lb; });
  const MassUnit unit = pounds ? MassUnit::lb : MassUnit::kg;
  std::vector<Weight> loads;
  for (int n = 1; n <= s.plates; ++n)
    for (unsigned chosen = 0; chosen < 1U << s.add_ons.size(); ++chosen) {
      Mass load = n * s.plate.mass;
      for (std::size_t i = 0; i < s.add_ons.size(); ++i)
        if ((chosen >> i & 1U) != 0) load = load + s.add_ons[i].mass;
      loads.push_back({load, unit});
    }
  std::ranges::sort(loads, {}, &Weight::mass);
  const auto alike = [](const Weight& a, const Weight& b) { return a.mass == b.mass; };
  loads.erase(std::unique(loads.begin(), loads.end(), alike), loads.end());
  return loads;
}

NearestLoad nearest_load(std::span<const Weight> loads, Mass target) {
  NearestLoad out;
  for (const Weight& w : loads) {
    if (w.mass <= target) out.below = w;
    if (w.mass >= target && !out.above) out.above = w;
  }
  return out;
}

}  // namespace floorwheel::training
