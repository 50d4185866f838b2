// SPDX-License-Identifier: GPL-3.0-or-later
// A ClassSpec as JSON text, in two parts: the class with ids and numbers, and for each member what may be
// erased (alias, exclusions, allowed exercises, planned loads). Reading takes back what writing gave.
#pragma once

#include <string>

#include "scheduler/class_spec.h"

namespace floorwheel::store {

/// The class without anything about a person but ids, levels, windows and required stations; no pairs.
std::string class_json(const ClassSpec&);
ClassSpec class_from(const std::string& json);

std::string limits_json(const MemberSpec&);
void read_limits(const std::string& json, MemberSpec&);

/// Alias, limits and loads of a member within one class.
std::string member_words_json(const MemberSpec&);
void read_member_words(const std::string& json, MemberSpec&);

}  // namespace floorwheel::store
