// SPDX-License-Identifier: GPL-3.0-or-later
// The talk sheet: what a member did this week and in the last four, done against planned by muscle group, the
// loads of three exercises, the goal and what was agreed. Computed from store and hall, never kept.
// Planned are the sets that the latest run sheets of this week's classes place for the member, of the classes
// the member checked in to: each slot at a station is one set, counted once for each primary group, as done
// sets are. A level's band would be a rule of thumb; the run sheet is what was really asked of this member.
#pragma once

#include <boost/json.hpp>
#include <string>

#include "kiosk/hub/command.h"
#include "scheduler/training/calendar.h"

namespace floorwheel::hub {

/// The fields of the question `talk.sheet` but member, shown_as and level.
boost::json::object talk_sheet(Room&, const std::string& member, training::Day today);

}  // namespace floorwheel::hub
