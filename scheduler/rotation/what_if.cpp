// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/what_if.h"

#include <algorithm>
#include <utility>

#include "scheduler/rotation/changed_class.h"

namespace floorwheel {
namespace {

struct Planned {
  Plan plan;
  int class_s = 0;
};

/// With the class's own number of slots, else the one that the table chooses.
OrRefusal<Planned> planned(const ClassSpec& c, const PlanOptions& options) {
  if (c.slots) {
    PlanOptions quick = options;
    quick.proof_effort = 0;  // classes are compared, not proven
    auto answer = plan(c, *c.slots, quick);
    if (auto* refusal = std::get_if<Refusal>(&answer)) return std::move(*refusal);
    return Planned{std::get<Plan>(std::move(answer)), class_seconds(c, *c.slots)};
  }
  auto answer = plan_chosen(c, options);
  if (auto* refusal = std::get_if<Refusal>(&answer)) return std::move(*refusal);
  Plan chosen = std::get<Plan>(std::move(answer));
  const int slots = chosen.rotation.slots;
  return Planned{std::move(chosen), class_seconds(c, slots)};
}

std::pair<int, int> waits(const ClassSpec& c, const Rotation& r) {
  std::pair<int, int> least_most{r.slots, 0};
  for (std::size_t m = 0; m < r.at.size(); ++m) {
    int unworked = 0;
    for (int t = 1; t <= r.slots; ++t)
      unworked += c.members[m].present.contains(t) && r.at[m][static_cast<std::size_t>(t - 1)] == nowhere;
    least_most.first = std::min(least_most.first, unworked);
    least_most.second = std::max(least_most.second, unworked);
  }
  return least_most;
}

void fill(WhatIfRow& row, const ClassSpec& c, const Planned& found) {
  const Plan& p = found.plan;
  row.slots = p.rotation.slots;
  row.class_s = found.class_s;
  row.style = p.rotation.style;
  std::tie(row.waits_least, row.waits_most) = waits(c, p.rotation);
  row.cost = p.cost;
  row.bound = p.bound;
  row.proven = p.proven;
}

/// The second wave behind the first: it walks in when the first is through; what is proven is what both have
/// proven, of the first component where they differ on only its bound is one.
void append(WhatIfRow& row, const ClassSpec& c, const Planned& second) {
  const Plan& p = second.plan;
  row.class_s += second.class_s - c.show_s - c.warm_up_s - c.cool_down_s;
  row.slots += p.rotation.slots;
  const auto [least, most] = waits(c, p.rotation);
  row.waits_least = std::min(row.waits_least, least);
  row.waits_most = std::max(row.waits_most, most);
  for (Component k : components) {
    row.cost[k] += p.cost[k];
    row.bound[k] += p.bound[k];
  }
  row.proven = std::min(row.proven, p.proven);
}

WhatIfRow row_for(const ClassSpec& spec, const Change& change, const PlanOptions& options) {
  WhatIfRow row;
  row.change = change;
  const bool waves = change.kind == Change::Kind::two_waves;
  const auto classes = waves ? waves_of(spec) : std::pair(changed(spec, change), ClassSpec{});
  auto first = planned(classes.first, options);
  if (auto* refusal = std::get_if<Refusal>(&first)) {
    row.refused = std::move(*refusal);
    return row;
  }
  fill(row, classes.first, std::get<Planned>(first));
  if (waves) {
    auto second = planned(classes.second, options);
    if (auto* refusal = std::get_if<Refusal>(&second)) {
      row.refused = std::move(*refusal);
      return row;
    }
    append(row, classes.second, std::get<Planned>(second));
  }
  row.fits = !spec.length_s || row.class_s <= *spec.length_s;
  return row;
}

}  // namespace

std::vector<Change> changes_of(const ClassSpec& c) {
  using Kind = Change::Kind;
  std::vector<Change> out{{Kind::as_it_is, {}}};
  if (people_at_once(c) > places_in_all(c)) {
    out.push_back({Kind::more_slots, {}});
    if (const auto exercise = station_to_add(c)) out.push_back({Kind::one_more_station, *exercise});
    if (std::any_of(c.stations.begin(), c.stations.end(),
                    [&](const StationSpec& s) { return can_share(c, s); }))
      out.push_back({Kind::two_to_a_place, {}});
    if (!waves_of(c).second.members.empty()) out.push_back({Kind::two_waves, {}});
  }
  for (const StationSpec& s : c.stations) out.push_back({Kind::one_more_place, s.id});
  for (const EquipmentSpec& e : c.equipment) out.push_back({Kind::one_more_unit, e.id});
  if (c.stations.size() > 1)
    for (const StationSpec& s : c.stations) out.push_back({Kind::left_out, s.id});
  return out;
}

OrRefusal<WhatIf> what_if(const ClassSpec& spec, const WhatIfOptions& options) {
  WhatIf out{.people = people_at_once(spec), .places = places_in_all(spec), .rows = {}};
  const std::vector<Change> changes = changes_of(spec);
  for (std::size_t i = 0; i < changes.size(); ++i) {
    if (i > 0 && options.plan.stop && options.plan.stop()) {
      out.left = static_cast<int>(changes.size() - i);
      break;
    }
    if (options.next) options.next(changes[i], static_cast<int>(i), static_cast<int>(changes.size()));
    WhatIfRow row = row_for(spec, changes[i], options.plan);
    if (i == 0 && row.refused) return *row.refused;
    out.rows.push_back(std::move(row));
  }
  return out;
}

}  // namespace floorwheel
