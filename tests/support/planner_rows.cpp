// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/planner_rows.h"

#include <algorithm>
#include <optional>

#include "scheduler/rotation/audit.h"
#include "scheduler/rotation/solve.h"
#include "tests/support/events.h"
#include "tests/support/floors.h"

namespace floorwheel::rows {
namespace {

/// Rules and stated cost; bounds that fit what is called proven. "" if fine.
std::string fault_of(const ClassSpec& c, const Plan& plan, int at_slot = 1,
                     const EarlierSheet* before = nullptr) {
  const Audit a = audit(c, plan.rotation, at_slot, before);
  if (!a.holds()) return a.breaches.front().text;
  if (a.cost != plan.cost) return "The cost stated is not the auditor's.";
  int leading = 0;
  for (Component k : components) {
    if (k == Component::moved && before == nullptr) continue;
    if (leading++ < plan.proven && plan.bound[k] != plan.cost[k]) return "Proven above its bound.";
  }
  return {};
}

std::string with_seed(std::uint64_t seed, const std::string& fault) {
  return fault.empty() ? fault : "seed " + std::to_string(seed) + ": " + fault;
}

double read(const CpuClock& clock) { return clock ? clock() : 0; }

void measured(Measured& row, const CpuClock& clock, double start) {
  ++row.cases;
  if (clock) row.cpu_s.push_back(clock() - start);
}

}  // namespace

HallLike hall_like(std::uint64_t first_seed, int cases, double limit_s, const CpuClock& clock) {
  HallLike row;
  for (std::uint64_t seed = first_seed; row.cases < cases && row.fault.empty(); ++seed) {
    const ClassSpec c = floors::hall_like(seed);
    const double start = read(clock);
    PlanOptions options;
    if (clock) options.stop = [&] { return clock() - start > limit_s; };
    const OrRefusal<Plan> outcome = plan(c, 14, options);
    measured(row, clock, start);
    const Plan* answer = std::get_if<Plan>(&outcome);
    row.fault = with_seed(seed, answer == nullptr ? "refused" : fault_of(c, *answer));
    if (answer == nullptr || answer->proven < 3) continue;
    ++row.proven;
    row.short_rests.push_back(answer->cost[Component::short_rest] - answer->bound[Component::short_rest]);
  }
  return row;
}

Repairs repairs(const RepairFloor& f, std::uint64_t first_seed, int cases, const CpuClock& clock) {
  Repairs row;
  ClassSpec base;
  Rotation sheet_of;
  std::optional<std::uint64_t> floor;  // the number of the floor that `base` is
  for (std::uint64_t seed = first_seed; row.cases < cases && row.fault.empty(); ++seed) {
    if (const auto number = seed / static_cast<std::uint64_t>(f.events_each); floor != number) {
      floor = number;
      tiny::Draw d(number);
      base = floors::plain(f.members, f.stations, d.from(f.fewest_places, f.most_places), d.word());
      sheet_of = std::get<Plan>(plan(base, f.slots)).rotation;
    }
    tiny::Draw d(seed);
    ClassSpec c = base;
    const EarlierSheet sheet = build::sheet(c, sheet_of);
    const int at = d.from(2, f.slots);
    const std::string what = events::late_leaver_or_closed(d, c, f.slots, at);
    const double start = read(clock);
    const OrRefusal<Plan> outcome = repair(c, f.slots, sheet, at);
    measured(row, clock, start);
    const Plan* answer = std::get_if<Plan>(&outcome);
    row.fault = with_seed(seed, answer == nullptr ? what + ": refused" : fault_of(c, *answer, at, &sheet));
    if (answer == nullptr) continue;
    row.altered += events::history_kept(c, sheet, answer->rotation, at).altered;
    row.moved += answer->cost[Component::moved];
    row.proven += answer->proven >= 4 ? 1 : 0;
    const std::int64_t gap = answer->cost[Component::moved] - answer->bound[Component::moved];
    if (gap > row.worst_gap) {
      row.worst_gap = gap;
      row.worst_seed = seed;
    }
  }
  return row;
}

History history(std::uint64_t first_seed, int cases, const CpuClock& clock) {
  History row;
  constexpr std::int64_t little = 60;  // history has to stand however hard the planner tries
  for (std::uint64_t seed = first_seed; row.cases < cases && row.fault.empty(); ++seed) {
    tiny::Draw d(seed);
    const bool middle = d.one_in(100);
    int slots = middle ? d.from(6, 10) : d.from(2, 5);
    ClassSpec c = middle ? floors::hall(d.word(), d.from(6, 12), d.from(5, 9), slots)
                         : tiny::make_class(d.word(), d.from(2, 3), d.from(2, 3), slots);
    const OrRefusal<Plan> first = first_rotation(c, slots);
    if (std::holds_alternative<Refusal>(first)) continue;
    EarlierSheet sheet = build::sheet(c, std::get<Plan>(first).rotation);
    int at = 1;
    for (int chain = d.from(1, 4); chain > 0 && at <= slots && row.cases < cases; --chain) {
      at = d.from(at, slots);
      const int was = slots;
      ClassSpec changed = c;
      const std::string what = tiny::happen(d, changed, slots, at);
      const double start = read(clock);
      const std::int64_t effort = d.one_in(200) ? 0 : little;
      const OrRefusal<Plan> outcome = repair(changed, slots, sheet, at, {.effort = effort});
      measured(row, clock, start);
      if (std::holds_alternative<Refusal>(outcome)) {  // the sheet stays, and the floor
        ++row.refused;
        slots = was;
        continue;
      }
      const Plan& answer = std::get<Plan>(outcome);
      row.fault = with_seed(seed, fault_of(changed, answer, at, &sheet));
      if (!row.fault.empty()) {
        row.fault += " (" + what + " at slot " + std::to_string(at) + ")";
        break;
      }
      const events::Kept kept = events::history_kept(changed, sheet, answer.rotation, at);
      row.entries += kept.entries;
      row.altered += kept.altered;
      c = changed;
      sheet = build::sheet(c, answer.rotation);
      sheet.at_slot = at;
    }
  }
  return row;
}

}  // namespace floorwheel::rows
