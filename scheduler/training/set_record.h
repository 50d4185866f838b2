// SPDX-License-Identifier: GPL-3.0-or-later
// One set as done: what the training rules are computed from.
#pragma once

#include <optional>
#include <string>

#include "scheduler/training/calendar.h"
#include "scheduler/training/mass.h"

namespace floorwheel::training {

enum class SetKind : std::uint8_t { working, warm_up, practice };

struct SetRecord {
  std::string member;
  std::string exercise;         // an id of the exercise table
  Day day;                      // the local date written
  std::int64_t instant_us = 0;  // Unix time; orders sets
  SetKind kind = SetKind::working;
  Mass load;               // zero: body weight
  int reps = 1;            // of one side where an exercise is done per side; seconds where it is held
  std::optional<int> rir;  // repetitions in reserve; none: not recorded
  bool pain = false;
};

inline constexpr int most_reps = 100;
inline constexpr int longest_hold_s = 600;
inline constexpr int most_reserve = 20;

}  // namespace floorwheel::training
