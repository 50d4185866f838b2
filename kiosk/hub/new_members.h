// SPDX-License-Identifier: GPL-3.0-or-later
// Members on one of their first four visits, or before it, with what we suggest to look at. Visits are
// check-ins of the store. Who never came counts once they are expected in the class at hand.
#pragma once

#include <boost/json.hpp>

#include "kiosk/hub/command.h"

namespace floorwheel::hub {

/// The rows of the question `members.new`: who is here first, then who is expected in the class at hand, then
/// the others by their last visit.
boost::json::array new_members(Room&);

}  // namespace floorwheel::hub
