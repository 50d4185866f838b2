// SPDX-License-Identifier: GPL-3.0-or-later
// A table of values with int rows and columns, in one block of memory.
#pragma once

#include <cassert>
#include <cstddef>
#include <vector>

namespace floorwheel {

/// An int that is known not to be negative, as an index.
constexpr std::size_t ix(int i) { return static_cast<std::size_t>(i); }

template <class T>
class Grid {
 public:
  Grid() = default;
  Grid(int rows, int columns, T value = T{}) : columns_(columns), cells_(ix(rows) * ix(columns), value) {}

  T& operator()(int row, int column) { return cells_[ix(row) * ix(columns_) + ix(column)]; }
  const T& operator()(int row, int column) const { return cells_[ix(row) * ix(columns_) + ix(column)]; }
  T* row(int r) { return cells_.data() + ix(r) * ix(columns_); }
  const T* row(int r) const { return cells_.data() + ix(r) * ix(columns_); }
  [[nodiscard]] int columns() const { return columns_; }

 private:
  int columns_ = 0;
  std::vector<T> cells_;
};

}  // namespace floorwheel
