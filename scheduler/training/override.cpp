// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/override.h"

#include <algorithm>

#include "scheduler/training/rack.h"

namespace floorwheel::training {
namespace {

/// Those up to a day, oldest first; of one day in the order given.
std::vector<Override> until(std::span<const Override> all, Day today) {
  std::vector<Override> out;
  std::ranges::copy_if(all, std::back_inserter(out), [&](const Override& o) { return o.day <= today; });
  std::ranges::stable_sort(out, {}, &Override::day);
  return out;
}

/// Whether the visit came after the decision.
bool done_by(const Override& o, const Visit& v) {
  if (v.day != o.day) return v.day > o.day;
  return o.instant_us ? v.first_us > *o.instant_us : v.load == o.load;
}

bool stands(const Override& o, const std::vector<Visit>& worked) {
  return worked.empty() || !done_by(o, worked.back());
}

/// Who decides again before the exercise is done has changed their mind: only the last decision counts. Of
/// decisions before the first visit that is known nothing can be told, so all of them do.
std::vector<Override> without_changed_minds(const std::vector<Override>& in_order,
                                            const std::vector<Visit>& worked) {
  std::vector<Override> out;
  for (const Override& o : in_order) {
    const auto between = [&](const Visit& v) { return done_by(out.back(), v) && !done_by(o, v); };
    const bool told = !out.empty() && (worked.empty() || out.back().day >= worked.front().day);
    if (told && std::ranges::none_of(worked, between)) out.pop_back();
    out.push_back(o);
  }
  return out;
}

Change change_to(const std::optional<Weight>& load, const std::vector<Visit>& worked) {
  if (worked.empty()) return Change::first;
  if (!load || load->mass == worked.back().load) return Change::same;
  return load->mass > worked.back().load ? Change::up : Change::down;
}

}  // namespace

bool slow_to_rise(std::span<const Override> all) {
  std::vector<Override> rises;
  for (const Override& o : all)
    if (o.suggested_change == Change::up) rises.push_back(o);
  std::ranges::stable_sort(rises, {}, &Override::day);
  return rises.size() >= 2 &&
         std::all_of(rises.end() - 2, rises.end(), [](const Override& o) { return o.load < o.suggested; });
}

Decided next_load(std::span<const SetRecord> records, NextQuestion q, std::span<const Override> all) {
  const Visits visits = visits_of(records, q.today);
  const std::vector<Override> overrides = without_changed_minds(until(all, q.today), visits.worked);
  q.slow_to_rise = q.slow_to_rise || slow_to_rise(overrides);
  Decided d;
  d.answer = d.suggested = next_load(records, q);
  if (overrides.empty() || !stands(overrides.back(), visits.worked)) return d;
  d.by = overrides.back();
  NextAnswer& a = d.answer;
  a.load = nearest_load(q.loads, d.by->load).below;
  a.change = change_to(a.load, visits.worked);
  a.reps = d.by->reps.value_or(a.reps);
  a.sets = d.by->sets.value_or(a.sets);
  a.ask_instructor = a.ask_instructor || !a.load;
  a.reason = d.by->decided_by + " decided " + shown(d.by->load) + " on " + text_of(d.by->day) +
             " instead of " + shown(d.by->suggested);
  if (a.load && a.load->mass != d.by->load)
    a.reason += ", for which " + text_of(*a.load) + " stands, the nearest below that the floor has";
  if (!a.load) a.reason += ", but the floor has nothing as light";
  if (visits.pain_at_the_last) a.reason += "; pain was noted at the last visit, so stop on pain";
  a.reason += ".";
  return d;
}

}  // namespace floorwheel::training
