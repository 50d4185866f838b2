// SPDX-License-Identifier: GPL-3.0-or-later
// The tables of the store, as numbered steps; each step runs once, in a transaction of its own.
#pragma once

#include <span>
#include <string_view>

namespace floorwheel::store {

/// Marks a SQLite file as ours ("FLWH").
inline constexpr int application_id = 0x464C5748;

/// Step i takes a database from user_version i to i + 1.
std::span<const std::string_view> migrations();
inline int schema_version() { return static_cast<int>(migrations().size()); }

}  // namespace floorwheel::store
