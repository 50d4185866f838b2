// SPDX-License-Identifier: GPL-3.0-or-later
// Free rotations first; then rings, which need not look below the best free one.
#include "scheduler/rotation/thorough.h"

#include <algorithm>
#include <numeric>

namespace floorwheel {
namespace {

constexpr std::size_t rows_most = 20'000;
constexpr std::size_t rows_most_repair = 6'000;  // people stand and wait
constexpr int ring_stations_most = 6;            // 120 rings
constexpr std::int64_t steps_leading = 300'000;
constexpr std::int64_t steps_rest = 100'000;

/// One search on one list; true: it came to its end.
bool better(const Problem& p, const RowLists& lists, int leading, const Cost& floor, Found& found,
            std::int64_t& steps) {
  Incumbent best{found.rows, found.cost};
  const std::int64_t before = steps;
  const bool ended = search_all(p, lists, leading, floor, best, steps);
  found.searched += before - steps;
  found.rows = std::move(best.rows);
  found.cost = best.cost;
  return ended;
}

}  // namespace

Thorough::Thorough(const Problem& p, const Task& task)
    : p_(p), task_(task), all_(static_cast<int>(ranking(p).size())), leading_(p.is_repair ? 4 : 3) {}

bool Thorough::can() {
  if (!listed_) lists_ = list_rows(p_, p_.is_repair ? rows_most_repair : rows_most);
  listed_ = true;
  if (lists_) {
    std::int64_t rows = 0;
    for (const auto& list : *lists_) rows += static_cast<std::int64_t>(list.size());
    share_ = std::max<std::int64_t>(1, rows * p_.members / 10'000);  // so much longer is a step
  }
  return lists_.has_value();
}

void Thorough::settle(Answer& answer) {
  const int enough = p_.is_repair && can() && share_ > 1 ? leading_ : all_;
  const auto settled = [&](const std::optional<Found>& found) { return !found || found->proven >= enough; };
  if (settled(answer.ring) && settled(answer.free)) return;
  if (!can()) return;
  if (answer.free) settle_free(*answer.free);
  if (answer.ring) settle_ring(*answer.ring, answer.free ? &*answer.free : nullptr);
}

void Thorough::settle_free(Found& free) {
  std::int64_t steps = steps_leading / share_;
  if (!better(p_, *lists_, leading_, free.bound, free, steps)) return;
  free.exhausted = leading_;
  steps = steps_rest / share_;
  if (better(p_, *lists_, all_, free.bound, free, steps)) free.exhausted = all_;
}

void Thorough::settle_ring(Found& ring, const Found* free) {
  const bool every_ring = p_.stations <= ring_stations_most || !task_.ring.empty();
  if (!every_ring) return;
  const Cost& floor = free && free->exhausted >= leading_ ? free->cost : ring.bound;
  if (!over_rings(ring, leading_, floor, steps_leading / share_)) return;
  ring.exhausted = leading_;
  if (over_rings(ring, all_, free && free->exhausted == all_ ? free->cost : ring.bound, steps_rest / share_))
    ring.exhausted = all_;
}

bool Thorough::over_rings(Found& ring, int leading, const Cost& floor, std::int64_t steps) {
  std::vector<StationIndex> order = task_.ring;
  const bool given = !order.empty();
  if (!given) {
    order.resize(ix(p_.stations));
    std::iota(order.begin(), order.end(), 0);
  }
  do {
    const Track track = ring_track(order);
    const Cost before = ring.cost;
    const bool ended = better(p_, rows_on_ring(p_, *lists_, track.place), leading, floor, ring, steps);
    if (ring.cost != before) ring.ring = order;
    if (!ended) return false;
  } while (!given && std::next_permutation(order.begin() + 1, order.end()));
  return true;
}

}  // namespace floorwheel
