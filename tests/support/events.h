// SPDX-License-Identifier: GPL-3.0-or-later
// What happens on the floor in the middle of a class, by chance: one event for the figures of repair, and
// chains of any of the changes that the model knows.
#pragma once

#include <string>

#include "tests/support/tiny_cases.h"

namespace floorwheel::events {

/// Somebody comes late, somebody leaves, or a station closes, from `at_slot` on. Returns what, in words.
std::string late_leaver_or_closed(tiny::Draw&, ClassSpec&, int slots, int at_slot);

/// What history kept: a run sheet and the rotation that a repair at `at_slot` made of it. In slots before
/// that members are where the sheet has them; newcomers, and people in slots outside their window, are
/// nowhere.
struct Kept {
  int entries = 0;  // members' entries on the sheet in these slots
  int altered = 0;  // entries that are not as they have to be
};
Kept history_kept(const ClassSpec&, const EarlierSheet& before, const Rotation& after, int at_slot);

}  // namespace floorwheel::events
