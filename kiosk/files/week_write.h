// SPDX-License-Identifier: GPL-3.0-or-later
// A planned week as JSON, and each of its classes as a class file.
#pragma once

#include <string>

#include "scheduler/class_spec.h"
#include "scheduler/training/week.h"

namespace floorwheel::files {

std::string to_json(const training::WeekSpec&, const ExerciseTable&, const training::WeekPlan&,
                    const std::vector<std::string>& reasons);
std::string to_json(const training::WeekRefusal&);

/// "hall-2-thursday.class.toml" for the second class of hall.week.toml.
std::string class_file_name(const std::string& week_file, const training::WeekSpec&, std::size_t index);
/// A class file of its own, ready to plan: one place a station, as many guests as stations, a ring in the
/// order planned, laid out in two rows.
std::string class_file_text(const training::WeekSpec&, const ExerciseTable&, const training::WeekPlan&,
                            std::size_t index);

}  // namespace floorwheel::files
