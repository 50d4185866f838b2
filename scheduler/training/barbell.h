// SPDX-License-Identifier: GPL-3.0-or-later
// What can be hung on a bar. Both sides carry the same discs, so of an odd number one stays off; two collars
// are on the bar. Discs hang heaviest first. All loads are exact, kilograms and pounds mixed.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "scheduler/training/mass.h"

namespace floorwheel::training {

struct Discs {
  Weight each;    // above zero
  int count = 2;  // how many there are, both sides together
};

struct Barbell {
  Weight bar;
  Weight collar;             // one of two; zero: none
  std::vector<Discs> discs;  // at most `most_kinds` kinds, at most `most_discs` of a kind
  [[nodiscard]] Mass empty() const { return bar.mass + 2 * collar.mass; }
};
inline constexpr std::size_t most_kinds = 16;
inline constexpr int most_discs = 100;
/// Bars with more different loads, or ways to hang one, are not worked out.
inline constexpr std::size_t most_sums = 400'000;

struct Hung {
  Mass load;                     // bar, collars and both sides
  std::vector<Weight> per_side;  // heaviest first
};

struct NearestHung {
  Hung below;                 // the heaviest load at or under the target
  std::optional<Hung> above;  // the lightest at or over it; none above all discs
};

/// The loads nearest to `target`, which bar and collars do not outweigh; of equal loads the one with the
/// fewest discs, then with the heavier first disc. Nothing beyond `most_sums`.
std::optional<NearestHung> nearest_hung(const Barbell&, Mass target);

/// Every load the bar can have, ascending; nothing beyond `most_sums`.
std::optional<std::vector<Weight>> loads_of(const Barbell&);

struct Sequence {
  std::vector<Hung> users;  // how each load is hung, in the order of the users
  int changes = 0;          // discs taken off or put on between users, both sides
};
/// The fewest disc changes between consecutive users of one bar with these loads; a disc comes off only after
/// those outside it. Among equal ones the fewest discs. Nothing where a load cannot be hung exactly or beyond
/// `most_sums`.
std::optional<Sequence> fewest_changes(const Barbell&, std::span<const Mass> loads);

}  // namespace floorwheel::training
