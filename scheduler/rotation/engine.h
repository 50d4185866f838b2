// SPDX-License-Identifier: GPL-3.0-or-later
// From a checked problem to the best rotation found, with bounds: rings, free rotations, the choice between
// them. What plan, the table of slots and repair share.
#pragma once

#include <optional>

#include "scheduler/rotation/placement.h"
#include "scheduler/rotation/solve.h"

namespace floorwheel {

/// A rotation of one style and what is known about it.
struct Found {
  Style style = Style::free;
  std::vector<StationIndex> ring;
  std::vector<Row> rows;
  Cost cost;
  Cost bound;                    // of each component, given that the earlier ones are as in `cost`
  int proven = 0;                // leading components whose bound is their cost
  int bad_joints = 0;            // of a ring: the fewest that any ring of these stations has, where known
  int exhausted = 0;             // leading components that an exhaustive search has settled
  std::int64_t searched = 0;     // steps that it took
  std::int64_t moved_least = 0;  // of a repair on its ring: bound, the first three components being at theirs
  std::uint32_t priced = 0;  // a bit for each component whose bound prices or the table of rings have shown
};

/// What the search is asked for.
struct Task {
  Style style = Style::automatic;
  std::vector<StationIndex> ring = {};  // a repair: the order to keep; else empty
  const Found* shorter = nullptr;  // an answer for a slot fewer, to start from: the last slot stays empty
  std::uint64_t seed = 1;
  std::int64_t effort = 0;        // steps; 0: by size
  std::int64_t effort_times = 1;  // so many times that
  std::function<bool()> stop = {};
  std::function<void(const Progress&)> progress = {};
};

/// The answer, and what it was chosen over: best of each style that was tried.
struct Answer {
  Found found;
  std::optional<Found> ring;
  std::optional<Found> free;
  bool ring_is_best = false;  // in the first three components, proven over free rotations too
};

Answer solve(const Problem&, const Task&);

/// The first good one that is found; bettered for a moment only where back-to-backs are left in it.
Answer first(const Problem&, const Task&);

/// The components in the order that counts: without `moved` unless a repair.
std::vector<Component> ranking(const Problem&);

/// The first three components, compared in order.
bool leading_equal(const Cost&, const Cost&);
bool leading_less(const Cost&, const Cost&);

}  // namespace floorwheel
