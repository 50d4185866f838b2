// SPDX-License-Identifier: GPL-3.0-or-later
// A third opinion for tiny classes: looks at every rotation there is. Written from the rotation model alone;
// it shares the vocabulary, the class and plain values with planner and auditor, and no code.
// A branch is left only where its members' own rows already cost at least as much as the best rotation seen,
// which loses nothing, since costs of rows add up and are compared lexicographically.
#pragma once

#include <array>
#include <cstdint>
#include <limits>
#include <optional>
#include <set>
#include <vector>

#include "scheduler/class_spec.h"
#include "scheduler/rotation/rotation.h"

namespace floorwheel::brute {

/// A clause that a search may leave out, so that a test can show that the auditor notices.
enum class Leave {
  nothing,
  presence,
  capacity,
  closed,
  equipment,
  exercises,
  required,
  laps,
  together,
  waiting,  // rule 5: the one who waits may have the other's station in another slot
  apart,
  ring,
};

/// What is asked: all rotations of `spec` with so many slots that are rings (in `order`, or in any order
/// where it is empty) or free; in a repair those that agree with `before` up to `at_slot`.
struct Question {
  const ClassSpec& spec;
  int slots = 0;
  Style style = Style::free;
  std::vector<StationIndex> order = {};
  int at_slot = 1;
  const EarlierSheet* before = nullptr;
  Leave leave = Leave::nothing;
};

struct Best {
  Cost cost;
  Rotation rotation;
};

/// The best rotation of all. There always is one: nobody works.
Best best(const Question&);

inline constexpr std::int64_t none = std::numeric_limits<std::int64_t>::max();

/// For each component its least value over all rotations whose earlier components equal those of `shown`, or
/// `none`. Looks at every rotation without leaving a branch.
std::array<std::int64_t, component_count> least_after(const Question&, const Cost& shown);

/// How many combinations of rows there are: what least_after() has to look at, at most.
double combinations(const Question&);

/// Rules of the question, its history included, for one rotation; and its cost.
bool keeps_rules(const Question&, const Rotation&);
Cost price(const Question&, const Rotation&);

/// The rules by which the model refuses the class; empty: it is to be planned.
std::set<int> refusals(const ClassSpec&, int slots, bool in_repair);

}  // namespace floorwheel::brute
