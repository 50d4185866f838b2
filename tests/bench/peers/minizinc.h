// SPDX-License-Identifier: GPL-3.0-or-later
// A regular floor as a MiniZinc model for constraint solvers: one number a member and slot, 0 for a slot not
// worked. Only single constraint files are included: Debian 12's MiniZinc 2.6 and Gecode 6.2 disagree on
// globals.mzn.
#pragma once

#include <string>

#include "tests/bench/peers/floor.h"

namespace floorwheel::peers {

enum class Goal { any, cheapest };
enum class Search { restarts, neighbourhoods };  // the latter keeps 85 % of the best so far

/// The data of the floor and then the model, which is the same for every floor.
std::string minizinc_text(const Floor&, Goal, Search = Search::restarts);

}  // namespace floorwheel::peers
