// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/visits.h"

#include <algorithm>
#include <map>

namespace floorwheel::training {
namespace {

Visit visit_of(Day day, const std::vector<const SetRecord*>& working) {
  Visit v{.day = day, .load = {}, .at_load = {}};
  const SetRecord* first = working.front();
  for (const SetRecord* r : working) {
    v.load = std::max(v.load, r->load);
    v.total_reps += r->reps;
    const bool earlier = r->instant_us < first->instant_us;
    if (earlier || (r->instant_us == first->instant_us && r->reps > first->reps)) first = r;
  }
  v.first_reps = first->reps;
  v.first_us = first->instant_us;
  for (const SetRecord* r : working)
    if (r->load == v.load) v.at_load.push_back({r->reps, r->rir});
  return v;
}

}  // namespace

Visits visits_of(std::span<const SetRecord> records, Day today) {
  std::map<Day, std::vector<const SetRecord*>> working;
  std::map<Day, bool> pain;
  for (const SetRecord& r : records) {
    if (r.day > today) continue;
    pain[r.day] |= r.pain;
    if (r.kind == SetKind::working) working[r.day].push_back(&r);
  }
  Visits out;
  for (const auto& [day, sets] : working) out.worked.push_back(visit_of(day, sets));
  out.pain_at_the_last = !pain.empty() && pain.rbegin()->second;
  return out;
}

}  // namespace floorwheel::training
