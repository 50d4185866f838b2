// SPDX-License-Identifier: GPL-3.0-or-later
// Seconds of processor time that the calling thread has used: what figures on a shared machine are told in.
#pragma once

#include <ctime>

namespace floorwheel {

inline double thread_cpu_s() {
  timespec t{};
  ::clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
  return static_cast<double>(t.tv_sec) + 1e-9 * static_cast<double>(t.tv_nsec);
}

}  // namespace floorwheel
