// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/standstill.h"

#include <algorithm>

namespace floorwheel::training {

int visits_without_progress(std::span<const Visit> worked) {
  if (worked.empty()) return 0;
  int most = 0;
  int best_after = worked.back().total_reps;  // of the visits after the one looked at
  for (std::size_t back = 1; back < worked.size(); ++back) {
    const Visit& first = worked[worked.size() - 1 - back];
    if (first.load != worked.back().load) break;
    if (first.total_reps >= best_after) most = static_cast<int>(back);
    best_after = std::max(best_after, first.total_reps);
  }
  return most;
}

}  // namespace floorwheel::training
