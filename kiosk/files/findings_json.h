// SPDX-License-Identifier: GPL-3.0-or-later
// What the programme check finds, as the JSON that command line and hub answer with:
// {"findings": [{rule, severity, day, exercise, group, line, found, wanted, source, mend}]}.
#pragma once

#include <string>
#include <vector>

#include "scheduler/training/check.h"

namespace floorwheel::files {

/// A finding a line; day, exercise and group are null where there is none in particular.
std::string findings_json(const std::vector<Finding>&);

}  // namespace floorwheel::files
