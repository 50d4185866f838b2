// SPDX-License-Identifier: GPL-3.0-or-later
// The muscle groups as people read them: config/muscle_groups.csv, compiled into the program. Columns:
// id,word,members,latin,source; members are anatomical names, by ';'.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "kiosk/files/file_error.h"
#include "scheduler/vocabulary.h"

namespace floorwheel::files {

struct MuscleGroup {
  std::string word;                  // "Front of thigh"
  std::vector<std::string> members;  // "quadriceps femoris"
};
using MuscleGroups = std::array<MuscleGroup, group_count>;  // by Group

/// Every group of the vocabulary exactly once, or an error.
OrFileError<MuscleGroups> parse_muscle_groups(std::string_view csv, const std::string& file);
const MuscleGroups& muscle_groups();
inline const std::string& word_of(Group g) { return muscle_groups()[static_cast<std::size_t>(g)].word; }

}  // namespace floorwheel::files
