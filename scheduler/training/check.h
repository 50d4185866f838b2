// SPDX-License-Identifier: GPL-3.0-or-later
// The programme check: what in a programme is likely to hurt, goes against evidence or practice, or is worth
// knowing. Rules, limits and severities are those of DEVELOPERS.md, "Programme check"; each finding says its
// source. No finding means "no finding by these rules", never that a programme is sound. Pure; same
// programme, same findings.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "scheduler/class_spec.h"
#include "scheduler/training/check_programme.h"

namespace floorwheel {

enum class Severity : std::uint8_t { must, should, note };
std::string_view id_of(Severity);

struct Finding {
  std::string_view rule;  // "dose-low"
  Severity severity = Severity::note;
  std::string day;       // the day's name; empty: the week as a whole
  std::string exercise;  // its id; empty: none in particular
  std::optional<Group> group;
  int line = 0;             // in the programme's file
  std::string found;        // what stands there
  std::string wanted;       // what the rule wants
  std::string_view source;  // who says so
  std::string mend;         // what would mend it
};

/// All findings, by line, then in the order of the rules.
std::vector<Finding> check_programme(const Programme&, const ExerciseTable&);

/// The working sets of each group in a week, by Group: one for each primary group of a set, practice left
/// out.
std::array<int, group_count> weekly_sets(const Programme&, const ExerciseTable&);

/// Seconds a day takes: all sets, warm-up included, of top repetitions times tempo, the rests between the
/// sets of an exercise, 60 s for each exercise; in a circuit the last exercise's rest once a round.
int day_seconds(const PlannedDay&, const ExerciseTable&);

}  // namespace floorwheel
