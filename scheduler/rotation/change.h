// SPDX-License-Identifier: GPL-3.0-or-later
// A change of the floor and what planning the changed class gives: plain values, for the planner, files and
// text.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "scheduler/rotation/rotation.h"

namespace floorwheel {

struct Change {
  enum class Kind {
    as_it_is,
    one_more_place,    // id: station
    one_more_unit,     // id: equipment
    left_out,          // id: station; it drops out of every list
    more_slots,        // the fewest slots with which `missed` is as low as with any
    one_more_station,  // id: an exercise of the table that needs no equipment, in the middle of the floor
    two_to_a_place,    // twice the places where there is equipment for twice as many
    two_waves,         // half of the people after the other half; slots of both
  };
  Kind kind = Kind::as_it_is;
  std::string id;
};
std::string_view id_of(Change::Kind);  // "one-more-place", ...

struct WhatIfRow {
  Change change;
  int slots = 0;
  int class_s = 0;  // seconds of the whole class
  bool fits = true;
  Style style = Style::free;  // of the first wave
  int waits_least = 0;        // slots present and not worked, of who has the fewest of them
  int waits_most = 0;
  Cost cost;
  Cost bound;
  int proven = 0;
  std::optional<Refusal> refused;  // the changed class cannot hold: nothing else is filled in
};

struct WhatIf {
  int people = 0;  // present at once, at most
  int places = 0;  // of all stations
  std::vector<WhatIfRow> rows;
  int left = 0;  // changes that were not looked at because `stop` said so
};

}  // namespace floorwheel
