// SPDX-License-Identifier: GPL-3.0-or-later
// The fewest entries moved when each member takes a row from a list, as a repair on its ring does: prices for
// places and units give a bound (subgradients, as in lagrange.h), and packing looks at every choice between
// the bound and the best known.
#pragma once

#include "scheduler/rotation/row_lists.h"
#include "scheduler/rotation/row_packing.h"

namespace floorwheel {

class RowChoice {
 public:
  /// `aim`: `missed`, `uneven` and `back_to_back` that the choice has to have, the least that there can be.
  RowChoice(const Problem&, const RowLists&, const Cost& aim);

  /// Whether the weights that this takes are small enough; else nothing below may be asked.
  [[nodiscard]] bool possible() const { return possible_; }
  /// Raises the bound until it is `enough` or no longer rises.
  void raise(std::int64_t enough);
  /// No choice with the aim moves fewer.
  [[nodiscard]] std::int64_t bound() const;

  enum class Look : std::uint8_t { found, none, unended };
  /// Looks for a choice that moves `target` or fewer; rule 5 is not asked. `steps` is used up. `in_turn`: row
  /// by row of the newcomer, if there is one: longer where there is much room, and shorter where there is
  /// none.
  Look reach(std::int64_t target, std::int64_t& steps, std::vector<Row>& rows, bool in_turn,
             const std::function<bool()>& stop = {});

 private:
  [[nodiscard]] std::int64_t weigh(const std::vector<std::int64_t>& prices, std::vector<int>* used) const;
  [[nodiscard]] std::int64_t reduced(int m, std::size_t r, const std::vector<std::int64_t>& prices) const;

  const RowLists& lists_;
  bool possible_ = false;
  std::int64_t price_most_ = 0;
  std::int64_t aim_ = 0;                         // weighed
  std::vector<std::int64_t> without_;            // [row of the newcomer] no choice moves as few with it
  int newcomer_ = -1;                            // member without entries to keep, in the way of others
  std::vector<int> room_;                        // [limit] places at a station, or units, in a slot
  std::vector<std::vector<std::int64_t>> cost_;  // [member][row] weighed
  std::vector<std::vector<std::size_t>> begin_;  // [member][row] in takes_
  std::vector<std::vector<int>> takes_;          // [member] limits of each row, one after another
  std::vector<std::int64_t> prices_;             // [limit] of the best bound
  std::int64_t best_ = 0;                        // of the whole, weighed
};

}  // namespace floorwheel
