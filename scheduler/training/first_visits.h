// SPDX-License-Identifier: GPL-3.0-or-later
// The first four visits of a member, and what we suggest the instructor looks at on each: light and shown,
// then technique, then loads, then a talk. Our own words, common practice of the trade, no source. A
// suggestion: the instructor knows the person.
#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace floorwheel::training {

inline constexpr int first_visits = 4;

struct FirstVisit {
  int number = 1;                           // 1 to 4
  std::array<std::string_view, 3> look_at;  // a sentence each, the first is what the visit is for
};

/// `visits` are all check-ins so far; `here`: the last of them is the visit at hand, otherwise the visit is
/// the next one. Nothing from the fifth visit on.
std::optional<FirstVisit> first_visit(int visits, bool here);

}  // namespace floorwheel::training
