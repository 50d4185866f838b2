// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/touch_rules.h"

#include <algorithm>

namespace floorwheel::screens::touch {
namespace {

using wire::ClassView;
using wire::Moment;
using wire::Running;
using wire::SegmentKind;

const wire::Segment* segment_of(const ClassView& c, const Moment& m) {
  if (m.segment < 0 || m.segment >= static_cast<int>(c.clock.segments.size())) return nullptr;
  return &c.clock.segments[static_cast<std::size_t>(m.segment)];
}

bool past_all(const Moment& m) { return m.past_end || m.state == Running::over; }

std::int64_t last_check_in_ms(const ClassView& c) {
  std::int64_t last = 0;
  for (const auto& m : c.members) last = std::max(last, m.here_at_ms);
  return last;
}

std::int64_t local_day(std::int64_t civil_ms, int utc_offset_s) {
  constexpr std::int64_t day_ms = 86'400'000;
  const std::int64_t local = civil_ms + std::int64_t{utc_offset_s} * 1000;
  return local >= 0 ? local / day_ms : (local - day_ms + 1) / day_ms;
}

const RunSheetRow* row_of(const ClassView& c, std::string_view member) {
  const auto at = std::ranges::find(c.sheet.rows, member, &RunSheetRow::member);
  return at == c.sheet.rows.end() ? nullptr : &*at;
}

std::string exercise_of(const ClassView& c, std::string_view member, const wire::StationView& s) {
  if (const auto* m = wire::find_member(c, member))
    if (const auto at = m->exercises.find(s.id); at != m->exercises.end()) return at->second;
  return s.exercise;
}

std::string name_of(const wire::Hall& hall, const wire::StationView& s, const std::string& exercise) {
  if (exercise == s.exercise && !s.exercise_name.empty()) return s.exercise_name;
  const auto at = hall.exercise_names.find(exercise);
  return at == hall.exercise_names.end() ? exercise : at->second;
}

}  // namespace

const ClassView* class_at_hand(const wire::Hall& hall, std::int64_t civil_now_ms, int utc_offset_s) {
  if (const auto* c = wire::current_class(hall)) return c;
  const ClassView* latest = nullptr;
  for (const auto& [id, c] : hall.classes) {
    if (c.clock.state != Running::over) continue;
    if (local_day(last_check_in_ms(c), utc_offset_s) != local_day(civil_now_ms, utc_offset_s)) continue;
    if (latest == nullptr || last_check_in_ms(c) > last_check_in_ms(*latest)) latest = &c;
  }
  return latest;
}

Stage stage_of(const ClassView* c, const Moment& m) {
  if (c == nullptr) return Stage::none;
  if (m.state == Running::stopped) return Stage::stopped;
  return slot_begun(*c, m) > 0 ? Stage::record : m.state == Running::over ? Stage::none : Stage::check_in;
}

int slot_begun(const ClassView& c, const Moment& m) {
  if (m.state == Running::not_started) return 0;
  // A class closed early keeps the segment it ended in: later slots were never worked.
  if (m.past_end) return c.sheet.timing.slots;
  const auto* s = segment_of(c, m);
  if (s == nullptr) return 0;
  switch (s->kind) {
    case SegmentKind::work:
    case SegmentKind::change:
    case SegmentKind::pause:
      return s->slot;
    case SegmentKind::cool_down:
      return c.sheet.timing.slots;
    case SegmentKind::show:
    case SegmentKind::warm_up:
    case SegmentKind::lead_in:
      return 0;
  }
  return 0;
}

bool at_work(const ClassView& c, const Moment& m) {
  if (m.state == Running::not_started || past_all(m)) return false;
  const auto* s = segment_of(c, m);
  return s != nullptr && s->kind == SegmentKind::work;
}

std::optional<PlannedSet> planned_set(const wire::Hall& hall, const ClassView& c, std::string_view member,
                                      int slot) {
  const std::string at = wire::station_of(c, member, slot);
  const auto* s = wire::find_station(c, at);
  if (at.empty() || s == nullptr) return {};
  PlannedSet p;
  p.member = member;
  p.station = at;
  p.letter = s->letter;
  p.exercise = exercise_of(c, member, *s);
  p.exercise_name = name_of(hall, *s, p.exercise);
  p.slot = slot;
  p.offers_hg = s->offers_hg;
  p.may_go_without = p.exercise != s->exercise;
  p.reps = s->reps;
  p.rir = s->rir;
  p.hold = s->hold;
  if (const auto* row = row_of(c, member)) {
    const auto here = row->stations.begin() + std::min<std::ptrdiff_t>(slot, std::ssize(row->stations));
    p.set = static_cast<int>(std::count(row->stations.begin(), here, at));
    p.sets = static_cast<int>(std::ranges::count(row->stations, at));
  }
  if (const auto* m = wire::find_member(c, member); m != nullptr && !p.may_go_without)
    if (const auto load = m->loads_hg.find(at); load != m->loads_hg.end()) p.load_hg = load->second;
  return p;
}

std::vector<int> worked_slots(const ClassView& c, std::string_view member, int last) {
  std::vector<int> out;
  if (const auto* row = row_of(c, member))
    for (int t = 1; t <= std::min(last, static_cast<int>(row->stations.size())); ++t)
      if (!row->stations[static_cast<std::size_t>(t - 1)].empty()) out.push_back(t);
  return out;
}

NextPlace next_place(const wire::Hall& hall, const ClassView& c, const Moment& m, std::string_view member) {
  NextPlace next;
  const auto* row = row_of(c, member);
  if (row == nullptr) return next;
  const int from = slot_begun(c, m) + 1;
  const std::vector<int> worked = worked_slots(c, member, c.sheet.timing.slots);
  const auto later = std::ranges::lower_bound(worked, from);
  if (past_all(m) || later == worked.end()) {
    next.what = NextPlace::What::nothing_more;
    return next;
  }
  // Before the first slot the first place counts, however late it comes; later a gap is a wait.
  next.slot = from == 1 ? *later : from;
  if (const auto p = planned_set(hall, c, member, next.slot)) {
    next.what = NextPlace::What::station;
    next.letter = p->letter;
    next.exercise_name = p->exercise_name;
  } else {
    next.what = NextPlace::What::waits;
  }
  return next;
}

bool moves_one_on(const ClassView& c, int slot) {
  const auto& ring = c.sheet.ring;
  if (c.sheet.style != Style::ring || ring.empty()) return false;
  return std::ranges::all_of(c.sheet.rows, [&](const RunSheetRow& row) {
    const std::string from = wire::station_of(c, row.member, slot);
    const std::string to = wire::station_of(c, row.member, slot + 1);
    if (to.empty())
      return worked_slots(c, row.member, c.sheet.timing.slots).size() ==
             worked_slots(c, row.member, slot).size();
    const auto at = std::ranges::find(ring, from);
    return at != ring.end() && to == (std::next(at) == ring.end() ? ring.front() : *std::next(at));
  });
}

std::vector<std::string> station_order(const ClassView& c) {
  std::vector<std::string> order = c.sheet.ring;
  for (const auto& s : c.stations)
    if (std::ranges::find(order, s.id) == order.end()) order.push_back(s.id);
  return order;
}

int step_load(const std::vector<int>& offers_hg, int load_hg, int direction) {
  if (direction > 0) {
    const auto up = std::ranges::upper_bound(offers_hg, load_hg);
    return up == offers_hg.end() ? load_hg : *up;
  }
  const auto from = std::ranges::lower_bound(offers_hg, load_hg);
  return from == offers_hg.begin() ? load_hg : *std::prev(from);
}

}  // namespace floorwheel::screens::touch
