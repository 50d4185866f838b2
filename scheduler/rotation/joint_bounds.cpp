// SPDX-License-Identifier: GPL-3.0-or-later
// Bounds on back-to-backs and on moved entries.
#include <algorithm>
#include <bit>
#include <cstdlib>
#include <functional>
#include <map>

#include "scheduler/rotation/bounds.h"

namespace floorwheel {
namespace {

constexpr int table_most = 13;  // stations of a list: 2^13 sets

/// The fewest joints between stations sharing a primary group on a path over `visits` of the list: in set
/// after set, the last stations that the fewest can end in.
int least_bad_joints(const std::vector<std::uint32_t>& primary, int visits) {
  const int n = static_cast<int>(primary.size());
  std::vector<std::uint8_t> least((std::size_t{1} << n) * ix(n), 0xff);
  for (int v = 0; v < n; ++v) least[(std::size_t{1} << v) * ix(n) + ix(v)] = 0;
  int best = 0xff;
  for (std::size_t set = 1; set < std::size_t{1} << n; ++set) {
    const int size = std::popcount(set);
    if (size > visits) continue;
    for (int last = 0; last < n; ++last) {
      const int so_far = least[set * ix(n) + ix(last)];
      if (so_far == 0xff) continue;
      if (size == visits) best = std::min(best, so_far);
      for (int next = 0; next < n; ++next) {
        if (set >> next & 1) continue;
        std::uint8_t& cell = least[(set | std::size_t{1} << next) * ix(n) + ix(next)];
        const int sum = so_far + ((primary[ix(last)] & primary[ix(next)]) != 0 ? 1 : 0);
        if (sum < cell) cell = static_cast<std::uint8_t>(sum);
      }
    }
  }
  return visits == 0 ? 0 : best;
}

/// A majority of one group: with k of n stations sharing it, `visits` of laps · n, at least so many stand
/// side by side in a row without rests.
int majority_joints(const std::vector<std::uint32_t>& primary, int laps, int visits) {
  const int n = static_cast<int>(primary.size());
  int most = 0;
  for (int g = 0; g < 32; ++g) {
    int k = 0;
    for (std::uint32_t groups : primary) k += groups >> g & 1 ? 1 : 0;
    const int others = laps * (n - k);
    most = std::max(most, (visits - others) - others - 1);
  }
  return most;
}

}  // namespace

std::int64_t bound_back_to_back(const Problem& p) {
  std::map<std::pair<std::vector<std::uint32_t>, int>, int> known;
  std::int64_t sum = 0;
  for (int m = 0; m < p.members; ++m) {
    std::vector<std::uint32_t> primary;
    for (int s : p.required[ix(m)]) primary.push_back(p.work(m, s).primary);
    std::sort(primary.begin(), primary.end());
    const int visits = p.visits_wanted(m) - p.forced_missed(m);
    const auto [it, is_new] = known.try_emplace(std::pair(primary, visits), 0);
    if (is_new)
      it->second = p.laps == 1 && static_cast<int>(primary.size()) <= table_most && known.size() <= 24
                       ? least_bad_joints(primary, visits)
                       : majority_joints(primary, p.laps, visits);
    sum += std::max(0, it->second - (p.slots_present(m) - visits));  // each rest can save one
  }
  return sum;
}

bool everybody_alike(const Problem& p) {
  if (p.from > 0 || p.laps > 1 || p.slots != p.stations || p.stations < 3) return false;
  for (int m = 0; m < p.members; ++m) {
    if (p.slots_present(m) != p.slots || static_cast<int>(p.required[ix(m)].size()) != p.stations)
      return false;
    for (int s = 0; s < p.stations; ++s)
      if (p.work(m, s).primary != p.work(0, s).primary) return false;
  }
  return true;
}

std::int64_t bound_on_ring(const Problem& p, int bad_joints) {
  std::vector<int> capacity = p.capacity;
  std::sort(capacity.begin(), capacity.end(), std::greater<>());
  std::int64_t lucky = 0;
  for (int i = 0; i < std::min(bad_joints, p.stations); ++i) lucky += capacity[ix(i)];
  return std::int64_t{p.members} * bad_joints - std::min<std::int64_t>(p.members, lucky);
}

std::int64_t bound_moved(const Problem& p) {
  std::int64_t sum = 0;
  for (int t = p.from; t < p.slots; ++t) {
    std::vector<int> stay(ix(p.stations), 0);
    for (int m = 0; m < p.members; ++m) {
      const StationIndex s = p.old(m, t);
      if (!p.counts[ix(m)] || s == nowhere) continue;
      if (!p.present(m, t) || !p.work(m, s).required)
        ++sum;
      else
        ++stay[ix(s)];
    }
    std::int64_t over_places = 0;
    std::vector<int> units(ix(p.kinds), 0);
    for (int s = 0; s < p.stations; ++s) {
      const int fit = std::min(stay[ix(s)], p.places(s, t));
      over_places += stay[ix(s)] - fit;
      for (int k : p.takes[ix(s)]) units[ix(k)] += fit;
    }
    std::int64_t over_units = 0;  // of one kind only: a member may take several
    for (int k = 0; k < p.kinds; ++k)
      over_units = std::max<std::int64_t>(over_units, units[ix(k)] - p.units[ix(k)]);
    sum += over_places + over_units;
  }
  return sum;
}

std::int64_t bound_moved_by_shares(const Problem& p, std::int64_t missed, std::int64_t uneven) {
  std::int64_t beyond = missed;  // missed that no window forces, over all members
  for (int m = 0; m < p.members; ++m) beyond -= p.forced_missed(m);
  const std::int64_t states = (beyond + 1) * (uneven + 1);
  if (beyond < 0 || states > 20'000) return 0;
  constexpr int never = 1 << 28;
  const auto at = [&](std::int64_t sum, std::int64_t squares) {
    return static_cast<std::size_t>(sum * (uneven + 1) + squares);
  };
  std::vector<int> least(static_cast<std::size_t>(states), never);  // [sum][squares] moved of those so far
  least[0] = 0;
  for (int m = 0; m < p.members; ++m) {
    int worked = 0;  // planned entries of the earlier sheet
    int cannot = 0;  // of these, entries m cannot keep
    for (int t = p.from; t < p.slots; ++t)
      if (const StationIndex s = p.old(m, t); s != nowhere) {
        ++worked;
        cannot += p.present(m, t) && p.work(m, s).required ? 0 : 1;
      }
    const int slots_left = std::max(0, p.last[ix(m)] - std::max(p.from, p.first[ix(m)]) + 1);
    const int wanted = p.visits_wanted(m) - p.visits_made(m);
    if (wanted < p.forced_missed(m)) return 0;  // history has more laps than there are
    std::vector<int> next(least.size(), never);
    for (int visits = 0; visits <= slots_left; ++visits) {
      const std::int64_t share = wanted - visits - p.forced_missed(m);
      if (share * share > uneven || share > beyond || share < 0) continue;
      const int moved = p.counts[ix(m)] ? std::max(cannot, std::abs(visits - worked)) : 0;
      for (std::int64_t sum = 0; sum + share <= beyond; ++sum)
        for (std::int64_t squares = 0; squares + share * share <= uneven; ++squares) {
          int& cell = next[at(sum + share, squares + share * share)];
          cell = std::min(cell, least[at(sum, squares)] + moved);
        }
    }
    least.swap(next);
  }
  const int found = least[at(beyond, uneven)];
  return found >= never ? 0 : found;
}

}  // namespace floorwheel
