// SPDX-License-Identifier: GPL-3.0-or-later
// A free rotation under change: entries are set one by one, then the whole change is judged and priced, and
// either kept or taken back. Only the rows and joints it touched are priced anew.
#pragma once

#include "scheduler/rotation/price.h"

namespace floorwheel {

class Draft {
 public:
  Draft(const Problem&, const std::vector<Row>& rows);

  [[nodiscard]] const Sheet& sheet() const { return sheet_; }
  [[nodiscard]] const Cost& cost() const { return cost_; }
  [[nodiscard]] const Cost& row_cost(int m) const { return row_cost_[ix(m)]; }

  /// Part of a change: t is a planned slot.
  void set(int m, int t, StationIndex s);
  /// Whether the sheet with the change keeps all rules.
  [[nodiscard]] bool holds() const;
  /// The cost with the change.
  Cost weigh();
  /// The same in two steps: reloads as they were before the change, then as they are with it.
  Cost weigh_rows();
  Cost weigh_reloads();
  /// Ends the change: after weigh().
  void keep();
  /// Ends the change as if it had not been.
  void take_back();

 private:
  struct Entry {
    int member, slot;
    StationIndex before;
  };
  void weigh_reload(StationIndex s, int t);

  const Problem& p_;
  Sheet sheet_;
  Cost cost_;
  std::vector<Cost> row_cost_;
  Grid<std::int64_t> reload_;  // (station, slot)
  std::vector<Entry> changes_;
  std::vector<int> touched_;  // members
  std::vector<std::uint8_t> is_touched_;
  Cost new_cost_;
  std::vector<Cost> new_rows_;
  struct Reload {
    StationIndex station;
    int slot;
    std::int64_t before;
  };
  std::vector<Reload> reloads_;
};

}  // namespace floorwheel
