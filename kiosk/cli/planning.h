// SPDX-License-Identifier: GPL-3.0-or-later
// What plan and repair share: the planner's options from the command line, the line of progress, Ctrl-C, and
// printing of a plan or a refusal.
#pragma once

#include <chrono>
#include <vector>

#include "kiosk/cli/args.h"
#include "scheduler/class_spec.h"
#include "scheduler/rotation/solve.h"
#include "scheduler/rotation/what_if.h"

namespace floorwheel::cli {

/// --json, --seed, --effort, --seconds, --timing and --exercises.
std::vector<Option> planning_options();

class Planning {
 public:
  explicit Planning(const Args&);
  ~Planning();
  Planning(const Planning&) = delete;
  Planning& operator=(const Planning&) = delete;

  /// --seconds only ends the search earlier; --effort is a multiple of the usual steps.
  [[nodiscard]] PlanOptions options() const;
  [[nodiscard]] WhatIfOptions for_what_if() const;

  /// Prints and gives the exit code.
  int finish(const ClassSpec&, const std::string& class_file, const OrRefusal<Plan>&) const;
  int finish(const ClassSpec&, const std::string& class_file, const OrRefusal<SlotTable>&) const;
  int finish(const ClassSpec&, const std::string& class_file, const OrRefusal<WhatIf>&) const;

 private:
  [[nodiscard]] std::optional<long> elapsed_ms() const;
  template <class T>
  int finish_any(const ClassSpec&, const std::string& class_file, const OrRefusal<T>&) const;

  const Args& args_;
  std::chrono::steady_clock::time_point start_;
  std::optional<std::chrono::steady_clock::time_point> deadline_;
  bool shows_progress_;
};

}  // namespace floorwheel::cli
