// SPDX-License-Identifier: GPL-3.0-or-later
// Prices rows and reloads; to be read beside the table of the rotation model.
#include "scheduler/rotation/price.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <functional>
#include <utility>

namespace floorwheel {

Cost price_row(const Problem& p, int m, const StationIndex* row) {
  const Work* works = p.works(m);
  std::int64_t visits = 0;
  std::int64_t back_to_back = 0;
  std::int64_t assist = 0;
  std::int64_t short_rest = 0;
  std::int64_t walk = 0;
  std::int64_t busy_present = 0;
  int before = -1;  // last worked slot so far
  const int level = p.level[ix(m)];
  for (int t = 0; t < p.slots; ++t) {
    const StationIndex s = row[t];
    if (s == nowhere) continue;
    const Work& now = works[s];
    visits += now.required ? 1 : 0;
    busy_present += p.present(m, t) ? 1 : 0;
    if (before >= 0) {
      walk += p.walk_cm(row[before], s);
      if (before == t - 1) {
        const Work& then = works[row[before]];
        if (now.primary & then.primary)
          ++back_to_back;
        else if ((now.primary & then.assisting) | (now.assisting & then.primary))
          ++assist;
      }
      for (int u = p.rest_from(level, t); u < t - 1; ++u)
        if (row[u] != nowhere && (works[row[u]].primary & now.primary)) ++short_rest;
    }
    before = t;
  }
  Cost cost;
  const std::int64_t missed = p.visits_wanted(m) - visits;
  const std::int64_t beyond = missed - p.forced_missed(m);
  cost[Component::missed] = missed;
  cost[Component::uneven] = beyond * beyond;
  cost[Component::back_to_back] = back_to_back;
  cost[Component::short_rest] = short_rest;
  if (before >= 0) {
    const int present_until = std::min(before, p.last[ix(m)]) - p.first[ix(m)] + 1;
    cost[Component::idle] = std::max<std::int64_t>(0, present_until - busy_present);
  }
  cost[Component::assist_overlap] = assist;
  cost[Component::walk_cm] = walk;
  if (p.is_repair && p.counts[ix(m)])
    for (int t = p.from; t < p.slots; ++t) cost[Component::moved] += row[t] != p.old(m, t) ? 1 : 0;
  return cost;
}

namespace {

/// Planned loads at a station in a slot, the heaviest first.
class Loads {
 public:
  void add(int load) {
    if (size_ < few_.size()) {
      few_[size_++] = load;
      return;
    }
    if (many_.empty()) many_.assign(few_.begin(), few_.end());
    many_.push_back(load);
  }
  [[nodiscard]] bool empty() const { return size_ == 0; }
  /// first, last
  std::pair<const int*, const int*> sorted() {
    int* first = many_.empty() ? few_.data() : many_.data();
    int* last = first + (many_.empty() ? size_ : many_.size());
    std::sort(first, last, std::greater<>());
    return {first, last};
  }

 private:
  std::array<int, 16> few_{};  // nearly always enough, and no allocation: this is asked for every move
  std::size_t size_ = 0;
  std::vector<int> many_;
};

}  // namespace

std::int64_t price_reload(const Problem& p, const Sheet& sheet, int s, int t) {
  if (t < 0 || t + 1 >= p.slots) return 0;
  Loads now, next;
  const auto fill = [&](Loads& loads, int slot) {
    sheet.each_at(s, slot, [&](int m) {
      if (const int load = p.work(m, s).load_hg; load >= 0) loads.add(load);
    });
    return !loads.empty();
  };
  if (!fill(now, t) || !fill(next, t + 1)) return 0;
  auto [a, a_end] = now.sorted();
  auto [b, b_end] = next.sorted();
  std::int64_t sum = 0;
  for (; a != a_end && b != b_end; ++a, ++b) sum += std::abs(std::int64_t{*a} - *b);
  return sum;
}

Cost price_history(const Problem& p) {
  Cost sum = price(p, Sheet(p));
  for (Component c : {Component::missed, Component::uneven, Component::moved}) sum[c] = 0;
  return sum;
}

Cost price(const Problem& p, const Sheet& sheet) {
  Cost sum;
  for (int m = 0; m < p.members; ++m) add(sum, price_row(p, m, sheet.row(m)));
  if (p.has_loads)
    for (int s = 0; s < p.stations; ++s)
      for (int t = 0; t + 1 < p.slots; ++t) sum[Component::reload_hg] += price_reload(p, sheet, s, t);
  return sum;
}

}  // namespace floorwheel
