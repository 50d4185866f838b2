// SPDX-License-Identifier: GPL-3.0-or-later
// The components of the cost, one function each, as the table of the rotation model words them. All count all
// slots, history included. "Worked (t, u)" means: worked in both slots. Sums are 64 bits wide.
#include <algorithm>
#include <cstdlib>
#include <functional>
#include <utility>

#include "scheduler/rotation/audit_facts.h"

namespace floorwheel::audit_detail {
namespace {

/// L · (number of required stations) − worked slots at required stations, of one member.
std::int64_t missed_visits(const Facts& f, int m) {
  std::int64_t worked = 0;
  for (int t : f.worked_slots(m)) worked += f.required(m, f.at(m, t)) ? 1 : 0;
  return std::int64_t{f.spec.laps} * f.required_count(m) - worked;
}

bool worked_both(const Facts& f, int m, int t, int u) { return f.works(m, t) && f.works(m, u); }

const Exercise& exercise_in(const Facts& f, int m, int t) { return f.priced(m, f.at(m, t)); }

bool share_primary(const Facts& f, int m, int t, int u) {
  return exercise_in(f, m, t).primary.meets(exercise_in(f, m, u).primary);
}

/// Seconds between the work of slot t and that of slot t + k: k changeovers, k − 1 slots of work, and the
/// breaks between them.
std::int64_t gap_s(const Facts& f, int t, int k) {
  std::int64_t gap = std::int64_t{k} * f.spec.change_s + std::int64_t{k - 1} * f.spec.work_s;
  for (const BreakSpec& b : f.spec.breaks)
    if (b.after_slot >= t && b.after_slot < t + k) gap += b.seconds;
  return gap;
}

/// Straight line in whole centimetres, to the nearest. The square of a whole number and a half is never
/// whole, so there are no halves to round.
std::int64_t leg_cm(const StationSpec& a, const StationSpec& b) {
  const std::int64_t dx = std::int64_t{a.x_cm} - b.x_cm;
  const std::int64_t dy = std::int64_t{a.y_cm} - b.y_cm;
  const std::int64_t square = dx * dx + dy * dy;
  // Largest whole root, by halving an interval: low² <= square < high².
  std::int64_t low = 0;
  std::int64_t high = std::abs(dx) + std::abs(dy) + 1;
  while (high - low > 1) {
    const std::int64_t middle = low + (high - low) / 2;
    (middle * middle <= square ? low : high) = middle;
  }
  // (low + 1/2)² = low² + low + 1/4
  return square - low * low > low ? low + 1 : low;
}

/// The planned loads used at station s in slot t, sorted downward.
std::vector<int> loads_used(const Facts& f, StationIndex s, int t) {
  std::vector<int> loads;
  for (int m = 0; m < f.members; ++m) {
    if (f.at(m, t) != s || f.works_substitute(m, s)) continue;
    const auto planned = f.member(m).loads_hg.find(f.station(s).id);
    if (planned != f.member(m).loads_hg.end()) loads.push_back(planned->second);
  }
  std::sort(loads.begin(), loads.end(), std::greater<>());
  return loads;
}

/// A row that works outside the member's present: somebody who just came or left. A dropped slot is outside
/// nobody's window.
bool works_outside_present(const Facts& f, int m, const RunSheetRow& row) {
  for (int t = 1; t <= f.slots; ++t)
    if (!Facts::earlier_station(row, t).empty() && !f.present(m, t)) return true;
  return false;
}

}  // namespace

std::int64_t count_missed(const Facts& f) {
  std::int64_t sum = 0;
  for (int m = 0; m < f.members; ++m) sum += missed_visits(f, m);
  return sum;
}

std::int64_t count_uneven(const Facts& f) {
  std::int64_t sum = 0;
  for (int m = 0; m < f.members; ++m) {
    const std::int64_t wanted = std::int64_t{f.spec.laps} * f.required_count(m);
    const std::int64_t forced = std::max<std::int64_t>(0, wanted - f.slots_present(m));
    const std::int64_t beyond = missed_visits(f, m) - forced;
    sum += beyond * beyond;
  }
  return sum;
}

std::int64_t count_back_to_back(const Facts& f) {
  std::int64_t sum = 0;
  for (int m = 0; m < f.members; ++m)
    for (int t = 1; t < f.slots; ++t)
      if (worked_both(f, m, t, t + 1) && share_primary(f, m, t, t + 1)) ++sum;
  return sum;
}

std::int64_t count_moved(const Facts& f) {
  if (f.before == nullptr) return 0;
  std::int64_t sum = 0;
  for (int m = 0; m < f.members; ++m) {
    const RunSheetRow* row = f.earlier_row(m);
    if (row == nullptr || works_outside_present(f, m, *row)) continue;
    for (int t = f.first_slot; t <= f.slots; ++t)
      if (f.station_id(f.at(m, t)) != Facts::earlier_station(*row, t)) ++sum;
  }
  return sum;
}

std::int64_t count_short_rest(const Facts& f) {
  std::int64_t sum = 0;
  for (int m = 0; m < f.members; ++m) {
    const int recovery_s = f.spec.recovery_s[static_cast<std::size_t>(f.member(m).level)];
    for (int t = 1; t <= f.slots; ++t)
      for (int k = 2; t + k <= f.slots; ++k)
        if (worked_both(f, m, t, t + k) && share_primary(f, m, t, t + k) && gap_s(f, t, k) < recovery_s)
          ++sum;
  }
  return sum;
}

std::int64_t count_idle(const Facts& f) {
  std::int64_t sum = 0;
  for (int m = 0; m < f.members; ++m) {
    const std::vector<int> worked = f.worked_slots(m);
    if (worked.empty()) continue;
    for (int t = 1; t < worked.back(); ++t)
      if (f.present(m, t) && !f.works(m, t)) ++sum;
  }
  return sum;
}

std::int64_t count_assist_overlap(const Facts& f) {
  std::int64_t sum = 0;
  for (int m = 0; m < f.members; ++m)
    for (int t = 1; t < f.slots; ++t) {
      if (!worked_both(f, m, t, t + 1) || share_primary(f, m, t, t + 1)) continue;
      const Exercise& one = exercise_in(f, m, t);
      const Exercise& other = exercise_in(f, m, t + 1);
      if (one.primary.meets(other.assisting) || other.primary.meets(one.assisting)) ++sum;
    }
  return sum;
}

std::int64_t count_walk_cm(const Facts& f) {
  std::int64_t sum = 0;
  for (int m = 0; m < f.members; ++m) {
    const std::vector<int> worked = f.worked_slots(m);
    for (std::size_t i = 1; i < worked.size(); ++i)
      sum += leg_cm(f.station(f.at(m, worked[i - 1])), f.station(f.at(m, worked[i])));
  }
  return sum;
}

std::int64_t count_reload_hg(const Facts& f) {
  std::int64_t sum = 0;
  for (StationIndex s = 0; s < f.stations; ++s) {
    std::vector<int> now;
    for (int t = 1; t <= f.slots; ++t) {
      const std::vector<int> earlier = std::exchange(now, loads_used(f, s, t));
      for (std::size_t i = 0; i < std::min(earlier.size(), now.size()); ++i)
        sum += std::abs(std::int64_t{earlier[i]} - now[i]);
    }
  }
  return sum;
}

}  // namespace floorwheel::audit_detail
