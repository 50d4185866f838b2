// SPDX-License-Identifier: GPL-3.0-or-later
// What a change of the floor would buy: one more place at a station, one more unit of an equipment, a station
// left out; and where more people than places are there at once, the ways out. Each row is a plan of its own
// for the changed class, with cost, proof and class time, comparable with the first row, the class as it is.
// With a number of slots in the class every row has it, else each row takes the one it would choose.
// Source: the rotation model, "Cost"; the ways out are common practice, no source.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "scheduler/rotation/change.h"
#include "scheduler/rotation/solve.h"

namespace floorwheel {

struct WhatIfOptions {
  PlanOptions plan = {};
  std::function<void(const Change&, int done, int all)> next = {};  // before each row
};

/// Refused where the class as it is cannot be planned.
OrRefusal<WhatIf> what_if(const ClassSpec&, const WhatIfOptions& = {});

/// The changes that what_if looks at, in order; the first is none.
std::vector<Change> changes_of(const ClassSpec&);

/// "one more place at A" as a clause without capital and full stop.
std::string in_words(const Change&);
/// What a row gains and loses against the class as it is, up to `idle`: "1 slot less, 2 idle slots fewer";
/// "nothing".
std::string what_it_buys(const WhatIfRow& as_it_is, const WhatIfRow&);

}  // namespace floorwheel
