// SPDX-License-Identifier: GPL-3.0-or-later
// Classes as a wall would have folded them, for tests and the bench: n stations, people spread or given, a
// ring or a free rotation. Names are invented.
#pragma once

#include <string>
#include <vector>

#include "kiosk/wire/hall.h"

namespace floorwheel::support {

struct WallClass {
  int stations = 12;
  int people = 20;
  bool ring = true;
  int slots = 24;
  int laps = 2;
  int work_s = 40;
  int change_s = 20;
  int show_s = 360;
  int warm_up_s = 360;
  int lead_in_s = 30;
  int cool_down_s = 480;
  int break_after = 12;  // 0: none
  int break_s = 90;
  std::vector<int> at_first;         // how many people each station has in slot 1; empty: spread
  int waiting = 0;                   // people at the waiting place in slot 1, moving through it (ring)
  std::vector<std::string> aliases;  // in place of the invented ones
};

wire::ClassView wall_class(const WallClass&);
/// The moment `in_s` seconds into a segment of this kind (of this slot, where it has one).
wire::Moment moment_in(const std::vector<wire::Segment>&, wire::SegmentKind, int slot, double in_s);
/// Aliases of people nobody is.
const std::vector<std::string>& invented_aliases();

}  // namespace floorwheel::support
