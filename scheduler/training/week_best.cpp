// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/week_best.h"

#include <algorithm>

#include "scheduler/rotation/random.h"

namespace floorwheel::training {

RingAnswer WeekBest::ring(std::size_t c, const std::vector<int>& counts) {
  const auto [known, added] = rings_[c].try_emplace(counts, RingAnswer::none);
  if (added) known->second = ring_of(stations_of(floor_.classes[c], counts), floor_.classes[c].laps).answer;
  return known->second;
}

Offer WeekBest::offer(const WeekCounts& counts) {
  for (std::size_t c = 0; c < counts.size(); ++c)
    if (!fits(floor_.classes[c], counts[c])) return Offer::no_ring;
  const WeekValues values = WeekTally(floor_, counts).values();
  if (counts_ && !(values < values_)) return Offer::no_better;
  Offer answer = Offer::taken;
  for (std::size_t c = 0; c < counts.size(); ++c) {
    const RingAnswer r = ring(c, counts[c]);
    if (r == RingAnswer::none) return Offer::no_ring;
    if (r == RingAnswer::not_found) answer = Offer::not_known;
  }
  if (answer == Offer::taken) {
    counts_ = counts;
    values_ = values;
  }
  return answer;
}

namespace {

/// What a trial may cost falls from about `hot` to nothing; a ratio of weights is no exchange rate, since
/// only what is smaller in the order of the goals becomes the best.
constexpr std::array<std::int64_t, week_goal_count> weights{4000, 2000, 2000, 160, 16};
constexpr std::int64_t hot = 2000;

std::int64_t weighed(const WeekValues& v) {
  std::int64_t sum = 0;
  for (std::size_t g = 0; g < v.size(); ++g) sum += weights[g] * v[g];
  return sum;
}

}  // namespace

void better_by_exchange(WeekBest& best, int steps, std::uint64_t seed) {
  const WeekFloor& floor = best.floor();
  Random random(seed);
  WeekCounts now = best.counts();
  WeekTally tally(floor, now);
  std::int64_t price = weighed(best.values());
  for (int step = 0; step < steps; ++step) {
    const auto c = static_cast<std::size_t>(random.below(static_cast<int>(floor.classes.size())));
    const FloorClass& f = floor.classes[c];
    std::vector<int>& counts = now[c];
    const auto types = static_cast<int>(counts.size());
    const auto from = static_cast<std::size_t>(random.below(types));
    const auto to = static_cast<std::size_t>(random.below(types));
    if (from == to || counts[from] <= f.types[from].kept || counts[to] == f.types[to].size()) continue;
    const auto exchange = [&](std::size_t less, std::size_t more) {
      --counts[less];
      ++counts[more];
      tally.add(c, less, -1);
      tally.add(c, more, 1);
    };
    exchange(from, to);
    bool stays = tally.has_room(c, to);
    if (stays) {
      const WeekValues values = tally.values();
      const std::int64_t then = weighed(values);
      // exp2(-rise / heat) against a random number, in sixteenths of powers of two
      const std::int64_t left = steps - step;
      const std::int64_t heat = 1 + hot * left / steps * left / steps * left / steps;
      const bool offered = values < best.values() && best.offer(now) == Offer::taken;
      stays = offered || then <= price || (then - price) * 128 <= heat * random.minus_log2_x16();
      if (stays) price = then;
    }
    if (!stays) exchange(to, from);
  }
}

}  // namespace floorwheel::training
