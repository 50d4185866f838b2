// SPDX-License-Identifier: GPL-3.0-or-later
// The leader from a box to its disc: a poly-line that touches no other disc and not the plate of the waiting
// place. Kept apart from the columns because it is the only geometry that has to look for its way.
#pragma once

#include <optional>

#include "kiosk/screens/wheel_layout.h"

namespace floorwheel::screens {

/// What a leader has to keep clear of.
struct LeaderWay {
  std::vector<WheelPoint> others;  // centres of the other discs
  bool plate = false;              // whether the W plate stands there
};

/// From the bracket (x, top to bottom) to a disc; nothing if no way is clear.
std::optional<WheelLine> leader_to_disc(double x, double top, double bottom, WheelPoint disc,
                                        const LeaderWay&);
/// From the bracket to the W plate.
WheelLine leader_to_plate(double x, double top, double bottom);

double distance_to_segment(WheelPoint p, WheelPoint a, WheelPoint b);
bool segment_meets(WheelPoint a, WheelPoint b, const WheelRect&);

}  // namespace floorwheel::screens
