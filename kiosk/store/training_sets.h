// SPDX-License-Identifier: GPL-3.0-or-later
// Set records of the store as the training rules take them: done ones, each as last corrected, on the day of
// the first record. All are working sets: a class keeps no others.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kiosk/store/sqlite.h"
#include "scheduler/training/set_record.h"

namespace floorwheel::store {

/// Of one member, those kept from `from_ms` (Unix time) on.
std::vector<training::SetRecord> sets_of_member(Database&, const std::string& member,
                                                std::int64_t from_ms = 0);
/// Of one member or ("") everybody, done in one ISO week.
std::vector<training::SetRecord> sets_of_week(Database&, training::IsoWeek, const std::string& member = {});

/// Who checked in on this local day ("2026-03-05") or later, guests left out; in order of id.
std::vector<std::string> members_since(Database&, const std::string& day);
/// The local day a member checked in to a class on.
std::optional<training::Day> day_of_check_in(Database&, const Uuid& class_id, const std::string& member);

}  // namespace floorwheel::store
