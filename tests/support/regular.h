// SPDX-License-Identifier: GPL-3.0-or-later
// Regular classes made from a number, for figures and tests of proofs: everybody alike, novice, to visit
// every station once; stations at random on a floor of 12 m by 8 m, each with one primary group such that a
// ring without a back-to-back exists.
#pragma once

#include <algorithm>
#include <string>

#include "tests/support/builders.h"
#include "tests/support/tiny_cases.h"

namespace floorwheel::floors {

inline ClassSpec regular(int members, int stations, int capacity, std::uint64_t seed) {
  tiny::Draw d(seed * 1000 + static_cast<std::uint64_t>(stations));
  ClassSpec c;
  c.name = "regular";
  // Groups dealt round a hidden ring so that neighbours differ, then the ring is shuffled away.
  std::vector<int> group;
  for (int s = 0; s < stations; ++s) {
    int g = d.below(9);
    while ((s > 0 && g == group.back()) || (s + 1 == stations && g == group.front())) g = d.below(9);
    group.push_back(g);
  }
  for (int s = stations - 1; s > 0; --s)
    std::swap(group[static_cast<std::size_t>(s)], group[static_cast<std::size_t>(d.below(s + 1))]);
  for (int s = 0; s < stations; ++s)
    build::station(c, "S" + std::to_string(s), {static_cast<Group>(group[static_cast<std::size_t>(s)])},
                   d.below(1201), d.below(801), {static_cast<Group>(9 + d.below(6))})
        .capacity = capacity;
  for (int m = 0; m < members; ++m) build::member(c, "m" + std::to_string(m), Level::novice);
  return c;
}

}  // namespace floorwheel::floors
