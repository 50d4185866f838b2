// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/slot_fit.h"

#include <cassert>

namespace floorwheel::training {

int reps_held(int work_s, const Tempo& tempo, bool hold) {
  assert(tempo.repetition_ds() > 0);
  return hold ? work_s : 10 * work_s / tempo.repetition_ds();
}

bool fits(const std::array<int, 2>& reps, int work_s, const Tempo& tempo, bool hold) {
  return reps[1] <= reps_held(work_s, tempo, hold);
}

int density_percent(const SlotTimes& t) {
  const int slot_s = t.work_s + t.change_s;
  return (200 * t.work_s + slot_s) / (2 * slot_s);
}

int between_laps_s(const SlotTimes& t, int slots_a_lap, int break_s) {
  return slots_a_lap * (t.work_s + t.change_s) - t.work_s + break_s;
}

}  // namespace floorwheel::training
