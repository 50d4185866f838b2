// SPDX-License-Identifier: GPL-3.0-or-later
// Weighs each component before `moved` so much that no choice makes up for more of it with less of what
// follows.
#include "scheduler/rotation/row_choice.h"

#include <algorithm>

#include "scheduler/rotation/price_step.h"

namespace floorwheel {
namespace {

__extension__ using Wide = __int128;

constexpr std::int32_t scale = 256;               // prices are parts of a moved entry
constexpr std::int64_t looks_most = 150'000'000;  // at one limit of one row, in all rounds of prices
constexpr std::int64_t rounds_most = 3'000;
constexpr std::int64_t price_limit = std::int64_t{1} << 32;  // so that sums over a whole class fit 64 bits

/// By how much the aim is above what the rows have at least, each by itself: so much could be made up.
std::int64_t above_least(const RowLists& lists, const Cost& aim, Component c) {
  std::int64_t least = 0;
  for (const std::vector<PricedRow>& list : lists) {
    const auto has_less = [&](const PricedRow& a, const PricedRow& b) { return a.cost[c] < b.cost[c]; };
    if (const auto row = std::min_element(list.begin(), list.end(), has_less); row != list.end())
      least += row->cost[c];
  }
  return std::max<std::int64_t>(0, aim[c] - least);
}

/// Visits that are still to be made where so much is missed.
std::int64_t visits_left(const Problem& p, std::int64_t missed) {
  std::int64_t left = -missed;
  for (int m = 0; m < p.members; ++m) left += p.visits_wanted(m) - p.visits_made(m);
  return left;
}

}  // namespace

RowChoice::RowChoice(const Problem& p, const RowLists& lists, const Cost& aim) : lists_(lists) {
  const std::int64_t back_to_back = std::int64_t{p.members} * (p.slots - p.from) + 1;  // moves everything
  const std::int64_t uneven = back_to_back * (1 + above_least(lists, aim, Component::back_to_back));
  const Wide weight = Wide{uneven} * (1 + above_least(lists, aim, Component::uneven));
  if (4 * (weight + uneven) * scale > price_limit) return;
  const auto missed = static_cast<std::int64_t>(weight);
  price_most_ = 4 * (missed + uneven) * scale;  // more than any row gains by any place
  possible_ = true;
  const auto earlier = [&](const Cost& c) {
    return missed * c[Component::missed] + uneven * c[Component::uneven] +
           back_to_back * c[Component::back_to_back];
  };
  aim_ = earlier(aim);
  const int slots = p.slots - p.from;
  const auto place = [&](int s, int t) { return s * slots + t - p.from; };
  const auto units = [&](int k, int t) { return (p.stations + k) * slots + t - p.from; };
  room_.assign(ix((p.stations + p.kinds) * slots), 0);
  std::int64_t places = 0;
  for (int t = p.from; t < p.slots; ++t) {
    for (int s = 0; s < p.stations; ++s) places += room_[ix(place(s, t))] = p.places(s, t);
    for (int k = 0; k < p.kinds; ++k) room_[ix(units(k, t))] = p.units[ix(k)];
  }
  // Where every place is taken, the same on all prices changes nothing: so they may fall as well as rise, and
  // begin where missing a visit is worth it.
  const bool is_full = places == visits_left(p, aim[Component::missed]);
  prices_.assign(room_.size(), is_full ? (missed + uneven) * scale : 0);
  for (int m = 0; m < p.members; ++m)
    if (p.counts[ix(m)] == 0 && lists[ix(m)].size() > 1) newcomer_ = m;
  if (newcomer_ >= 0) without_.assign(lists[ix(newcomer_)].size(), -1);
  for (const std::vector<PricedRow>& list : lists) {
    auto& cost = cost_.emplace_back();
    auto& begin = begin_.emplace_back(1, 0);
    auto& takes = takes_.emplace_back();
    for (const PricedRow& row : list) {
      cost.push_back(earlier(row.cost) + row.cost[Component::moved]);
      for (int t = p.from; t < p.slots; ++t) {
        const StationIndex s = row.row[ix(t)];
        if (s == nowhere) continue;
        takes.push_back(place(s, t));
        for (int k : p.takes[ix(s)]) takes.push_back(units(k, t));
      }
      begin.push_back(takes.size());
    }
  }
  best_ = weigh(prices_, nullptr);
}

std::int64_t RowChoice::reduced(int m, std::size_t r, const std::vector<std::int64_t>& prices) const {
  std::int64_t sum = scale * cost_[ix(m)][r];
  for (std::size_t i = begin_[ix(m)][r]; i < begin_[ix(m)][r + 1]; ++i) sum += prices[ix(takes_[ix(m)][i])];
  return sum;
}

/// What everybody's cheapest row costs, less what room is worth. `used`: by limit, as those rows would have
/// it.
std::int64_t RowChoice::weigh(const std::vector<std::int64_t>& prices, std::vector<int>* used) const {
  std::int64_t sum = 0;
  for (std::size_t l = 0; l < room_.size(); ++l) sum -= room_[l] * prices[l];
  if (used) std::fill(used->begin(), used->end(), 0);
  for (int m = 0; m < static_cast<int>(lists_.size()); ++m) {
    std::int64_t least = INT64_MAX;
    std::size_t at = 0;
    for (std::size_t r = 0; r < cost_[ix(m)].size(); ++r)
      if (const std::int64_t here = reduced(m, r, prices); here < least) {
        least = here;
        at = r;
      }
    if (least == INT64_MAX) continue;
    sum += least;
    if (used)
      for (std::size_t i = begin_[ix(m)][at]; i < begin_[ix(m)][at + 1]; ++i) ++(*used)[ix(takes_[ix(m)][i])];
  }
  return sum;
}

std::int64_t RowChoice::bound() const {
  const std::int64_t beyond = best_ - scale * aim_;
  return beyond <= 0 ? 0 : (beyond + scale - 1) / scale;
}

void RowChoice::raise(std::int64_t enough) {
  std::int64_t looks = 1;
  for (const auto& takes : takes_) looks += std::ssize(takes);
  const std::int64_t rounds = std::min(rounds_most, looks_most / looks);
  std::vector<std::int64_t> prices = prices_;
  std::vector<int> used(room_.size(), 0);
  PriceStep step(room_.size());
  std::int64_t pace = 65'536;
  int since = 0;
  for (std::int64_t round = 0; round < rounds && bound() < enough; ++round) {
    const std::int64_t here = weigh(prices, &used);
    if (here > best_) {
      best_ = here;
      prices_ = prices;
      since = 0;
    } else if (++since >= 20) {
      since = 0;
      pace = pace * 3 / 4;
      if (pace < 512) break;
      if (pace < 16'384) {
        prices = prices_;
        step.forget();
        continue;
      }
    }
    const std::int64_t gap = std::max<std::int64_t>(scale, scale * (enough + aim_) - here);
    const auto over = [&](std::size_t l) { return used[l] - room_[l]; };
    if (!step.take(prices, over, pace, gap, price_most_)) break;
  }
}

RowChoice::Look RowChoice::reach(std::int64_t target, std::int64_t& steps, std::vector<Row>& rows,
                                 bool in_turn, const std::function<bool()>& stop) {
  Packing packing;
  packing.room = room_;
  if (in_turn) packing.first_kind = newcomer_;
  packing.budget = scale * (aim_ + target) - best_;
  if (packing.budget < 0) return Look::none;
  if (packing.budget >= INT32_MAX) return Look::unended;
  for (const std::int64_t price : prices_)  // more than the budget is as good as the budget and one
    packing.price.push_back(static_cast<std::int32_t>(std::min(price, packing.budget + 1)));
  std::vector<std::size_t> row_of;  // in its list
  for (int m = 0; m < static_cast<int>(lists_.size()); ++m) {
    packing.count.push_back(1);
    std::int64_t least = INT64_MAX;
    for (std::size_t r = 0; r < cost_[ix(m)].size(); ++r) least = std::min(least, reduced(m, r, prices_));
    for (std::size_t r = 0; r < cost_[ix(m)].size(); ++r) {
      const std::int64_t over = reduced(m, r, prices_) - least;
      if (over > packing.budget || (m == newcomer_ && without_[r] >= target)) continue;
      PackRow row{m, static_cast<std::int32_t>(over), {}, {}};
      row.limits.assign(takes_[ix(m)].begin() + static_cast<std::ptrdiff_t>(begin_[ix(m)][r]),
                        takes_[ix(m)].begin() + static_cast<std::ptrdiff_t>(begin_[ix(m)][r + 1]));
      packing.rows.push_back(std::move(row));
      row_of.push_back(r);
    }
  }
  std::vector<int> without;
  const std::vector<int> chosen = pack(packing, steps, stop, &without);
  for (int r : without) without_[row_of[ix(r)]] = target;
  if (chosen.empty()) return steps < 0 ? Look::unended : Look::none;
  rows.assign(lists_.size(), Row{});
  for (int r : chosen) {
    const int m = packing.rows[ix(r)].kind;
    rows[ix(m)] = lists_[ix(m)][row_of[ix(r)]].row;
  }
  return Look::found;
}

}  // namespace floorwheel
