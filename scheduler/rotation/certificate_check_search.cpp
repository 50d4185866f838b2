// SPDX-License-Identifier: GPL-3.0-or-later
// Tiny classes: looks at every rotation again for one with less than claimed: all rows of each member, free
// or on each ring there is, and a choice among them.
#include <algorithm>
#include <numeric>

#include "scheduler/rotation/certificate_choice.h"

namespace floorwheel::certify {
namespace {

constexpr int stations_most = 64;  // bits of a word
constexpr int ring_stations_most = 7;

class Everything {
 public:
  Everything(const Facts& f, const Certificate& all, const Claim& claim, std::int64_t steps)
      : f_(f), all_(all), claim_(claim), steps_(steps) {}

  ClaimVerdict look() {
    if (f_.stations > stations_most || (all_.style == Style::ring && f_.stations > ring_stations_most))
      return too_many();
    for (const Person& p : f_.people)
      if (rows_at_least(p) > steps_) return too_many();
    for (const Person& p : f_.people) {
      rows_.emplace_back();
      std::vector<int> row(at(f_.slots), -1);
      if (!list(p, row, p.first)) return too_many();
    }
    if (all_.style == Style::free) return verdict(choose_less(f_, all_, claim_, std::move(rows_), steps_));
    std::vector<int> ring(at(f_.stations));
    std::iota(ring.begin(), ring.end(), 0);
    do {
      RowsOfAll possible(rows_.size());
      for (std::size_t m = 0; m < rows_.size(); ++m)
        for (const PricedRow& row : rows_[m])
          if (--steps_ >= 0 && goes_round(row.at, ring)) possible[m].push_back(row);
      if (steps_ < 0) return too_many();
      const Chosen chosen = choose_less(f_, all_, claim_, std::move(possible), steps_);
      if (chosen != Chosen::nothing) return verdict(chosen);
    } while (std::next_permutation(ring.begin() + 1, ring.end()));
    return verdict(Chosen::nothing);
  }

 private:
  static ClaimVerdict too_many() { return {Verdict::not_rechecked, "too many rotations to look at again"}; }
  static ClaimVerdict verdict(Chosen chosen) {
    if (chosen == Chosen::no_end) return too_many();
    if (chosen == Chosen::less) return {Verdict::fails, "a rotation has less"};
    return {Verdict::holds, "every rotation looked at again, none has less"};
  }

  /// Rows of one lap at the stations that are never closed: no need to begin where there are too many.
  [[nodiscard]] std::int64_t rows_at_least(const Person& p) const {
    std::int64_t open = 0;
    for (int s : p.list) {
      bool always = true;
      for (int t = p.first; t <= p.last; ++t) always = always && f_.places(s, t) > 0;
      open += always ? 1 : 0;
    }
    std::int64_t sum = 0;
    std::int64_t rows = 1;  // that work k slots
    for (std::int64_t k = 0; k <= std::min<std::int64_t>(open, p.slots()) && sum <= steps_; ++k) {
      sum += rows;
      rows = rows * (p.slots() - k) / (k + 1) * (open - k);
    }
    return sum;
  }

  /// Rows by rules 1, 3 and 4 and open stations; false: too many.
  bool list(const Person& p, std::vector<int>& row, int t) {
    if (--steps_ < 0) return false;
    if (t > p.last) {
      if (laps(row) <= f_.spec.laps) rows_.back().push_back({row, price(p, row)});
      return true;
    }
    for (int s : p.list) {
      if (f_.places(s, t) == 0) continue;
      row[at(t)] = s;
      if (laps(row) <= f_.spec.laps && !list(p, row, t + 1)) return false;
    }
    row[at(t)] = -1;
    return list(p, row, t + 1);
  }

  [[nodiscard]] static int laps(const std::vector<int>& row) {
    int count = 1;
    std::uint64_t visited = 0;
    for (int s : row) {
      if (s < 0) continue;
      const std::uint64_t one = std::uint64_t{1} << s;
      if (visited & one) {
        ++count;
        visited = 0;
      }
      visited |= one;
    }
    return count;
  }

  [[nodiscard]] Cost price(const Person& p, const std::vector<int>& row) const {
    Cost cost;
    std::int64_t visits = 0;
    int last = -1;
    for (int t = 0; t < f_.slots; ++t) {
      const int s = row[at(t)];
      if (s < 0) continue;
      ++visits;
      cost[Component::idle] += last < 0 ? t - p.first : t - last - 1;
      for (int u = 0; u + 1 < t; ++u)
        if (row[at(u)] >= 0 && f_.too_near(p.recovery_s, u, t) && Facts::back_to_back(p, row[at(u)], s))
          ++cost[Component::short_rest];
      if (last >= 0) cost[Component::walk_cm] += f_.walk[at(row[at(last)])][at(s)];
      if (last >= 0 && last == t - 1) {
        cost[Component::back_to_back] += Facts::back_to_back(p, row[at(last)], s) ? 1 : 0;
        cost[Component::assist_overlap] += Facts::assists(p, row[at(last)], s) ? 1 : 0;
      }
      last = t;
    }
    cost[Component::missed] = f_.wanted(p) - visits;
    const std::int64_t beyond = cost[Component::missed] - f_.forced(p);
    cost[Component::uneven] = beyond * beyond;
    return cost;
  }

  [[nodiscard]] bool goes_round(const std::vector<int>& row, const std::vector<int>& ring) const {
    const int n = f_.stations;
    std::vector<int> place(at(n));
    for (int i = 0; i < n; ++i) place[at(ring[at(i)])] = i;
    std::vector<std::uint8_t> visited(at(n), 0);
    int last = -1;
    int in_lap = 0;
    int in_row = 0;
    for (int s : row) {
      if (s < 0) continue;
      const int step = last < 0 ? 0 : (place[at(s)] - place[at(last)] + n - 1) % n + 1;
      in_row += step;
      in_lap += step;
      if (visited[at(s)]) {
        std::fill(visited.begin(), visited.end(), 0);
        in_lap = 0;
      }
      visited[at(s)] = 1;
      last = s;
      if (in_lap >= n || (in_row > 0 && in_row >= f_.spec.laps * n)) return false;
    }
    return true;
  }

  const Facts& f_;
  const Certificate& all_;
  const Claim& claim_;
  std::int64_t steps_;
  RowsOfAll rows_;
};

}  // namespace

ClaimVerdict check_search(const Facts& f, const Certificate& all, const Claim& claim, std::int64_t steps) {
  return Everything(f, all, claim, steps).look();
}

}  // namespace floorwheel::certify
