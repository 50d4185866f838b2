// SPDX-License-Identifier: GPL-3.0-or-later
// One of the two tables of rows: exact, or with a memory that forgets.
#pragma once

#include <variant>

#include "scheduler/rotation/memory_table.h"
#include "scheduler/rotation/row_prices.h"

namespace floorwheel {

class RowPricer {
 public:
  explicit RowPricer(const RowCosts& c) : table_(std::in_place_type<RowTable>, c) {}
  RowPricer(const RowCosts& c, std::vector<std::vector<int>> remembered)
      : table_(std::in_place_type<MemoryTable>, c, std::move(remembered)) {}

  std::int32_t least(const Grid<std::int32_t>& price) {
    return std::visit([&](auto& t) { return t.least(price); }, table_);
  }
  [[nodiscard]] std::int32_t least() const {
    return std::visit([](const auto& t) { return t.least(); }, table_);
  }
  [[nodiscard]] std::vector<int> row() const {
    return std::visit([](const auto& t) { return t.row(); }, table_);
  }
  [[nodiscard]] std::int32_t cost(const std::vector<int>& row) const {
    return std::visit([&](const auto& t) { return t.cost(row); }, table_);
  }
  bool near(std::int32_t more, std::size_t most, std::vector<std::vector<int>>& rows) const {
    return std::visit([&](const auto& t) { return t.near(more, most, rows); }, table_);
  }

 private:
  std::variant<RowTable, MemoryTable> table_;
};

}  // namespace floorwheel
