// SPDX-License-Identifier: GPL-3.0-or-later
// A planned week as a person reads it: a block for each class, the doses to check by hand, the goals with
// their proof, and what a missed class costs.
#pragma once

#include <string>
#include <vector>

#include "scheduler/class_spec.h"
#include "scheduler/training/week.h"

namespace floorwheel::cli {

std::string week_text(const training::WeekSpec&, const ExerciseTable&, const training::WeekPlan&);
/// One sentence for each goal, with value, bound and proof.
std::vector<std::string> week_sentences(const training::WeekSpec&, const training::WeekPlan&);
std::string week_refusal_text(const training::WeekSpec&, const training::WeekRefusal&,
                              const std::string& file);

}  // namespace floorwheel::cli
