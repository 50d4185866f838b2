// SPDX-License-Identifier: GPL-3.0-or-later
// Lagrange's bound on one component of a free rotation's cost, the earlier ones as they are: places and units
// cost prices instead of being counted, so that every member takes the cheapest row alone; prices rise where
// too many meet (subgradients, smoothed; Held, Wolfe and Crowder 1974, from memory). All in whole numbers.
// For classes where nobody misses more than the own window forces, up to MemoryTable::list_most stations a
// list, of which long ones remember some only; of several laps where nobody misses anything, up to
// RowTable::list_most; rule 5 and short rests are left out, which only weakens the bound.
#pragma once

#include "scheduler/rotation/certificate.h"
#include "scheduler/rotation/engine.h"
#include "scheduler/rotation/row_pricer.h"

namespace floorwheel {

/// Members alike in all that their own row depends on.
struct RowKind {
  std::vector<int> members;
  RowCosts costs;
};

class Lagrange {
 public:
  Lagrange(const Problem&, const Cost& given, Component);

  [[nodiscard]] bool possible() const { return possible_; }
  /// One table entry is about a nanosecond.
  [[nodiscard]] std::int64_t entries() const;
  /// Raises the bound with so many rounds of prices, fewer where tables grow on the way; ends early at
  /// `enough`. How many it took, counted as they cost now.
  int raise(int rounds, std::int64_t enough, const std::function<bool()>& stop = {});
  [[nodiscard]] std::int64_t bound() const;
  [[nodiscard]] PriceList prices() const;

  /// Looks for a rotation with the component at `target` or less, the earlier ones as given. `steps` is used
  /// up; unended: before all was looked at.
  enum class Look : std::uint8_t { found, none, unended, too_many };
  Look reach(std::int64_t target, std::int64_t& steps, std::vector<Row>& rows);

  /// Chooses the rows of these members again, within what the others leave, for a lower cost under the
  /// weights. `rows` are whole rows of a rotation in which nobody misses more than forced. `steps` is used
  /// up.
  bool again(const std::vector<int>& members, std::int64_t& steps, std::vector<Row>& rows);

 private:
  struct Limit {  // places at a station, or units, in a slot
    int station = -1, kind = -1, slot = 0;
    std::int32_t room = 0;
  };
  void find_kinds();
  void find_limits();
  [[nodiscard]] RowCosts costs_of(int m) const;
  void set_prices(const std::vector<std::int32_t>& prices);
  void first_memory();
  [[nodiscard]] std::vector<std::vector<int>> remembered(const RowKind&) const;
  void make_tables();
  bool remember_more();
  [[nodiscard]] bool memory_fits() const;
  std::int64_t weigh(std::vector<std::int32_t>* used);
  void add_near(std::size_t kind, std::vector<std::vector<int>>& near, struct Packing& packing) const;

  const Problem& p_;
  const Cost given_;
  const Component component_;
  bool possible_ = false;
  std::int32_t scale_ = 1;
  std::int32_t price_most_ = 0;
  Cost weights_;           // of earlier components that are given above 0, and the scale
  std::int64_t past_ = 0;  // what the earlier components weigh as given
  std::vector<RowKind> kinds_;
  std::vector<std::vector<int>> memory_;  // [station] those remembered there; empty: all
  std::vector<RowPricer> tables_;
  std::vector<Grid<std::int32_t>> price_of_;  // [kind](place in list, slot - first)
  std::vector<Limit> limits_;
  Grid<int> place_limit_, unit_limit_;  // index, -1: none
  std::vector<std::int32_t> best_prices_;
  std::int64_t best_ = 0;
  bool weighed_ = false;
};

/// Raises bounds of `found`, not of a repair, component by component as far as they are reached, and
/// betters it where prices show the way. What was proven comes back with its prices.
struct Priced {
  Component component;
  ProofType type;
  PriceList prices;
};
std::vector<Priced> prove_by_prices(const Problem&, Found&, std::int64_t effort,
                                    const std::function<bool()>& stop = {});

}  // namespace floorwheel
