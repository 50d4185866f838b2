// SPDX-License-Identifier: GPL-3.0-or-later
// The members' rows and the limits they share, and the rise of the prices.
#include "scheduler/rotation/lagrange.h"

#include <algorithm>
#include <numeric>

#include "scheduler/rotation/price_step.h"

namespace floorwheel {
namespace {

__extension__ using Wide = __int128;

/// Components that a row's steps decide.
constexpr std::array by_steps = {Component::back_to_back, Component::idle, Component::assist_overlap,
                                 Component::walk_cm};
constexpr std::int64_t entries_unasked = 4'000'000;     // between questions whether to stop
constexpr std::int64_t no_row = INT64_MIN;              // somebody has none
constexpr std::int64_t costs_most = row_cost_most / 2;  // of a row, prices apart

bool alike(const Problem& p, int a, int b) {
  if (p.first[ix(a)] != p.first[ix(b)] || p.last[ix(a)] != p.last[ix(b)]) return false;
  if (p.required[ix(a)] != p.required[ix(b)]) return false;
  return std::all_of(p.required[ix(a)].begin(), p.required[ix(a)].end(), [&](int s) {
    return p.work(a, s).primary == p.work(b, s).primary && p.work(a, s).assisting == p.work(b, s).assisting;
  });
}

}  // namespace

Lagrange::Lagrange(const Problem& p, const Cost& given, Component component)
    : p_(p), given_(given), component_(component) {
  if (p.is_repair || std::find(by_steps.begin(), by_steps.end(), component) == by_steps.end()) return;
  std::int64_t forced = 0;
  int visits = 1;
  int longest = 0;
  for (int m = 0; m < p.members; ++m) {
    forced += p.forced_missed(m);
    // Which visits of several laps are missed, the table of sets cannot tell.
    if (p.laps > 1 && p.slots_present(m) > 0 && p.forced_missed(m) > 0) return;
    visits = std::max(visits, p.visits_wanted(m) - p.forced_missed(m));
    if (static_cast<int>(p.required[ix(m)].size()) > MemoryTable::list_most) return;
    longest = std::max(longest, static_cast<int>(p.required[ix(m)].size()));
  }
  if (given[Component::missed] != forced || (p.laps > 1 && longest > RowTable::list_most)) return;
  std::int64_t unit = 1;
  if (component == Component::walk_cm)
    for (int a = 0; a < p.stations; ++a)
      for (int b = 0; b < p.stations; ++b) unit = std::max<std::int64_t>(unit, p.walk_cm(a, b));
  std::int64_t above_0 = 0;
  for (Component c : by_steps)
    if (c < component && given[c] > 0) ++above_0;
  const std::int64_t row = unit * std::max(visits, p.slots) * (1 + 4 * above_0);
  if (row > costs_most) return;
  scale_ = static_cast<std::int32_t>(std::clamp<std::int64_t>(costs_most / row, 1, 1024));
  for (Component c : by_steps)
    if (c < component && given[c] > 0) {
      weights_[c] = 4 * unit * scale_;
      past_ += weights_[c] * given[c];
    }
  weights_[component] = scale_;
  find_kinds();
  find_limits();
  if (longest > RowTable::list_most) first_memory();
  possible_ = !kinds_.empty() && (memory_.empty() || memory_fits());
}

RowCosts Lagrange::costs_of(int m) const {
  RowCosts c;
  c.list = p_.required[ix(m)];
  c.first = p_.first[ix(m)];
  c.laps = p_.laps;
  c.visits = p_.visits_wanted(m) - p_.forced_missed(m);
  c.rests = p_.slots_present(m) - c.visits;
  const auto weight = [&](Component k) -> std::int32_t {
    if (k > component_) return 0;
    return k < component_ && given_[k] == 0 ? forbidden : static_cast<std::int32_t>(weights_[k]);
  };
  const auto walk = [&](int a, int b) {
    return component_ == Component::walk_cm ? scale_ * p_.walk_cm(a, b) : 0;
  };
  c.idle = weight(Component::idle);
  const int n = static_cast<int>(c.list.size());
  const int wide = (n + 3) / 4 * 4;
  c.next = Grid<std::int32_t>(n, wide, forbidden);
  c.later = Grid<std::int32_t>(n, wide, forbidden);
  for (int i = 0; i < n; ++i)
    for (int j = 0; j < n; ++j) {
      if (i == j && p_.laps == 1) continue;  // a lap may begin where the last one ended
      const int a = c.list[ix(i)];
      const int b = c.list[ix(j)];
      const Work& one = p_.work(m, a);
      const Work& other = p_.work(m, b);
      c.later(i, j) = walk(a, b);
      std::int32_t sum = walk(a, b);
      if (one.primary & other.primary)
        sum += weight(Component::back_to_back);
      else if ((one.primary & other.assisting) | (one.assisting & other.primary))
        sum += weight(Component::assist_overlap);
      c.next(i, j) = std::min(sum, forbidden);
    }
  return c;
}

void Lagrange::find_kinds() {
  for (int m = 0; m < p_.members; ++m) {
    if (p_.slots_present(m) == 0) continue;
    const auto same = std::find_if(kinds_.begin(), kinds_.end(),
                                   [&](const RowKind& k) { return alike(p_, k.members.front(), m); });
    if (same != kinds_.end()) {
      same->members.push_back(m);
      continue;
    }
    kinds_.push_back({{m}, costs_of(m)});
  }
  for (const RowKind& k : kinds_) {
    price_of_.emplace_back(static_cast<int>(k.costs.list.size()), k.costs.visits + k.costs.rests, 0);
  }
}

void Lagrange::find_limits() {
  place_limit_ = Grid<int>(p_.stations, p_.slots, -1);
  unit_limit_ = Grid<int>(std::max(1, p_.kinds), p_.slots, -1);
  std::size_t takes = 0;
  for (int s = 0; s < p_.stations; ++s) {
    takes = std::max(takes, p_.takes[ix(s)].size());
    for (int t = 0; t < p_.slots; ++t) {
      if (p_.places(s, t) == 0) continue;
      place_limit_(s, t) = static_cast<int>(limits_.size());
      limits_.push_back({s, -1, t, p_.places(s, t)});
    }
  }
  for (int e = 0; e < p_.kinds; ++e)
    for (int t = 0; t < p_.slots; ++t) {
      unit_limit_(e, t) = static_cast<int>(limits_.size());
      limits_.push_back({-1, e, t, p_.units[ix(e)]});
    }
  price_most_ =
      static_cast<std::int32_t>(costs_most / std::max(1, p_.slots) / static_cast<std::int64_t>(takes + 1));
  std::int64_t room = 0;
  std::int64_t visits = 0;
  for (const Limit& l : limits_) room += l.station >= 0 ? l.room : 0;
  for (const RowKind& k : kinds_) visits += std::int64_t{k.costs.visits} * std::ssize(k.members);
  // Where every place is taken, the same on all prices changes nothing: so they may fall as well as rise.
  best_prices_.assign(limits_.size(), room == visits ? price_most_ / 2 : 0);
}

std::int64_t Lagrange::entries() const {
  std::int64_t sum = 0;
  for (const RowKind& k : kinds_)
    sum += memory_.empty() ? RowTable::entries(k.costs) : MemoryTable::entries(k.costs, remembered(k));
  return sum;
}

void Lagrange::set_prices(const std::vector<std::int32_t>& prices) {
  for (std::size_t k = 0; k < kinds_.size(); ++k) {
    const RowCosts& c = kinds_[k].costs;
    for (int i = 0; i < static_cast<int>(c.list.size()); ++i)
      for (int t = 0; t < c.visits + c.rests; ++t) {
        const int s = c.list[ix(i)];
        const int limit = place_limit_(s, c.first + t);
        std::int32_t sum = forbidden;
        if (limit >= 0) {
          sum = prices[ix(limit)];
          for (int e : p_.takes[ix(s)]) sum += prices[ix(unit_limit_(e, c.first + t))];
        }
        price_of_[k](i, t) = sum;
      }
  }
}

/// What the members' cheapest rows cost in all beyond what the earlier components weigh; `no_row` where
/// somebody has none. `used`: by limit, as those rows would have it.
std::int64_t Lagrange::weigh(std::vector<std::int32_t>* used) {
  std::int64_t sum = -past_;
  if (used) std::fill(used->begin(), used->end(), 0);
  for (std::size_t k = 0; k < kinds_.size(); ++k) {
    const std::int32_t least = tables_[k].least(price_of_[k]);
    if (least >= forbidden) return no_row;
    const auto count = static_cast<std::int32_t>(kinds_[k].members.size());
    sum += std::int64_t{least} * count;
    if (!used) continue;
    const std::vector<int> row = tables_[k].row();
    for (std::size_t t = 0; t < row.size(); ++t) {
      if (row[t] == nowhere) continue;
      const int slot = kinds_[k].costs.first + static_cast<int>(t);
      (*used)[ix(place_limit_(row[t], slot))] += count;
      for (int e : p_.takes[ix(row[t])]) (*used)[ix(unit_limit_(e, slot))] += count;
    }
  }
  return sum;
}

std::int64_t Lagrange::bound() const { return best_ <= 0 ? 0 : (best_ + scale_ - 1) / scale_; }

int Lagrange::raise(int rounds, std::int64_t enough, const std::function<bool()>& stop) {
  if (tables_.empty()) make_tables();
  std::vector<std::int32_t> prices = best_prices_;
  std::vector<std::int32_t> used(limits_.size(), 0);
  PriceStep step(limits_.size());
  std::int64_t pace = 128;  // of the step, in 256ths
  int since = 0;
  std::int64_t cost = entries();
  const std::int64_t most = cost * rounds;
  std::int64_t done = 0;
  std::int64_t unasked = 0;
  for (; done + cost <= most && bound() < enough; done += cost) {
    if (unasked >= entries_unasked) {
      if (stop && stop()) break;
      unasked = 0;
    }
    unasked += cost;
    set_prices(prices);
    std::int64_t here = weigh(&used);
    if (here == no_row) break;
    for (std::size_t l = 0; l < limits_.size(); ++l) here -= std::int64_t{prices[l]} * limits_[l].room;
    if (!weighed_ || here > best_) {
      since = 0;
      best_ = here;
      best_prices_ = prices;
      weighed_ = true;
    } else if (++since >= 30) {
      since = 0;
      if (pace < 8 && remember_more()) {
        pace = 16;
        cost = entries();
        continue;
      }
      pace = pace * 3 / 4;
      if (pace < 1) break;
      if (pace < 32) {
        prices = best_prices_;
        step.forget();
        continue;
      }
    }
    const std::int64_t gap = std::max<std::int64_t>(scale_ / 2 + 1, enough * scale_ - here);
    const auto over = [&](std::size_t l) { return used[l] - limits_[l].room; };
    if (!step.take(prices, over, 256 * pace, gap, price_most_)) break;
  }
  return cost > 0 ? static_cast<int>((done + cost - 1) / cost) : 0;
}

PriceList Lagrange::prices() const {
  PriceList out;
  out.scale = scale_;
  out.weights = weights_;
  for (Component c : {Component::missed, Component::back_to_back, Component::idle, Component::assist_overlap})
    if (c < component_ && out.weights[c] == 0) out.weights[c] = row_cost_most;
  out.memory = memory_;
  out.places.assign(ix(p_.stations), std::vector<std::int64_t>(ix(p_.slots), 0));
  out.units.assign(ix(p_.kinds), std::vector<std::int64_t>(ix(p_.slots), 0));
  for (std::size_t l = 0; l < limits_.size(); ++l) {
    const Limit& limit = limits_[l];
    auto& table = limit.station >= 0 ? out.places : out.units;
    table[ix(limit.station >= 0 ? limit.station : limit.kind)][ix(limit.slot)] = best_prices_[l];
  }
  return out;
}

}  // namespace floorwheel
