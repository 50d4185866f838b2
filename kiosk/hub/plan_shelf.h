// SPDX-License-Identifier: GPL-3.0-or-later
// Plans that were made lately, each with the whole question it answers. A plan is taken only for exactly the
// same question, so that one made for an older state of the class can never be used.
#pragma once

#include <deque>
#include <string>

#include "kiosk/hub/planner.h"

namespace floorwheel::hub {

class PlanShelf {
 public:
  struct Entry {
    std::string id;  // UUID: a screen publishes a proposal by it
    PlanRequest request;
    PlanResult result;
  };
  /// Keeps a plan under a new id; the oldest go.
  void keep(PlanRequest, PlanResult);
  [[nodiscard]] const Entry* find(const PlanRequest&) const;
  [[nodiscard]] const Entry* find(const std::string& id) const;

 private:
  static constexpr std::size_t most = 16;
  std::deque<Entry> entries_;
};

}  // namespace floorwheel::hub
