// SPDX-License-Identifier: GPL-3.0-or-later
// What people decided instead of a suggested load: appended, never changed; the training rules say which one
// stands (scheduler/training/override.h).
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "kiosk/store/sqlite.h"
#include "scheduler/training/override.h"

namespace floorwheel::store {

/// Keeps a decision, with its instant, of the journal row `seq`; `decided_by` is a role's id. Loads are kept
/// to the gram.
void add_decision(Database&, const training::Override&, std::int64_t seq);
/// Of one member, all exercises, in the order they were decided.
std::vector<training::Override> decisions_of_member(Database&, const std::string& member);

}  // namespace floorwheel::store
