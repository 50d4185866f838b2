// SPDX-License-Identifier: GPL-3.0-or-later
// A visit: all sets of one member and exercise on one date. Its load is its heaviest working load.
#pragma once

#include <span>
#include <vector>

#include "scheduler/training/set_record.h"

namespace floorwheel::training {

struct DoneSet {
  int reps = 0;
  std::optional<int> rir;
};

struct Visit {
  Day day;
  Mass load;                     // heaviest working load
  std::vector<DoneSet> at_load;  // working sets at that load
  int first_reps = 0;            // of the first working set; of sets at one instant the one with more
  int total_reps = 0;            // of all working sets
  std::int64_t first_us = 0;     // Unix time of the first working set
};

struct Visits {
  std::vector<Visit> worked;  // dates with working sets, in order
  bool pain_at_the_last =
      false;  // any set of the last date notes pain, a date of warm-up sets alone included
};

/// Of the records of one member and exercise, in any order; sets after `today` are left out.
Visits visits_of(std::span<const SetRecord>, Day today);

}  // namespace floorwheel::training
