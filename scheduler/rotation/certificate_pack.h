// SPDX-License-Identifier: GPL-3.0-or-later
// For the check of a certificate only: whether one row for each member can be chosen so that no limit is
// exceeded and all stays within a budget: what rows cost beyond the cheapest of their kind, and what is left
// over of each limit at its price.
#pragma once

#include "scheduler/rotation/certificate_facts.h"

namespace floorwheel::certify {

class Choices {
 public:
  explicit Choices(std::int64_t steps) : steps_(steps) {}

  void limit(int room, std::int64_t price);
  /// So many members of one kind; rows that follow are of it.
  void kind(int members);
  /// `takes`: limits, each once.
  void row(std::int32_t beyond, std::vector<int> takes);
  /// Of all limits.
  [[nodiscard]] Wide worth() const;

  enum class Is : std::uint8_t { none, there, unknown };
  Is look(std::int64_t budget);

 private:
  struct One {
    std::int64_t beyond;
    std::vector<int> takes;  // its kind as well
  };
  /// What is still to be decided: rows by index with what they cost beyond what has been paid for.
  struct Rest {
    std::vector<std::pair<int, std::int64_t>> rows;
    std::vector<std::int64_t> left_over;  // [limit] of one left over
    std::int64_t budget = 0;
  };
  Is decide(Rest rest);
  void find_who(const Rest& rest);
  bool pay(Rest& rest);
  [[nodiscard]] std::size_t many(std::size_t l) const { return from_[l + 1] - from_[l]; }

  std::int64_t steps_;
  std::vector<std::int64_t> price_;  // [limit]
  std::vector<int> room_;            // [limit], then [kind] members still to choose for
  std::vector<int> kinds_;           // [kind] members
  std::vector<One> rows_;
  int to_choose_ = 0;
  std::vector<std::size_t> from_, at_;  // [limit, kind] where its rows begin in who_
  std::vector<int> who_;                // indices into Rest::rows
  std::vector<std::uint8_t> full_;      // [limit, kind] none left
};

}  // namespace floorwheel::certify
