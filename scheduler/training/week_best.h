// SPDX-License-Identifier: GPL-3.0-or-later
// The best plan so far, and the only way to become it: what fits, has its rings and is smaller in the order
// of the goals, all counted exactly.
#pragma once

#include <map>
#include <optional>

#include "scheduler/training/week_floor.h"
#include "scheduler/training/week_ring.h"

namespace floorwheel::training {

enum class Offer {
  taken,
  no_better,
  no_ring,    // a class has none, or does not fit
  not_known,  // a class of more than ring_exact_most stations in which no ring was found
};

class WeekBest {
 public:
  explicit WeekBest(const WeekFloor& floor) : floor_(floor), rings_(floor.classes.size()) {}

  Offer offer(const WeekCounts&);
  [[nodiscard]] bool any() const { return counts_.has_value(); }
  [[nodiscard]] const WeekCounts& counts() const { return *counts_; }
  [[nodiscard]] const WeekValues& values() const { return values_; }
  [[nodiscard]] const WeekFloor& floor() const { return floor_; }

 private:
  RingAnswer ring(std::size_t c, const std::vector<int>& counts);

  const WeekFloor& floor_;
  std::optional<WeekCounts> counts_;
  WeekValues values_{};
  std::vector<std::map<std::vector<int>, RingAnswer>> rings_;  // asked already, by class
};

/// Betters the best plan by exchanging single exercises, cooling down over `steps` trials (simulated
/// annealing: Kirkpatrick, Gelatt and Vecchi 1983, from memory). The best must have a plan.
void better_by_exchange(WeekBest&, int steps, std::uint64_t seed);

}  // namespace floorwheel::training
