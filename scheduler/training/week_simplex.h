// SPDX-License-Identifier: GPL-3.0-or-later
// The dual simplex method with bounded variables on a dense table (Lemke 1954; long steps over bounds: Fourer
// 1994; both from memory). Every variable has two finite bounds, so that any basis becomes dual feasible by
// putting each variable outside it at the bound its reduced cost points to: the search only changes bounds.
//
// Here alone in scheduler/ numbers are double. They only propose multipliers of the rows: what is said of a
// node is proven in whole numbers from them (`Certificate`), whatever the rounding. The four operations of
// IEEE 754 without contraction give the same table, and so the same search, on every machine.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "scheduler/training/week_whole_program.h"

namespace floorwheel::training {

class BoundedSimplex {
 public:
  explicit BoundedSimplex(const WholeProgram&);

  enum class End {
    optimal,
    infeasible,
    above,  // the bound has passed `enough`
    tired,  // too many steps for one node
  };
  /// Bounds by variable, within those of the program.
  End solve(const std::vector<int>& low, const std::vector<int>& high, double enough);

  /// A proven lower bound of the cost between the bounds of the last solve, rounded up to a whole number;
  /// after `infeasible`, `nothing` if it is proven that nothing is there.
  [[nodiscard]] std::int64_t proven() const;
  static constexpr std::int64_t nothing = std::int64_t{1} << 40;

  [[nodiscard]] double value(std::size_t variable) const { return x_[variable]; }
  [[nodiscard]] double cost() const;
  /// The variable that row i of the table says, and how the rows of the program add up to it: the sum of
  /// multipliers · (row - terms), which is 0, is that variable less the row's entries times those outside.
  [[nodiscard]] std::size_t basic(std::size_t i) const { return basic_[i]; }
  [[nodiscard]] std::vector<double> multipliers(std::size_t i) const;
  /// Table entries recomputed so far.
  [[nodiscard]] std::int64_t work() const { return work_; }

 private:
  double* table_row(std::size_t i) { return table_.data() + i * n_; }
  void begin();
  void place(const std::vector<int>& low, const std::vector<int>& high);
  void compute_basic();
  bool choose_row();
  bool choose_column();
  void exchange();
  struct Bound {
    std::int64_t scaled;
    int bits;
  };
  [[nodiscard]] Bound certificate(const std::vector<double>& multipliers, bool with_cost) const;

  const WholeProgram& p_;
  std::size_t n_, m_;
  std::vector<double> table_;    // basic = table · outside
  std::vector<double> reduced_;  // of the variables outside the basis
  std::vector<std::size_t> outside_, basic_;
  std::vector<double> x_;       // by variable
  std::vector<double> weight_;  // of a broken bound: long rows count for less
  std::vector<int> low_, high_;
  std::vector<char> at_high_;         // by place outside the basis
  std::size_t row_ = 0, column_ = 0;  // of the next exchange
  double rises_ = 1;                  // the basic variable of row_ has to rise (1) or fall (-1)
  double missing_ = 0;                // by so much
  End end_ = End::optimal;
  std::int64_t work_ = 0;
  int exchanges_ = 0;  // since the table was last begun anew
  struct Break {
    double ratio, size;
    std::size_t column;
  };
  std::vector<Break> breaks_;
  std::vector<std::size_t> filled_;
};

}  // namespace floorwheel::training
