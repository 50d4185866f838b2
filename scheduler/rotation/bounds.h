// SPDX-License-Identifier: GPL-3.0-or-later
// Lower bounds that hold for every rotation of a class, free or ring. `missed` and `uneven` come from the
// flow of visits (preflight.h), `back_to_back` from each member's own list.
#pragma once

#include "scheduler/rotation/preflight.h"
#include "scheduler/rotation/problem.h"

namespace floorwheel {

struct Found;

/// Back-to-backs that members' own lists force, when everybody visits all that their window lets.
std::int64_t bound_back_to_back(const Problem&);

/// Everybody is to visit every station once, in as many slots, with the same groups everywhere.
bool everybody_alike(const Problem&);

/// Then, on a ring that has `bad_joints` at least: all walk all joints but the one they start behind, and
/// only as many can start behind a bad one as there are places.
std::int64_t bound_on_ring(const Problem&, int bad_joints);

/// In a repair: entries that cannot stay as they were, whatever the rest does.
std::int64_t bound_moved(const Problem&);

/// The same when `missed` and `uneven` are so much: whoever works more or fewer slots than on the earlier
/// sheet has as many entries moved, and only some shares of what is missed have those squares.
std::int64_t bound_moved_by_shares(const Problem&, std::int64_t missed, std::int64_t uneven);

/// Fills in `bound` and `proven` of an answer, keeping what is known already and is better.
void prove(const Problem&, Found&);

}  // namespace floorwheel
