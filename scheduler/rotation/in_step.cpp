// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/in_step.h"

#include <algorithm>
#include <array>
#include <numeric>
#include <optional>

#include "scheduler/rotation/price.h"
#include "scheduler/rotation/ring_order.h"

namespace floorwheel {
namespace {

constexpr int layouts_most = 4;                    // with all waiting places behind one station
constexpr std::int64_t entries_most = 20'000'000;  // of rows looked at, over all layouts

/// People that every station takes at once, when all its places are open.
int places_everywhere(const Problem& p) {
  int least = p.members;
  for (int s = 0; s < p.stations; ++s) {
    int most = 0;
    for (int t = 0; t < p.slots; ++t) most = std::max(most, p.places(s, t));
    least = std::min(least, most);
  }
  return std::max(1, least);
}

int people(const Problem& p) {
  int count = 0;
  for (int m = 0; m < p.members; ++m) count += p.slots_present(m) > 0 ? 1 : 0;
  return count;
}

/// Places on the way round, stations and waiting places, as few as hold everybody and as the slots let.
int places_round(const Problem& p) {
  const int q = places_everywhere(p);
  const int wanted = (people(p) + q - 1) / q;
  return std::max(p.stations, std::min(wanted, p.slots / p.laps));
}

/// Where a member is on the ring by rule 6 and what may come next.
class Walk {
 public:
  explicit Walk(const Problem& p) : p_(p), in_lap_(ix(p.stations), 0) {}

  /// Whether working s after so many steps since the last worked slot keeps the rules; if so, it is worked.
  bool work(StationIndex s, int steps) {
    const int gone = any_ ? gone_ + steps : 0;
    if (any_ && (steps > p_.stations || gone >= p_.laps * p_.stations)) return false;
    if (in_lap_[ix(s)]) {
      if (lap_ == p_.laps) return false;
      ++lap_;
      began_ = gone;
      std::fill(in_lap_.begin(), in_lap_.end(), 0);
    } else if (gone - began_ >= p_.stations) {
      return false;
    }
    in_lap_[ix(s)] = 1;
    gone_ = gone;
    any_ = true;
    return true;
  }

 private:
  const Problem& p_;
  std::vector<std::uint8_t> in_lap_;
  bool any_ = false;
  int gone_ = 0, began_ = 0, lap_ = 1;
};

/// Everybody put on one layout of the way round.
class Round {
 public:
  Round(const Problem& p, std::vector<StationIndex> way)
      : p_(p),
        sheet_(p),
        way_(std::move(way)),
        size_(static_cast<int>(way_.size())),
        most_((people(p) + size_ - 1) / size_),
        used_(ix(size_), 0) {}

  Sheet fill() {
    std::vector<int> teams(p_.teams.size());
    std::iota(teams.begin(), teams.end(), 0);
    std::stable_sort(teams.begin(), teams.end(), [&](int a, int b) { return slack(a) < slack(b); });
    for (int team : teams) seat(p_.teams[ix(team)]);
    for (int m = 0; m < p_.members; ++m)
      if (!sheet_.pairs_hold(m)) sheet_.clear(m);
    return std::move(sheet_);
  }

 private:
  /// Large teams first, then those with the least time.
  [[nodiscard]] int slack(int team) const {
    const std::vector<int>& members = p_.teams[ix(team)];
    int least = p_.slots;
    for (int m : members) least = std::min(least, p_.slots_present(m) - p_.visits_wanted(m));
    return least - 1000 * static_cast<int>(members.size());
  }

  void seat(const std::vector<int>& team) {
    std::optional<Cost> least;
    int best = 0;
    for (int start = 0; start < size_; ++start) {
      if (used_[ix(start)] + static_cast<int>(team.size()) >
          std::max<int>(most_, static_cast<int>(team.size())))
        continue;
      const Cost cost = put(team, start);
      for (int m : team) sheet_.clear(m);
      if (least && !(cost < *least)) continue;
      least = cost;
      best = start;
    }
    if (!least) return;  // the search finds room
    put(team, best);
    used_[ix(best)] += static_cast<int>(team.size());
  }

  Cost put(const std::vector<int>& team, int start) {
    Cost cost;
    for (int m : team) {
      Walk walk(p_);
      int steps = 0;
      for (int t = p_.first[ix(m)]; t <= p_.last[ix(m)]; ++t) {
        const StationIndex s = way_[ix((start + t) % size_)];
        if (s == nowhere) continue;
        ++steps;
        if (!p_.work(m, s).required || sheet_.room(s, t) < 1 || !walk.work(s, steps)) continue;
        sheet_.put(m, t, s);
        steps = 0;
      }
      add(cost, price_row(p_, m, sheet_.row(m)));
    }
    return cost;
  }

  const Problem& p_;
  Sheet sheet_;
  const std::vector<StationIndex> way_;
  const int size_;
  const int most_;         // people who begin at one place
  std::vector<int> used_;  // [place of the way] people who begin there
};

/// Places of the ring whose joint to the next costs most, the dearest first: no two worked in a row there.
std::vector<int> dearest_joints(const Problem& p, const std::vector<StationIndex>& ring) {
  const int n = p.stations;
  const Joints joints(p);
  std::vector<std::array<int, 3>> weight;
  for (int i = 0; i < n; ++i) {
    const int a = ring[ix(i)];
    const int b = ring[ix((i + 1) % n)];
    weight.push_back({joints.back_to_back(a, b), joints.assist(a, b), joints.walk_cm(a, b)});
  }
  std::vector<int> order(ix(n));
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return weight[ix(a)] > weight[ix(b)]; });
  return order;
}

/// The ring with so many waiting places behind each of its places.
std::vector<StationIndex> way_round(const std::vector<StationIndex>& ring, const std::vector<int>& waits) {
  std::vector<StationIndex> way;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    way.push_back(ring[i]);
    way.insert(way.end(), ix(waits[i]), nowhere);
  }
  return way;
}

}  // namespace

bool somebody_waits(const Problem& p) { return people(p) > p.stations * places_everywhere(p); }

Sheet in_step(const Problem& p, const std::vector<StationIndex>& ring) {
  const int size = places_round(p);
  const int waiting = size - p.stations;
  const std::vector<int> dearest = dearest_joints(p, ring);
  std::vector<std::vector<int>> layouts;
  const std::int64_t entries = std::int64_t{p.members} * size * p.slots;
  const auto most = static_cast<int>(
      std::clamp<std::int64_t>(entries_most / std::max<std::int64_t>(entries, 1), 1, layouts_most + 1));
  const auto all_behind = [&](int place) {
    layouts.emplace_back(ix(p.stations), 0);
    layouts.back()[ix(place)] = waiting;
  };
  all_behind(dearest[0]);
  if (waiting > 1 && most > 1) {
    layouts.emplace_back(ix(p.stations), 0);
    for (int i = 0; i < waiting; ++i) ++layouts.back()[ix(dearest[ix(i % p.stations)])];
  }
  if (waiting > 0)
    for (int i = 1; i < p.stations && static_cast<int>(layouts.size()) < most; ++i)
      all_behind(dearest[ix(i)]);
  std::optional<Sheet> best;
  Cost least;
  for (const std::vector<int>& waits : layouts) {
    Sheet sheet = Round(p, way_round(ring, waits)).fill();
    const Cost cost = price(p, sheet);
    if (best && !(cost < least)) continue;
    best = std::move(sheet);
    least = cost;
  }
  return std::move(*best);
}

}  // namespace floorwheel
