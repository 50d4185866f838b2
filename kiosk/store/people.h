// SPDX-License-Identifier: GPL-3.0-or-later
// Members: an id and a level, and in their own table the words that can be erased.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kiosk/store/sqlite.h"
#include "scheduler/class_spec.h"

namespace floorwheel::store {

/// Adds a member (id, level, alias, exclusions and allowed exercises of the spec are kept).
void add_member(Database&, const MemberSpec&, std::int64_t civil_ms);
std::optional<MemberSpec> find_member(Database&, const std::string& id);
/// Whose alias this is, or "".
std::string member_shown_as(Database&, const std::string& alias);
/// Every member in order of alias, erased ones last; without exclusions.
std::vector<MemberSpec> all_members(Database&);

/// Whether the touch screen may show a member's own week; off until it is switched on.
bool page_shown(Database&, const std::string& member);
void keep_page_shown(Database&, const std::string& member, bool on, std::int64_t seq);

/// Empties every word about a member, and sentences about people in classes the member had a seat in.
/// Journal numbers, attendance and records stay; the member's page is not shown any more. Its own
/// transaction.
void erase_words_of(Database&, const std::string& member);

}  // namespace floorwheel::store
