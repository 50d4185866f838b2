// SPDX-License-Identifier: GPL-3.0-or-later
// The class timeline: the segments of a class, and the pure fold of journal events that says which second of
// which segment it is. Hub and every screen run the same code, so a class goes on when the hub is away.
// All times are milliseconds of the class clock: boot time of the hub's machine times the speed factor.
// Source: the class seconds of the file format; the hold and power-cut rules are the design's.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "scheduler/class_spec.h"

namespace floorwheel::wire {

enum class SegmentKind : std::uint8_t { show, warm_up, lead_in, work, change, pause, cool_down };

/// "show", "warm-up", "lead-in", "work", "change", "break", "cool-down": as MOMENTs and rows write it.
std::string_view id_of(SegmentKind);
std::optional<SegmentKind> segment_kind_from(std::string_view);

struct Segment {
  SegmentKind kind = SegmentKind::work;
  int slot = 0;           // of work, change and pause (the slot before it); else 0
  bool lap_ends = false;  // a pause after which the next lap begins: "Lap break", else "Break"
  std::int64_t length_ms = 0;
  friend bool operator==(const Segment&, const Segment&) = default;
};

/// What a run sheet says of time; everything a timeline needs.
struct Timing {
  int slots = 0;
  int laps = 1;
  int work_s = 40;
  int change_s = 20;
  int show_s = 0;
  int warm_up_s = 0;
  int lead_in_s = 0;
  int cool_down_s = 0;
  std::vector<BreakSpec> breaks;
  friend bool operator==(const Timing&, const Timing&) = default;
};
Timing timing_of(const ClassSpec&, int slots);

/// Segments in order; those of zero length are left out (work never is). A pause follows its slot's change.
std::vector<Segment> lay_out(const Timing&);

/// The wall's lap of slot t: 1 + floor((t - 1) L / T).
int lap_of(int slot, int laps, int slots);

enum class Running : std::uint8_t { not_started, running, held, stopped, over };
// over: class.end was told. A timeline that has run out stays `running` with Moment::past_end until then.

/// The folded clock of one class. A plain value; `apply_*` are the only way it changes.
struct ClassClock {
  std::vector<Segment> segments;
  Running state = Running::not_started;
  bool started = false;  // class.start was told; a sheet published before it lays `segments` out already
  std::int64_t anchor_ms = 0;                 // class clock at which `elapsed_ms` was right
  std::int64_t elapsed_ms = 0;                // of the timeline at the anchor
  std::optional<std::int64_t> stopped_at_ms;  // class clock of 'stop and help', while stopped
  bool power_cut = false;                     // held because the machine restarted, until resume
  friend bool operator==(const ClassClock&, const ClassClock&) = default;
};

/// Where a class is at one reading of the class clock.
struct Moment {
  Running state = Running::not_started;
  int segment = -1;             // index into segments; -1 before the start and past the end
  std::int64_t in_ms = 0;       // elapsed in the segment
  std::int64_t left_ms = 0;     // left of the segment
  std::int64_t elapsed_ms = 0;  // of the whole timeline
  std::int64_t total_ms = 0;    // of the whole timeline
  bool past_end = false;
};
Moment moment_at(const ClassClock&, std::int64_t now_ms);

/// First slot a change made at this moment can still move: the slot after the one being worked or left;
/// in a change of slot t, or the break after it: t + 1 is already announced on the wall, so t + 2. Before the
/// first work: 1.
int first_open_slot(const ClassClock&, std::int64_t now_ms);

// The events. Each returns false and changes nothing where it makes no sense (resume of a running class...).
bool apply_start(ClassClock&, const Timing&, std::int64_t at_ms);
bool apply_hold(ClassClock&, std::int64_t at_ms);
/// After a restart of the machine: held at the last pulse, whatever the class clock says now; also a class
/// that was stopped. Before the start nothing is held.
bool apply_power_cut(ClassClock&, std::int64_t elapsed_ms);
bool apply_resume(ClassClock&, std::int64_t at_ms);
/// Jumps to the end of the present segment.
bool apply_skip(ClassClock&, std::int64_t at_ms);
/// Back to the start of the present slot's work (or of the segment, outside the slots).
bool apply_repeat(ClassClock&, std::int64_t at_ms);
/// Lengthens the present segment.
bool apply_more_time(ClassClock&, std::int64_t at_ms, std::int64_t step_ms);
/// 'Stop and help' works at any time until the class is over, also before the start.
bool apply_stop(ClassClock&, std::int64_t at_ms);
/// 'It is over': from stopped to held, or to where it was before the start.
bool apply_over(ClassClock&, std::int64_t at_ms);
bool apply_end(ClassClock&, std::int64_t at_ms);
/// A new run sheet: segments not yet begun are laid out anew, what has begun keeps its length.
bool apply_sheet(ClassClock&, const Timing&, std::int64_t at_ms);

}  // namespace floorwheel::wire
