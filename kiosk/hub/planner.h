// SPDX-License-Identifier: GPL-3.0-or-later
// The planner thread: one question of rotation at a time, in and out as values. Who asked holds the plan
// against the class as it then stands; one made for an older state of it fits nothing and is thrown away.
#pragma once

#include <condition_variable>
#include <cstdint>
#include <deque>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>
#include <variant>

#include "scheduler/class_spec.h"
#include "scheduler/rotation/rotation.h"
#include "scheduler/rotation/solve.h"

namespace floorwheel::hub {

/// Everything a plan depends on.
struct PlanRequest {
  ClassSpec spec;
  std::optional<int> slots;         // T; none: the planner chooses (never in a repair)
  std::optional<EarlierSheet> old;  // a repair of this sheet
  int at_slot = 0;                  // ... from this slot on
  friend bool operator==(const PlanRequest&, const PlanRequest&) = default;
};

/// The plan, with the rows of what each number of slots buys (a repair: none).
using PlanResult = OrRefusal<SlotTable>;

class Planner {
 public:
  using Done = std::function<void(std::uint64_t ticket, const PlanRequest&, PlanResult)>;
  using Under = std::function<void(std::uint64_t ticket, const Progress&)>;
  /// Both are called on the planner thread.
  Planner(Done done, Under underway);
  ~Planner();  // what is under way is stopped
  Planner(const Planner&) = delete;
  Planner& operator=(const Planner&) = delete;

  void ask(std::uint64_t ticket, PlanRequest);
  /// Forgets a waiting question and ends one under way; it is then never answered.
  void cancel(std::uint64_t ticket);

 private:
  void run();
  [[nodiscard]] bool unwanted(std::uint64_t ticket);

  struct Job {
    std::uint64_t ticket = 0;
    PlanRequest request;
  };
  Done done_;
  Under underway_;
  std::mutex mutex_;
  std::condition_variable work_;
  std::deque<Job> jobs_;
  std::optional<std::uint64_t> current_;
  bool cancelled_ = false;  // the one under way
  bool stopping_ = false;
  std::thread thread_;
};

/// What the planner thread does with one question; also for calling directly.
PlanResult make_plan(const PlanRequest&, const PlanOptions&);

}  // namespace floorwheel::hub
