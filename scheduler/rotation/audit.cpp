// SPDX-License-Identifier: GPL-3.0-or-later
// The auditor's front door: checks that the rotation can be read against the class at all, then judges rule
// by rule and counts component by component. To be read beside the rotation model.
#include "scheduler/rotation/audit.h"

#include "scheduler/rotation/audit_facts.h"

namespace floorwheel {
namespace {

/// Why this rotation is none of this class, or "".
std::string misfit(const ClassSpec& c, const Rotation& r) {
  if (r.slots < 0) return "The rotation has fewer than no slots.";
  if (r.style == Style::automatic) return "A rotation is a ring or free; auto is only a wish.";
  if (r.at.size() != c.members.size())
    return "The rotation has " + std::to_string(r.at.size()) + " rows, but the class has " +
           std::to_string(c.members.size()) + " members.";
  const auto stations = static_cast<StationIndex>(c.stations.size());
  for (std::size_t m = 0; m < r.at.size(); ++m) {
    if (r.at[m].size() != static_cast<std::size_t>(r.slots))
      return "The row of " + c.members[m].id + " has " + std::to_string(r.at[m].size()) +
             " entries, but the rotation has " + std::to_string(r.slots) + " slots.";
    for (StationIndex s : r.at[m])
      if (s != nowhere && (s < 0 || s >= stations))
        return "The row of " + c.members[m].id + " names a station that the class does not have.";
  }
  return {};
}

}  // namespace

Audit audit(const ClassSpec& c, const Rotation& r, int at_slot, const EarlierSheet* before) {
  using namespace audit_detail;
  Audit result;
  if (std::string text = misfit(c, r); !text.empty()) {
    result.breaches.push_back({0, "", "", 0, std::move(text)});
    return result;
  }

  const Facts facts(c, r, at_slot, before);
  judge_history(facts, result.breaches);
  judge_presence(facts, result.breaches);
  judge_places_and_equipment(facts, result.breaches);
  judge_exercises(facts, result.breaches);
  judge_required_and_laps(facts, result.breaches);
  judge_pairs(facts, result.breaches);
  judge_ring(facts, result.breaches);

  result.cost[Component::missed] = count_missed(facts);
  result.cost[Component::uneven] = count_uneven(facts);
  result.cost[Component::back_to_back] = count_back_to_back(facts);
  result.cost[Component::moved] = count_moved(facts);
  result.cost[Component::short_rest] = count_short_rest(facts);
  result.cost[Component::idle] = count_idle(facts);
  result.cost[Component::assist_overlap] = count_assist_overlap(facts);
  result.cost[Component::walk_cm] = count_walk_cm(facts);
  result.cost[Component::reload_hg] = count_reload_hg(facts);
  result.moved_known = before != nullptr;
  return result;
}

}  // namespace floorwheel
