// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/wire/timeline.h"

#include <algorithm>
#include <array>
#include <tuple>
#include <utility>

namespace floorwheel::wire {
namespace {

constexpr std::array<std::pair<SegmentKind, std::string_view>, 7> segment_ids{{
    {SegmentKind::show, "show"},
    {SegmentKind::warm_up, "warm-up"},
    {SegmentKind::lead_in, "lead-in"},
    {SegmentKind::work, "work"},
    {SegmentKind::change, "change"},
    {SegmentKind::pause, "break"},
    {SegmentKind::cool_down, "cool-down"},
}};

constexpr std::int64_t ms(int seconds) { return std::int64_t{1000} * seconds; }

bool in_slots(SegmentKind k) {
  return k == SegmentKind::work || k == SegmentKind::change || k == SegmentKind::pause;
}

/// Where a segment belongs in any timeline: before the slots, slot by slot, after the slots.
auto place_of(const Segment& s) {
  const int part = s.kind == SegmentKind::cool_down ? 2 : in_slots(s.kind) ? 1 : 0;
  return std::tuple(part, s.slot, static_cast<int>(s.kind));
}

std::int64_t total_of(const ClassClock& c) {
  std::int64_t sum = 0;
  for (const Segment& s : c.segments) sum += s.length_ms;
  return sum;
}

std::int64_t begin_of(const ClassClock& c, std::size_t segment) {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < segment; ++i) sum += c.segments[i].length_ms;
  return sum;
}

bool under_way(const ClassClock& c) { return c.state == Running::running || c.state == Running::held; }

/// Makes `elapsed_ms` right at `at_ms`, so that what follows may change it or the segments.
void settle(ClassClock& c, std::int64_t at_ms) {
  c.elapsed_ms = moment_at(c, at_ms).elapsed_ms;
  c.anchor_ms = at_ms;
}

}  // namespace

std::string_view id_of(SegmentKind k) {
  for (const auto& [kind, id] : segment_ids)
    if (kind == k) return id;
  return "";
}

std::optional<SegmentKind> segment_kind_from(std::string_view id) {
  for (const auto& [kind, name] : segment_ids)
    if (name == id) return kind;
  return {};
}

Timing timing_of(const ClassSpec& c, int slots) {
  return {.slots = slots,
          .laps = c.laps,
          .work_s = c.work_s,
          .change_s = c.change_s,
          .show_s = c.show_s,
          .warm_up_s = c.warm_up_s,
          .lead_in_s = c.lead_in_s,
          .cool_down_s = c.cool_down_s,
          .breaks = c.breaks};
}

int lap_of(int slot, int laps, int slots) {
  if (slots <= 0) return 1;
  return 1 + static_cast<int>(std::int64_t{slot - 1} * laps / slots);
}

std::vector<Segment> lay_out(const Timing& t) {
  std::vector<Segment> out;
  const auto add = [&out](SegmentKind kind, int slot, int seconds, bool lap_ends = false) {
    if (seconds > 0 || kind == SegmentKind::work)
      out.push_back(
          {.kind = kind, .slot = slot, .lap_ends = lap_ends, .length_ms = ms(std::max(seconds, 0))});
  };
  add(SegmentKind::show, 0, t.show_s);
  add(SegmentKind::warm_up, 0, t.warm_up_s);
  add(SegmentKind::lead_in, 0, t.lead_in_s);
  for (int slot = 1; slot <= t.slots; ++slot) {
    add(SegmentKind::work, slot, t.work_s);
    add(SegmentKind::change, slot, t.change_s);
    if (slot == t.slots) break;  // a break after the last slot falls away
    const bool lap_ends = lap_of(slot, t.laps, t.slots) != lap_of(slot + 1, t.laps, t.slots);
    for (const BreakSpec& b : t.breaks)
      if (b.after_slot == slot) add(SegmentKind::pause, slot, b.seconds, lap_ends);
  }
  add(SegmentKind::cool_down, 0, t.cool_down_s);
  return out;
}

Moment moment_at(const ClassClock& c, std::int64_t now_ms) {
  Moment m;
  m.state = c.state;
  m.total_ms = total_of(c);
  if (!c.started) return m;
  m.elapsed_ms = c.elapsed_ms;
  if (c.state == Running::running && now_ms > c.anchor_ms) m.elapsed_ms += now_ms - c.anchor_ms;
  m.elapsed_ms = std::clamp<std::int64_t>(m.elapsed_ms, 0, m.total_ms);
  std::int64_t begin = 0;
  for (std::size_t i = 0; i < c.segments.size(); ++i) {
    const std::int64_t end = begin + c.segments[i].length_ms;
    if (m.elapsed_ms < end) {
      m.segment = static_cast<int>(i);
      m.in_ms = m.elapsed_ms - begin;
      m.left_ms = end - m.elapsed_ms;
      return m;
    }
    begin = end;
  }
  m.past_end = true;
  return m;
}

int first_open_slot(const ClassClock& c, std::int64_t now_ms) {
  if (!c.started) return 1;
  const Moment m = moment_at(c, now_ms);
  int slots = 0;
  for (const Segment& s : c.segments) slots = std::max(slots, s.slot);
  if (m.past_end) return slots + 1;
  if (m.segment < 0) return 1;
  const Segment& s = c.segments[static_cast<std::size_t>(m.segment)];
  switch (s.kind) {
    case SegmentKind::work:
      return s.slot + 1;
    case SegmentKind::change:
    case SegmentKind::pause:  // people stand where the changeover before it sent them
      return std::min(s.slot + 2, slots + 1);
    case SegmentKind::cool_down:
      return slots + 1;
    default:
      return 1;
  }
}

bool apply_start(ClassClock& c, const Timing& t, std::int64_t at_ms) {
  if (c.state != Running::not_started || t.slots < 1) return false;
  c.segments = lay_out(t);
  c.state = Running::running;
  c.started = true;
  c.anchor_ms = at_ms;
  c.elapsed_ms = 0;
  return true;
}

bool apply_hold(ClassClock& c, std::int64_t at_ms) {
  if (c.state != Running::running) return false;
  settle(c, at_ms);
  c.state = Running::held;
  return true;
}

bool apply_power_cut(ClassClock& c, std::int64_t elapsed_ms) {
  if (!under_way(c) && c.state != Running::stopped) return false;
  if (!c.started) {  // 'stop and help' before the start: nothing ran
    c.state = Running::not_started;
    c.stopped_at_ms.reset();
    return true;
  }
  c.state = Running::held;
  c.anchor_ms = 0;  // readings of the clock before the restart mean nothing now
  c.elapsed_ms = std::clamp<std::int64_t>(elapsed_ms, 0, total_of(c));
  c.stopped_at_ms.reset();
  c.power_cut = true;
  return true;
}

bool apply_resume(ClassClock& c, std::int64_t at_ms) {
  if (c.state != Running::held) return false;
  c.state = Running::running;
  c.anchor_ms = at_ms;
  c.power_cut = false;
  return true;
}

bool apply_skip(ClassClock& c, std::int64_t at_ms) {
  const Moment m = moment_at(c, at_ms);
  if (!under_way(c) || m.segment < 0) return false;
  settle(c, at_ms);
  c.elapsed_ms += m.left_ms;
  return true;
}

bool apply_repeat(ClassClock& c, std::int64_t at_ms) {
  const Moment m = moment_at(c, at_ms);
  if (!under_way(c) || m.segment < 0) return false;
  auto segment = static_cast<std::size_t>(m.segment);
  const int slot = c.segments[segment].slot;
  while (slot > 0 && segment > 0 && c.segments[segment].kind != SegmentKind::work) --segment;
  settle(c, at_ms);
  c.elapsed_ms = begin_of(c, segment);
  return true;
}

bool apply_more_time(ClassClock& c, std::int64_t at_ms, std::int64_t step_ms) {
  const Moment m = moment_at(c, at_ms);
  if (!under_way(c) || m.segment < 0 || step_ms <= 0) return false;
  c.segments[static_cast<std::size_t>(m.segment)].length_ms += step_ms;
  return true;
}

bool apply_stop(ClassClock& c, std::int64_t at_ms) {
  if (c.state == Running::stopped || c.state == Running::over) return false;
  if (c.started) settle(c, at_ms);
  c.state = Running::stopped;
  c.stopped_at_ms = at_ms;
  return true;
}

bool apply_over(ClassClock& c, std::int64_t at_ms) {
  if (c.state != Running::stopped) return false;
  c.anchor_ms = at_ms;
  c.stopped_at_ms.reset();
  c.state = c.started ? Running::held : Running::not_started;
  return true;
}

bool apply_end(ClassClock& c, std::int64_t at_ms) {
  if (c.state == Running::over) return false;
  if (c.started) settle(c, at_ms);
  c.state = Running::over;
  c.stopped_at_ms.reset();
  return true;
}

bool apply_sheet(ClassClock& c, const Timing& t, std::int64_t at_ms) {
  if (c.state == Running::over || t.slots < 1) return false;
  const std::vector<Segment> fresh = lay_out(t);
  if (!c.started) {
    c.segments = fresh;
    return true;
  }
  // What has begun stays as it was, with any time given to it; past the end that is everything.
  const Moment m = moment_at(c, at_ms);
  settle(c, at_ms);
  if (m.segment >= 0) c.segments.resize(static_cast<std::size_t>(m.segment) + 1);
  if (c.segments.empty()) return false;
  const auto last = place_of(c.segments.back());
  std::copy_if(fresh.begin(), fresh.end(), std::back_inserter(c.segments),
               [&last](const Segment& s) { return place_of(s) > last; });
  return true;
}

}  // namespace floorwheel::wire
