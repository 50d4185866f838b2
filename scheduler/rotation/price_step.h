// SPDX-License-Identifier: GPL-3.0-or-later
// Prices on their way up a bound: they rise where too many meet and fall where room is left (subgradients,
// smoothed; Held, Wolfe and Crowder 1974, from memory). All in whole numbers.
#pragma once

#include <algorithm>
#include <cstdint>
#include <vector>

namespace floorwheel {

class PriceStep {
 public:
  explicit PriceStep(std::size_t limits) : way_(limits, 0) {}

  /// Back at other prices: the way so far says nothing.
  void forget() { std::fill(way_.begin(), way_.end(), 0); }

  /// `over(l)`: how many more than the room take limit l. Goes `pace` 65,536ths of the way to where the bound
  /// would be higher by `gap`, were it as steep all along. False: there is no way up.
  template <class Price, class Over>
  bool take(std::vector<Price>& prices, Over over, std::int64_t pace, std::int64_t gap, std::int64_t most) {
    std::int64_t square = 0;
    for (std::size_t l = 0; l < way_.size(); ++l) {
      std::int64_t slope = over(l);
      if (slope < 0 && prices[l] == 0) slope = 0;
      way_[l] = (way_[l] * 160 + slope * 256 * 96) / 256;
      square += way_[l] * way_[l];
    }
    if (square == 0) return false;
    for (std::size_t l = 0; l < way_.size(); ++l) {
      const Wide step = Wide{pace} * gap * way_[l] / square / 256;
      prices[l] = static_cast<Price>(std::clamp<Wide>(prices[l] + step, 0, most));
    }
    return true;
  }

 private:
  __extension__ using Wide = __int128;
  std::vector<std::int64_t> way_;  // smoothed, in 256ths
};

}  // namespace floorwheel
