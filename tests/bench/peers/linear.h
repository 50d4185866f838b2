// SPDX-License-Identifier: GPL-3.0-or-later
// A regular floor as linear rows over choices of 0 or 1: what pseudo-Boolean and integer solvers read.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "tests/bench/peers/floor.h"

namespace floorwheel::peers {

struct Term {
  std::int64_t factor = 1;
  int variable = 1;  // from 1
};
struct LinearRow {
  enum class Sense { at_least, at_most, equal };
  std::vector<Term> terms;
  Sense sense = Sense::at_least;
  std::int64_t right = 0;
};
struct Linear {
  int variables = 0;
  int choices = 0;  // the first so many variables are the choices; the others follow from them
  std::vector<Term> objective;
  std::vector<LinearRow> rows;
};

/// Nothing missed, no back-to-back, rules kept: all that a first rotation has to be.
Linear rules_of(const Floor&);

/// With the cost to minimise, written so as suits solvers that learn from implications ...
Linear cost_by_implications(const Floor&);
/// ... or those that solve the relaxation: each member's day as a flow from slot to slot, a far better bound.
Linear cost_by_flows(const Floor&);

/// OPB: the input format of pseudo-Boolean competitions (Roussel and Manquinho, Input/Output Format and
/// Solver Requirements for the Competitions of Pseudo-Boolean Solvers, 2012): `>=` and `=` only.
std::string opb_text(const Linear&);

/// The LP format that CBC and most integer solvers read. The variables that follow from choices may be any
/// number from 0 to 1: where the choices are whole, they are.
std::string lp_text(const Linear&);

}  // namespace floorwheel::peers
