// SPDX-License-Identifier: GPL-3.0-or-later
// Tiny classes: looks at every rotation again, row by row, for one with less than claimed. Branches are left
// where the rows so far already cost more than the claim allows.
#include <algorithm>
#include <functional>
#include <numeric>

#include "scheduler/rotation/certificate_facts.h"

namespace floorwheel::certify {
namespace {

constexpr int ring_stations_most = 7;

struct PricedRow {
  std::vector<int> at;  // station by slot, -1: not worked
  Cost cost;
};

class Everything {
 public:
  Everything(const Facts& f, const Certificate& all, const Claim& claim, std::int64_t steps)
      : f_(f), all_(all), claim_(claim), steps_(steps) {}

  ClaimVerdict look() {
    for (const Person& p : f_.people) {
      rows_.emplace_back();
      std::vector<int> row(at(f_.slots), -1);
      if (!list(p, row, p.first)) return too_many();
    }
    find_pairs();
    if (all_.style == Style::free) {
      possible_ = rows_;
      return verdict(try_all());
    }
    if (f_.stations > ring_stations_most) return too_many();
    std::vector<int> ring(at(f_.stations));
    std::iota(ring.begin(), ring.end(), 0);
    do {
      possible_.assign(rows_.size(), {});
      for (std::size_t m = 0; m < rows_.size(); ++m)
        for (const PricedRow& row : rows_[m])
          if (goes_round(row.at, ring)) possible_[m].push_back(row);
      const Found found = try_all();
      if (found != Found::nothing) return verdict(found);
    } while (std::next_permutation(ring.begin() + 1, ring.end()));
    return verdict(Found::nothing);
  }

 private:
  enum class Found : std::uint8_t { nothing, less, no_end };

  static ClaimVerdict too_many() { return {Verdict::not_rechecked, "too many rotations to look at again"}; }
  ClaimVerdict verdict(Found found) const {
    if (found == Found::no_end) return too_many();
    if (found == Found::less) return {Verdict::fails, "a rotation has less"};
    return {Verdict::holds, "every rotation looked at again, none has less"};
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

  [[nodiscard]] int laps(const std::vector<int>& row) const {
    int count = 1;
    std::vector<std::uint8_t> visited(at(f_.stations), 0);
    for (int s : row) {
      if (s < 0) continue;
      if (visited[at(s)]) {
        ++count;
        std::fill(visited.begin(), visited.end(), 0);
      }
      visited[at(s)] = 1;
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

  void find_pairs() {
    const auto index = [&](const std::string& id) {
      for (std::size_t m = 0; m < f_.spec.members.size(); ++m)
        if (f_.spec.members[m].id == id) return static_cast<int>(m);
      return -1;
    };
    for (const PairSpec& pair : f_.spec.pairs) {
      const int a = index(pair.a);
      const int b = index(pair.b);
      if (a >= 0 && b >= 0 && a != b) pairs_.push_back({std::max(a, b), std::min(a, b), pair.rule});
    }
  }

  Found try_all() {
    const std::size_t members = possible_.size();
    least_after_.assign(members + 1, Cost{});
    for (std::size_t m = members; m-- > 0;) {
      if (possible_[m].empty()) return Found::nothing;
      for (Component c : order()) {
        std::int64_t least = possible_[m].front().cost[c];
        for (const PricedRow& row : possible_[m]) least = std::min(least, row.cost[c]);
        least_after_[m][c] = least_after_[m + 1][c] + least;
      }
    }
    used_.assign(at(f_.stations), std::vector<int>(at(f_.slots), 0));
    units_.assign(at(f_.kinds), std::vector<int>(at(f_.slots), 0));
    chosen_.assign(members, nullptr);
    return place(0, Cost{});
  }

  Found place(std::size_t m, const Cost& so_far) {
    if (m == possible_.size()) return is_less(so_far) ? Found::less : Found::nothing;
    for (const PricedRow& row : possible_[m]) {
      if (--steps_ < 0) return Found::no_end;
      Cost cost = so_far;
      for (Component c : order()) cost[c] += row.cost[c];
      if (!can_be_less(cost, m + 1) || !enter(row.at, 1)) continue;
      chosen_[m] = &row.at;
      const Found found = pairs_keep(static_cast<int>(m)) ? place(m + 1, cost) : Found::nothing;
      enter(row.at, -1);
      if (found != Found::nothing) return found;
    }
    return Found::nothing;
  }

  /// Enters or takes out a row; false, and nothing entered: no room.
  bool enter(const std::vector<int>& row, int by) {
    if (by > 0)
      for (int t = 0; t < f_.slots; ++t) {
        const int s = row[at(t)];
        if (s < 0) continue;
        if (used_[at(s)][at(t)] >= f_.places(s, t)) return false;
        for (int e : f_.takes[at(s)])
          if (units_[at(e)][at(t)] >= f_.spec.equipment[at(e)].units) return false;
      }
    for (int t = 0; t < f_.slots; ++t) {
      const int s = row[at(t)];
      if (s < 0) continue;
      used_[at(s)][at(t)] += by;
      for (int e : f_.takes[at(s)]) units_[at(e)][at(t)] += by;
    }
    return true;
  }

  bool pairs_keep(int m) const {
    for (const Pair& pair : pairs_) {
      if (pair.later != m) continue;
      const std::vector<int>& a = *chosen_[at(m)];
      const std::vector<int>& b = *chosen_[at(pair.earlier)];
      for (int t = 0; t < f_.slots; ++t) {
        const int at_a = a[at(t)];
        const int at_b = b[at(t)];
        if (pair.rule == PairRule::apart) {
          if (at_a >= 0 && at_a == at_b) return false;
          continue;
        }
        if (at_a == at_b || !present(m, t) || !present(pair.earlier, t)) continue;
        if (at_a >= 0 && at_b >= 0) return false;
        const std::vector<int>& waits = at_a < 0 ? a : b;
        if (std::find(waits.begin(), waits.end(), at_a < 0 ? at_b : at_a) != waits.end()) return false;
      }
    }
    return true;
  }
  [[nodiscard]] bool present(int m, int t) const {
    return f_.people[at(m)].first <= t && t <= f_.people[at(m)].last;
  }

  [[nodiscard]] bool can_be_less(const Cost& so_far, std::size_t next) const {
    for (Component c : order()) {
      const std::int64_t least = so_far[c] + least_after_[next][c];
      if (c == claim_.component) return least < claim_.bound;
      if (c != Component::reload_hg && least > all_.cost[c]) return false;
    }
    return true;
  }

  [[nodiscard]] bool is_less(Cost cost) const {
    cost[Component::reload_hg] = reloads();
    for (Component c : order()) {
      if (c == claim_.component) return cost[c] < claim_.bound;
      if (cost[c] != all_.cost[c]) return false;
    }
    return false;
  }

  [[nodiscard]] std::int64_t reloads() const {
    std::int64_t sum = 0;
    for (int s = 0; s < f_.stations; ++s) {
      std::vector<int> before;
      for (int t = 0; t < f_.slots; ++t) {
        std::vector<int> now;
        for (std::size_t m = 0; m < chosen_.size(); ++m)
          if ((*chosen_[m])[at(t)] == s && f_.people[m].load_hg[at(s)] >= 0)
            now.push_back(f_.people[m].load_hg[at(s)]);
        std::sort(now.begin(), now.end(), std::greater<>());
        for (std::size_t i = 0; i < std::min(now.size(), before.size()); ++i)
          sum += std::abs(std::int64_t{now[i]} - before[i]);
        before.swap(now);
      }
    }
    return sum;
  }

  struct Pair {
    int later, earlier;
    PairRule rule;
  };
  const Facts& f_;
  const Certificate& all_;
  const Claim& claim_;
  std::int64_t steps_;
  std::vector<std::vector<PricedRow>> rows_, possible_;  // [member]
  std::vector<Pair> pairs_;
  std::vector<Cost> least_after_;  // [member] what this and the later ones cost at least
  std::vector<std::vector<int>> used_, units_;
  std::vector<const std::vector<int>*> chosen_;
};

}  // namespace

ClaimVerdict check_search(const Facts& f, const Certificate& all, const Claim& claim, std::int64_t steps) {
  return Everything(f, all, claim, steps).look();
}

}  // namespace floorwheel::certify
