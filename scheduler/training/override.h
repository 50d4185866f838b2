// SPDX-License-Identifier: GPL-3.0-or-later
// An override: what a person decided instead of a suggestion. It is kept as it is, stands until the exercise
// is done next, and is learnt from.
#pragma once

#include <span>

#include "scheduler/training/next_load.h"

namespace floorwheel::training {

struct Override {
  std::string member;
  std::string exercise;
  Day day;                 // when it was decided
  std::string decided_by;  // who
  Mass load;               // what instead
  Mass suggested;          // what it stands against
  Change suggested_change = Change::same;
  std::optional<std::array<int, 2>> reps = {};  // the range to aim at, where that was decided too
  std::optional<int> sets = {};
  std::optional<std::int64_t> instant_us = {};  // Unix time of the decision, where it is known
};

struct Decided {
  NextAnswer answer;           // the override's where one stands, else the suggestion
  std::optional<Override> by;  // the one that stands
  NextAnswer suggested;        // what the rules alone answer
};

/// The answer with the overrides of this member and exercise, in any order; those of one day in the order
/// they were decided. The latest one up to `today` stands until the exercise is done next: on a later day, or
/// on its own in a visit that began after it or, where the instant is not known, lifted it. It takes the
/// place of earlier ones not yet done. Two rises in a row that were decided lower make the rules slow to
/// rise: from then on a rise is suggested once it is earned in two visits running. A load the floor lacks is
/// stood for by the heaviest below it.
Decided next_load(std::span<const SetRecord> records, NextQuestion, std::span<const Override>);

/// What is learnt: the last two overrides of a suggested rise both took less.
bool slow_to_rise(std::span<const Override>);

}  // namespace floorwheel::training
