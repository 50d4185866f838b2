// SPDX-License-Identifier: GPL-3.0-or-later
// A training programme as its file gives it: plain values, nothing judged. Lines are those of the file, from
// 1; the week repeats, Monday follows Sunday. Times are whole seconds or milliseconds, as the names say.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "scheduler/vocabulary.h"

namespace floorwheel {

struct PlannedExercise {
  std::string exercise;  // an id that the exercise table may not have
  int line = 0;
  int working_sets = 1;
  std::array<int, 2> reps{8, 12};  // seconds where the exercise is a hold
  std::array<int, 2> rir{1, 3};
  int rest_s = 0;               // between the sets of this exercise
  std::optional<int> tempo_ms;  // one repetition: eccentric, concentric and pause together
  int warm_up_sets = 0;
  bool practice = false;  // for learning: no range, reserve or dose rule
  std::string circuit;    // exercises of one day with one name are done in turn; empty: on its own
};

struct PlannedDay {
  std::string name;
  int line = 0;
  std::optional<int> length_s;
  std::vector<PlannedExercise> exercises;
};

struct Programme {
  std::string name;
  int line = 0;
  Level level = Level::novice;
  int weeks = 1;
  GroupSet leave_out;
  std::vector<PlannedDay> days;
};

/// 0 Monday to 6 Sunday for a weekday's English name, capitals or not; nothing for any other name.
std::optional<int> weekday_of(std::string_view name);

}  // namespace floorwheel
