// SPDX-License-Identifier: GPL-3.0-or-later
// The next load of one member and exercise by double progression: repetitions first, then load. A suggestion
// with its reason; a person may always decide otherwise (override.h). The rules are tried in the order of the
// enumeration, the first that fits answers; they stand in DEVELOPERS.md ("The next load").
// Percentages are common practice of the trade (after ACSM 2009: 2-10 % more when the range is exceeded).
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "scheduler/training/visits.h"

namespace floorwheel::training {

enum class NextRule : std::uint8_t {
  first,
  pain,
  comeback,  // written "return"
  below_range,
  top_of_range,
  big_step,
  more_reps,
  stall,
  in_range,
};
enum class Change : std::uint8_t { up, same, down, first };
std::string_view id_of(NextRule);  // "top-of-range"
std::string_view id_of(Change);

struct NextQuestion {
  std::array<int, 2> reps{8, 12};  // the planned range, never a widened one; seconds where `hold`
  int sets = 3;                    // planned
  std::vector<Weight> loads;       // the floor's, ascending, at least one; zero: body weight
  Day today;                       // later sets are left out
  bool hold = false;
  std::vector<std::string> substitutes;  // of the exercise, in order of preference
  bool slow_to_rise = false;  // learnt from overrides: a rise has to be earned in two visits running
};

struct NextAnswer {
  std::optional<Weight> load;  // none: the floor has nothing as light as was lifted
  std::array<int, 2> reps{};   // to aim at next time
  int sets = 0;
  Change change = Change::same;
  NextRule rule = NextRule::in_range;
  std::string reason;  // one sentence
  bool ask_instructor = false;
  std::string substitute;  // an exercise id, "" for none
};

/// `records` are those of the member and exercise, in any order.
NextAnswer next_load(std::span<const SetRecord> records, const NextQuestion&);

}  // namespace floorwheel::training
