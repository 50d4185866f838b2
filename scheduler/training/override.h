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
};

struct Decided {
  NextAnswer answer;           // the override's where one stands, else the suggestion
  std::optional<Override> by;  // the one that stands
};

/// The answer with the overrides of this member and exercise, in any order. The latest one up to `today`
/// stands unless a later visit was done or its own day's visit lifted it. Two rises in a row that were
/// decided lower make the rules slow to rise: from then on a rise is suggested once it is earned in two
/// visits running. A load the floor lacks is stood for by the heaviest below it.
Decided next_load(std::span<const SetRecord> records, NextQuestion, std::span<const Override>);

/// What is learnt: the last two overrides of a suggested rise both took less.
bool slow_to_rise(std::span<const Override>);

}  // namespace floorwheel::training
