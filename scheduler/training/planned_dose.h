// SPDX-License-Identifier: GPL-3.0-or-later
// The dose that a programme plans for a week, in the rows that set records give: member empty, the week not
// a calendar's, `days` the days of the programme with primary work; two of one weekday are one day.
#pragma once

#include <vector>

#include "scheduler/training/check_programme.h"
#include "scheduler/training/dose.h"

namespace floorwheel::training {

/// Practice and warm-up sets are not counted. Every exercise is in the table.
std::vector<DoseRow> planned_dose(const Programme&, const ExerciseTable&, int assisting_percent = 0);

}  // namespace floorwheel::training
