// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/week_ring.h"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <numeric>

namespace floorwheel::training {
namespace {

using Bits = std::uint32_t;

Bits bit(std::size_t i) { return Bits{1} << i; }

/// Which stations may stand beside each.
std::vector<Bits> friends_of(std::span<const GroupSet> stations) {
  std::vector<Bits> friends(stations.size());
  for (std::size_t a = 0; a < stations.size(); ++a)
    for (std::size_t b = 0; b < stations.size(); ++b)
      if (a != b && !stations[a].meets(stations[b])) friends[a] |= bit(b);
  return friends;
}

/// ends[S]: the stations at which a path from station 0 through all of S (0 in it) can end.
std::vector<Bits> path_ends(const std::vector<Bits>& friends) {
  const std::size_t n = friends.size();
  std::vector<Bits> ends(std::size_t{1} << n);
  ends[1] = 1;
  for (std::size_t s = 3; s < ends.size(); s += 2)
    for (Bits rest = static_cast<Bits>(s) & ~Bits{1}; rest != 0; rest &= rest - 1) {
      const auto v = static_cast<std::size_t>(std::countr_zero(rest));
      if ((ends[s & ~bit(v)] & friends[v]) != 0) ends[s] |= bit(v);
    }
  return ends;
}

/// A path from 0 through S that ends at v is, read backwards, a way from v home through S.
Ring exact_ring(const std::vector<Bits>& friends) {
  const std::size_t n = friends.size();
  const std::vector<Bits> ends = path_ends(friends);
  const std::size_t all = (std::size_t{1} << n) - 1;
  if ((ends[all] & friends[0]) == 0) return {};
  Ring ring{RingAnswer::holds, {0}};
  std::size_t left = all;
  Bits next = friends[0];
  while (ring.order.size() < n) {
    const auto v = static_cast<std::size_t>(std::countr_zero(next & ends[left]));
    ring.order.push_back(static_cast<int>(v));
    left &= ~bit(v);
    next = friends[v];
  }
  return ring;
}

/// Turns the longest path found about its end until it closes, in a fixed order of trials.
Ring turned_ring(std::span<const GroupSet> stations) {
  const std::size_t n = stations.size();
  const auto along = [&](int a, int b) {
    return !stations[static_cast<std::size_t>(a)].meets(stations[static_cast<std::size_t>(b)]);
  };
  std::vector<int> path(n);
  std::iota(path.begin(), path.end(), 0);
  std::size_t length = 1;
  std::uint64_t chance = 1;
  const auto below = [&](std::size_t m) {
    chance = chance * 6364136223846793005u + 1442695040888963407u;
    return static_cast<std::size_t>((chance >> 33) % m);
  };
  for (std::size_t trial = 0; trial < 400 * n; ++trial) {
    const int end = path[length - 1];
    if (length == n && along(end, path[0])) return {RingAnswer::holds, path};
    std::vector<std::size_t> onward, turns;
    for (std::size_t i = length; i < n; ++i)
      if (along(end, path[i])) onward.push_back(i);
    for (std::size_t i = 0; i + 2 < length; ++i)
      if (along(end, path[i])) turns.push_back(i);
    if (!onward.empty()) {
      std::swap(path[length], path[onward[below(onward.size())]]);
      ++length;
    } else if (!turns.empty()) {
      const std::size_t i = turns[below(turns.size())];
      std::reverse(path.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                   path.begin() + static_cast<std::ptrdiff_t>(length));
    } else {
      std::reverse(path.begin(), path.begin() + static_cast<std::ptrdiff_t>(length));
    }
  }
  return {RingAnswer::not_found, {}};
}

/// More than half of the stations share a group: two of them must be neighbours.
bool crowded(std::span<const GroupSet> stations) {
  for (int g = 0; g < group_count; ++g) {
    const auto k =
        std::ranges::count_if(stations, [&](const GroupSet& s) { return s.contains(static_cast<Group>(g)); });
    if (2 * k > std::ssize(stations)) return true;
  }
  return false;
}

}  // namespace

Ring ring_of(std::span<const GroupSet> stations, int laps) {
  if (stations.size() == 1) return laps == 1 || stations[0].empty() ? Ring{RingAnswer::holds, {0}} : Ring{};
  if (stations.empty() || crowded(stations)) return {};
  if (stations.size() > ring_exact_most) return turned_ring(stations);
  return exact_ring(friends_of(stations));
}

}  // namespace floorwheel::training
