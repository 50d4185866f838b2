// SPDX-License-Identifier: GPL-3.0-or-later
// Does the slot fit? How many repetitions a work interval holds, whether the wanted range fits in it, how
// dense the work is, and whether the same station comes again only after the level's recovery time. Times in
// tenths of a second where tempo is concerned.
#pragma once

#include <array>

#include "scheduler/vocabulary.h"

namespace floorwheel::training {

/// 1.5 s each way unless stated; 0.5 to 8 s a repetition is usual (check C030).
struct Tempo {
  int eccentric_ds = 15;
  int concentric_ds = 15;
  int pause_ds = 0;
  [[nodiscard]] int repetition_ds() const { return eccentric_ds + concentric_ds + pause_ds; }
};

struct SlotTimes {
  int work_s = 40;
  int change_s = 20;
};

/// Whole repetitions in a work interval; seconds of it where `hold`.
int reps_held(int work_s, const Tempo&, bool hold = false);
/// The wanted range fits if its top does.
bool fits(const std::array<int, 2>& reps, int work_s, const Tempo&, bool hold = false);
/// Share of work in a slot, in whole percent, halves up.
int density_percent(const SlotTimes&);
/// Seconds between two visits to one station by somebody who comes by every `slots_a_lap` slots, breaks
/// between laps not counted in unless given.
int between_laps_s(const SlotTimes&, int slots_a_lap, int break_s = 0);

}  // namespace floorwheel::training
