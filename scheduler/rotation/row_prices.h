// SPDX-License-Identifier: GPL-3.0-or-later
// The cheapest row of one member alone, when each place costs a price: what Lagrange's bound asks over and
// over. One table over sets of stations for rows that work every visit the window lets, with all slots not
// worked that the window leaves: in one lap, or in several that are all complete (a lap that misses nothing
// ends exactly when its set is full, so the set starts again). Prices and costs are whole numbers scaled so
// that sums fit 32 bits; `forbidden` stands for what the given cost rules out. Slots count from 0.
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/rotation/sheet.h"

namespace floorwheel {

/// Costs of steps of one member's row, scaled. Indices are places in `list`.
struct RowCosts {
  std::vector<int> list;  // stations to visit
  int first = 0;          // slot the window begins with
  int visits = 0;         // to make; with several laps all of every lap
  int laps = 1;
  int rests = 0;             // slots left over
  std::int32_t idle = 0;     // a slot not worked before the last worked one
  Grid<std::int32_t> next;   // (from, to) in the next slot
  Grid<std::int32_t> later;  // (from, to) after slots not worked
};

constexpr std::int32_t forbidden = 1 << 28;
constexpr std::int32_t row_cost_most = 1 << 27;  // no row may cost more, prices included

/// What a row, station or `nowhere` by slot - first, costs at these prices.
std::int32_t row_cost(const RowCosts&, const Grid<std::int32_t>& price, const std::vector<int>& row);

class RowTable {
 public:
  static constexpr int list_most = 16;

  explicit RowTable(const RowCosts&);
  /// What one least() takes, in nanoseconds or so.
  [[nodiscard]] static std::int64_t entries(const RowCosts&);
  /// price(place in the list, slot - first); `forbidden` where it is closed.
  std::int32_t least(const Grid<std::int32_t>& price);
  [[nodiscard]] std::int32_t least() const { return least_; }  // the last one
  /// A row of that cost: station or `nowhere` by slot - first.
  [[nodiscard]] std::vector<int> row() const;
  /// What such a row costs at these prices.
  [[nodiscard]] std::int32_t cost(const std::vector<int>& row) const { return row_cost(c_, *price_, row); }
  /// All rows that cost at most `more` above the least, as far as `most`; false: there are more.
  bool near(std::int32_t more, std::size_t most, std::vector<std::vector<int>>& rows) const;

 private:
  using Lane = std::int32_t __attribute__((vector_size(16)));
  static constexpr int lanes = 4;

  [[nodiscard]] std::size_t cell(int rests, int lap, std::uint32_t set, int last) const {
    return (ix(rests * c_.laps + lap) * (std::size_t{1} << n_) + set) * ix(width_) + ix(last);
  }
  void spread(int rests, int lap, std::uint32_t set);
  bool back(int rests, int lap, std::uint32_t set, int last, bool resting, std::int32_t so_far,
            std::int32_t limit, std::size_t most, std::vector<int>& row,
            std::vector<std::vector<int>>& rows) const;

  const RowCosts c_;
  const int n_;
  const int width_;  // n_ rounded up to whole lanes
  const Grid<std::int32_t>* price_ = nullptr;
  std::vector<std::int32_t> worked_;  // [rests so far][lap][set][last]
  std::vector<std::int32_t> rested_;  // the same, not worked in the last slot
  std::int32_t least_ = forbidden;
  int end_rests_ = 0, end_lap_ = 0, end_last_ = 0;  // of a least row
  std::uint32_t end_set_ = 0;
};

}  // namespace floorwheel
