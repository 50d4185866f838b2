// SPDX-License-Identifier: GPL-3.0-or-later
// Doses in words, for `dose` and `report dose` alike.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "scheduler/training/dose.h"

namespace floorwheel::cli {

/// "6", "1.5": sets as far as they are counted.
std::string sets_text(training::Centisets);
/// "10 to 15".
std::string_view words_of(training::DoseBand);

/// The heads of what stands beside a group's sets in a table for people, and its cells: the band and the two
/// published classifications.
inline const std::vector<std::string> judged_heads{"band", "Schoenfeld 2017", "Baz-Valle 2022"};
std::vector<std::string> judged(training::Centisets);
/// What stands under such a table: whose the classifications are, and the usual caution.
std::string dose_notes();

}  // namespace floorwheel::cli
