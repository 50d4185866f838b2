// SPDX-License-Identifier: GPL-3.0-or-later
// Effort counted in steps, so that a seed gives one answer everywhere; the caller's `stop` may end it early.
// One step is about one small change weighed: a few microseconds.
#pragma once

#include <cstdint>
#include <functional>

#include "scheduler/rotation/solve.h"

namespace floorwheel {

class Budget {
 public:
  Budget(std::int64_t steps, std::function<bool()> stop, std::function<void(const Progress&)> progress)
      : total_(steps), stop_(std::move(stop)), progress_(std::move(progress)) {}

  /// Uses up steps; false: it is time to come back. `best` and `bound` are told now and then.
  bool spend(std::int64_t steps, const Cost& best, const Cost& bound) {
    used_ += steps;
    if (used_ >= next_look_) {
      next_look_ = used_ + 1024;
      if (progress_) progress_({best, bound, used_, total_});
      stopped_ = stopped_ || (stop_ && stop_());
    }
    return !stopped_ && used_ < total_;
  }

  [[nodiscard]] bool stopped() const { return stopped_; }
  [[nodiscard]] std::int64_t left() const { return stopped_ || used_ > total_ ? 0 : total_ - used_; }

 private:
  std::int64_t total_;
  std::int64_t used_ = 0;
  std::int64_t next_look_ = 0;
  bool stopped_ = false;
  std::function<bool()> stop_;
  std::function<void(const Progress&)> progress_;
};

}  // namespace floorwheel
