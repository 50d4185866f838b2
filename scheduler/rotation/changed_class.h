// SPDX-License-Identifier: GPL-3.0-or-later
// The class that a change would make of a class: plain values in, plain values out.
#pragma once

#include <utility>

#include "scheduler/rotation/what_if.h"

namespace floorwheel {

/// People present at once, at most.
int people_at_once(const ClassSpec&);
int places_in_all(const ClassSpec&);

/// Stations at which two can share a place: every equipment that the exercise needs or that is taken there is
/// on the floor twice over.
bool can_share(const ClassSpec&, const StationSpec&);

/// The exercise to add as a station: it needs no equipment, all may do it or as many as can, and it shares a
/// primary group with as few stations as can be. Nothing where the table has none.
std::optional<std::string> station_to_add(const ClassSpec&);

/// Any change but two_waves.
ClassSpec changed(const ClassSpec&, const Change&);

/// Both halves: members in turn, those held together on one side.
std::pair<ClassSpec, ClassSpec> waves_of(const ClassSpec&);

}  // namespace floorwheel
