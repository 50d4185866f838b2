// SPDX-License-Identifier: GPL-3.0-or-later
// Cutting planes (Gomory 1960, in the form of mixed-integer rounding; from memory): rows that every whole
// solution keeps and the present fractional one breaks. The table only proposes how to add up rows; the sum,
// its rounding and so the cut are made in whole numbers.
//
// Every column counts as whole here, the sums of lacking and moved things too: a plan has whole ones.
#pragma once

#include <vector>

#include "scheduler/training/week_simplex.h"

namespace floorwheel::training {

struct Cut {
  std::vector<std::pair<int, int>> terms;  // columns
  int low = 0;                             // terms add up to this at least
  double depth = 0;                        // how far the present solution is from it
};

/// The deepest cuts of the last solve, whose bounds were those of the program.
std::vector<Cut> deepest_cuts(const WholeProgram&, const BoundedSimplex&, std::size_t most);

/// Adds cuts in rounds as long as they raise the bound, then drops those that do not hold it. At most
/// `work_most` table entries; returns how many were recomputed.
std::int64_t tighten(WholeProgram&, std::int64_t work_most);

}  // namespace floorwheel::training
