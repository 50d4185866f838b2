// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/wall_face.h"

#include <QCoreApplication>
#include <algorithm>

namespace floorwheel::screens {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Wall)
};

constexpr std::int64_t last_ms = 5000;

QString text(std::string_view s) { return QString::fromUtf8(s.data(), static_cast<qsizetype>(s.size())); }

WallState state_of(wire::SegmentKind kind) {
  switch (kind) {
    case wire::SegmentKind::show:
      return WallState::show;
    case wire::SegmentKind::warm_up:
      return WallState::warm_up;
    case wire::SegmentKind::lead_in:
      return WallState::lead_in;
    case wire::SegmentKind::work:
      return WallState::work;
    case wire::SegmentKind::change:
      return WallState::change;
    case wire::SegmentKind::pause:
      return WallState::pause;
    case wire::SegmentKind::cool_down:
      return WallState::cool_down;
  }
  return WallState::work;
}

QString plan_of(const wire::StationView& s) {
  const QString places = s.capacity == 1 ? Words::tr("1 place") : Words::tr("%1 places").arg(s.capacity);
  if (s.reps <= 0) return places;
  const QString planned = s.hold        ? Words::tr("%1 s").arg(s.reps)
                          : s.reps == 1 ? Words::tr("1 rep")
                                        : Words::tr("%1 reps").arg(s.reps);
  return Words::tr("%1, %2", "places, repetitions").arg(places, planned);
}

bool closed_in(const wire::StationView& s, int slot) {
  return std::any_of(s.closed.begin(), s.closed.end(), [slot](SlotRange r) { return r.contains(slot); });
}

/// Where everybody is in one slot, by the latest run sheet.
class Places {
 public:
  Places(const wire::ClassView& c) : class_(c) {}

  /// Station id; "" at the waiting place; nothing for somebody who is not there in that slot.
  std::optional<std::string> of(const wire::MemberView& m, int slot) const {
    if (slot < 1 || slot > class_.sheet.timing.slots) return std::nullopt;
    const auto row = std::find_if(class_.sheet.rows.begin(), class_.sheet.rows.end(),
                                  [&](const RunSheetRow& r) { return r.member == m.id; });
    if (row == class_.sheet.rows.end()) return std::nullopt;
    const auto t = static_cast<std::size_t>(slot) - 1;
    if (t < row->stations.size() && !row->stations[t].empty()) return row->stations[t];
    if (!m.here || !m.present.contains(slot)) return std::nullopt;
    return std::string();
  }

 private:
  const wire::ClassView& class_;
};

/// The stations in the order of the rail: a ring's own order, since people move one on along it.
void take_stations(WallFace& face, const wire::ClassView& c, int slot) {
  const auto add = [&](const wire::StationView& s) {
    WallStation w;
    w.id = text(s.id);
    w.letter = text(s.letter);
    w.exercise = text(s.exercise_name);
    w.plan = plan_of(s);
    w.closed = closed_in(s, slot);
    face.stations.push_back(std::move(w));
  };
  if (c.sheet.version > 0 && c.sheet.style == Style::ring)
    for (const std::string& id : c.sheet.ring)
      if (const wire::StationView* s = wire::find_station(c, id)) add(*s);
  for (const wire::StationView& s : c.stations)
    if (std::none_of(face.stations.begin(), face.stations.end(),
                     [&](const WallStation& w) { return w.id == text(s.id); }))
      add(s);
}

WallStation* station(WallFace& face, const std::string& id) {
  for (WallStation& s : face.stations)
    if (s.id == text(id)) return &s;
  return nullptr;
}

/// Puts everybody where they are in slot `at`; their tags say where they are in slot `next`.
void take_people(WallFace& face, const wire::ClassView& c, int at, int next) {
  const Places places(c);
  for (const wire::MemberView& m : c.members) {
    const auto now = places.of(m, at);
    const auto then = places.of(m, next);
    if (!now && (!then || at == next)) continue;
    WallPerson p;
    p.id = text(m.id);
    p.alias = text(m.shown_as);
    if (then) {
      const WallStation* to = then->empty() ? nullptr : station(face, *then);
      p.next = to != nullptr ? to->letter : Words::tr("W", "letter of the waiting place");
    }
    // Somebody who only comes now stands at the waiting place until the changeover.
    WallStation* here = now && !now->empty() ? station(face, *now) : nullptr;
    (here != nullptr ? here->people : face.waiting).push_back(std::move(p));
    if (then && then->empty()) face.waiting_place = true;
  }
  if (!face.waiting.empty()) face.waiting_place = true;
}

/// Whether every box goes to the next station of the ring that is open.
bool moves_one_on(const WallFace& face, const wire::ClassView& c, int next) {
  if (c.sheet.style != Style::ring || face.waiting_place) return false;
  const auto n = face.stations.size();
  for (std::size_t i = 0; i < n; ++i) {
    std::size_t to = (i + 1) % n;
    while (to != i) {
      const wire::StationView* s = wire::find_station(c, face.stations[to].id.toStdString());
      if (s == nullptr || !closed_in(*s, next)) break;
      to = (to + 1) % n;
    }
    for (const WallPerson& p : face.stations[i].people)
      if (!p.next.isEmpty() && p.next != face.stations[to].letter) return false;
  }
  return true;
}

bool one_letter_a_box(const WallFace& face) {
  const auto same = [](const std::vector<WallPerson>& people) {
    return std::all_of(people.begin(), people.end(),
                       [&](const WallPerson& p) { return p.next == people.front().next; });
  };
  return std::all_of(face.stations.begin(), face.stations.end(),
                     [&](const WallStation& s) { return same(s.people); }) &&
         same(face.waiting);
}

/// "18:30" of an RFC 3339 time.
QString time_of(const std::string& start) {
  const auto t = start.find_first_of("Tt ");
  return t == std::string::npos ? QString() : text(std::string_view(start).substr(t + 1, 5));
}

/// Places, tags and ring for one slot pair; a first look ahead where the headline needs none.
void take_slot(WallFace& face, const wire::ClassView& c, int at, int next) {
  take_stations(face, c, at);
  take_people(face, c, at, next);
  face.ring = at != next && moves_one_on(face, c, next);
  face.free_tags =
      at == next ? face.waiting_place || c.sheet.style != Style::ring || !one_letter_a_box(face) : !face.ring;
}

}  // namespace

WallFace wall_face(const wire::ClassView* c, const std::vector<wire::Segment>& segments,
                   const wire::Moment& m, int seconds_since_stop) {
  WallFace face;
  if (c == nullptr || m.state == wire::Running::over) return face;
  face.class_name = text(c->name);
  face.start = time_of(c->start);
  face.held = m.state == wire::Running::held;
  face.power_cut = c->clock.power_cut && face.held;
  face.seconds_left = static_cast<int>((m.left_ms + 999) / 1000);
  face.seconds_since_stop = seconds_since_stop;
  face.free_rotation = c->sheet.style == Style::free;
  face.slot_count = c->sheet.timing.slots;
  face.lap_count = c->sheet.timing.laps;

  if (m.state == wire::Running::stopped) {
    face.state = WallState::stopped;
    return face;
  }
  if (c->sheet.version == 0) {
    face.state = WallState::gather;
    take_stations(face, *c, 1);
    for (const wire::MemberView& p : c->members)
      if (p.here) face.here.push_back({text(p.id), text(p.shown_as), {}});
    return face;
  }
  if (m.past_end) {
    face.state = WallState::past_end;
    face.hand = 360;
    take_stations(face, *c, face.slot_count);
    return face;
  }
  if (m.segment < 0 || static_cast<std::size_t>(m.segment) >= segments.size()) {
    face.state = WallState::ready;
    take_slot(face, *c, 1, 1);
    return face;
  }

  const auto at = static_cast<std::size_t>(m.segment);
  const wire::Segment& s = segments[at];
  face.state = state_of(s.kind);
  face.slot = s.slot;
  face.lap = s.slot > 0 && face.slot_count > 0 ? wire::lap_of(s.slot, face.lap_count, face.slot_count) : 0;
  face.lap_ends = s.lap_ends;
  face.hand = s.length_ms > 0 ? 360.0 * static_cast<double>(m.in_ms) / static_cast<double>(s.length_ms) : 0;
  if (face.state == WallState::work && m.left_ms <= last_ms) face.state = WallState::last;

  switch (face.state) {
    case WallState::show: {
      take_stations(face, *c, 1);
      const auto n = static_cast<std::int64_t>(face.stations.size());
      if (n > 0 && s.length_ms > 0) face.shown = static_cast<int>(std::min(n - 1, m.in_ms * n / s.length_ms));
      face.then = at + 1 < segments.size() ? state_of(segments[at + 1].kind) : WallState::work;
      break;
    }
    case WallState::warm_up:
    case WallState::lead_in:
      take_slot(face, *c, 1, 1);
      break;
    case WallState::pause:
      take_slot(face, *c, s.slot + 1, s.slot + 1);
      break;
    case WallState::change:
      // After the last slot nobody goes anywhere: the face of the cool-down.
      if (s.slot >= face.slot_count) {
        face.state = WallState::cool_down;
        take_stations(face, *c, s.slot);
        break;
      }
      [[fallthrough]];
    case WallState::work:
    case WallState::last:
      take_slot(face, *c, s.slot, s.slot + 1);
      if (face.state == WallState::last && s.slot >= face.slot_count) face.state = WallState::work;
      break;
    default:
      take_stations(face, *c, face.slot_count);
      break;
  }
  return face;
}

bool shows_go_face(const WallFace& f) {
  return f.state == WallState::ready || f.state == WallState::lead_in || f.state == WallState::last ||
         f.state == WallState::change || f.state == WallState::pause;
}

WallTags tags_of(const WallFace& f) {
  switch (f.state) {
    case WallState::lead_in:
    case WallState::change:
      return WallTags::filled;
    case WallState::ready:
    case WallState::last:
    case WallState::pause:
      return WallTags::outlined;
    case WallState::work:
      return f.free_rotation && f.slot < f.slot_count ? WallTags::outlined : WallTags::none;
    default:
      return WallTags::none;
  }
}

WallRail rail_of(const WallFace& f) {
  switch (f.state) {
    case WallState::work:
    case WallState::last:
    case WallState::lead_in:
      return WallRail::sleepers;
    case WallState::change:
      return f.ring ? WallRail::chevrons : WallRail::sleepers;
    case WallState::show:
    case WallState::warm_up:
    case WallState::pause:
    case WallState::cool_down:
      return WallRail::beads;
    default:
      return WallRail::plain;
  }
}

WallTone tone_of(const WallFace& f) {
  if (f.held) return WallTone::held;
  return f.state == WallState::lead_in || f.state == WallState::change ? WallTone::go : WallTone::active;
}

bool is_filled(const WallFace& f, int station) {
  if (f.state == WallState::show) return station == f.shown;
  switch (f.state) {
    case WallState::lead_in:
    case WallState::work:
    case WallState::last:
    case WallState::change:
      return !f.stations[static_cast<std::size_t>(station)].people.empty();
    default:
      return false;
  }
}

}  // namespace floorwheel::screens
