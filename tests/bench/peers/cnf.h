// SPDX-License-Identifier: GPL-3.0-or-later
// The decision part of a regular floor as clauses (DIMACS CNF): nothing missed, no back-to-back, rules kept.
#pragma once

#include <string>
#include <vector>

#include "tests/bench/peers/floor.h"

namespace floorwheel::peers {

struct Cnf {
  int variables = 0;
  std::vector<std::vector<int>> clauses;
};

/// The first variables are the choices. 'At most k' is the sequential counter of C. Sinz, Towards an Optimal
/// CNF Encoding of Boolean Cardinality Constraints, CP 2005, LNCS 3709: n·k further variables, and what
/// follows from the choices is found by unit propagation.
Cnf clauses_of(const Floor&);

std::string cnf_text(const Cnf&);

}  // namespace floorwheel::peers
