// SPDX-License-Identifier: GPL-3.0-or-later
// What a solver printed, read back: the last answer in it, or nothing where there is none. Nothing that a
// solver says about cost or rules is believed: the auditor judges the rotation.
#pragma once

#include <optional>
#include <string>

#include "tests/bench/peers/floor.h"

namespace floorwheel::peers {

struct Answer {
  std::optional<Rotation> rotation;
  bool optimal = false;     // the solver says that nothing is cheaper
  bool impossible = false;  // the solver says that there is none
};

Answer read_pseudo_boolean(const Floor&, const std::string& printed);  // lines "v x1 -x2", "s OPTIMUM FOUND"
Answer read_dimacs(const Floor&, const std::string& printed);          // lines "v 1 -2 0", "s SATISFIABLE"
Answer read_flatzinc(const Floor&, const std::string& printed);        // at = array2d(..., [...]);
Answer read_cbc(const Floor&, const std::string& solution_file);       // lines "number name value cost"

}  // namespace floorwheel::peers
