// SPDX-License-Identifier: GPL-3.0-or-later
// The ring of a class: a cyclic order of its stations in which no two neighbours share a primary group.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "scheduler/vocabulary.h"

namespace floorwheel::training {

/// Up to here the answer is exact: all subsets of the stations are gone through (Held and Karp 1962, from
/// memory). Above, a path is turned about its ends (Pósa 1976, from memory) and may miss a ring there is.
inline constexpr int ring_exact_most = 20;

enum class RingAnswer { holds, none, not_found };

struct Ring {
  RingAnswer answer = RingAnswer::none;
  /// Indices of the stations; up to ring_exact_most the first order there is, read as a row of numbers.
  std::vector<int> order;
};

/// One station alone is a ring for one lap only: with more it follows itself.
Ring ring_of(std::span<const GroupSet> stations, int laps);

}  // namespace floorwheel::training
