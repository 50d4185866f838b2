// SPDX-License-Identifier: GPL-3.0-or-later
// Commands about the class clock: hold, resume, skip, repeat, more time, stop and help. Hold and stop never
// ask which run sheet a screen saw, and repeating them is harmless: they must always work.
#include <array>

#include "kiosk/hub/command.h"

namespace floorwheel::hub {
namespace json = boost::json;
using wire::ClassView;
using wire::Running;
namespace {

Change row(const ClassView& c, const json::object& body = {}) {
  Change change;
  change.class_id = id_of_class(c);
  change.body = {{"class", c.id}};
  wire::merge(change.body, body);
  change.receipt = change.body;
  return change;
}

Already already(const ClassView& c) { return {.receipt = {{"class", c.id}}}; }

void check_started(const ClassView& c) {
  if (!c.clock.started)
    refuse("refused", "The class has not started.", "Publish a run sheet and start it first.");
}

void check_not_stopped(const ClassView& c) {
  if (c.clock.state == Running::stopped)
    refuse("refused", "'Stop and help' is on.", "Say that it is over first (class.over).");
}

/// The segment under way; refused past the end.
int segment_now(const Room& room, const ClassView& c) {
  const wire::Moment m = wire::moment_at(c.clock, room.at_ms);
  if (m.segment < 0) refuse("refused", "The class is past its last segment.", "End it (class.end).");
  return m.segment;
}

Outcome class_hold(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  check_started(c);
  if (c.clock.state != Running::running) return already(c);
  return row(c);
}

Outcome class_resume(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  check_saw(c, f);
  check_started(c);
  check_not_stopped(c);
  if (c.clock.state == Running::running) return already(c);
  return row(c);
}

Outcome class_skip(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  check_saw(c, f);
  check_started(c);
  check_not_stopped(c);
  const int now = segment_now(room, c);
  if (f.maybe_whole("segment", 0, 100'000).value_or(now) != now) return already(c);
  return row(c, {{"segment", now}});
}

Outcome class_repeat(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  check_saw(c, f);
  check_started(c);
  check_not_stopped(c);
  segment_now(room, c);
  return row(c);
}

Outcome class_more_time(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  check_saw(c, f);
  const int seconds = f.whole("s", 1, 3600);
  check_started(c);
  check_not_stopped(c);
  segment_now(room, c);
  return row(c, {{"s", seconds}});
}

Outcome class_stop(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  return c.clock.state == Running::stopped ? Outcome(already(c)) : Outcome(row(c));
}

Outcome class_over(Room& room, const Fields& f) {
  const ClassView& c = class_of(room, f);
  return c.clock.state == Running::stopped ? Outcome(row(c)) : Outcome(already(c));
}

constexpr std::array table{
    NamedCommand{"class.hold", class_hold},           NamedCommand{"class.resume", class_resume},
    NamedCommand{"class.skip", class_skip},           NamedCommand{"class.repeat", class_repeat},
    NamedCommand{"class.more_time", class_more_time}, NamedCommand{"class.stop", class_stop},
    NamedCommand{"class.over", class_over},
};

}  // namespace

std::span<const NamedCommand> clock_commands() { return table; }

}  // namespace floorwheel::hub
