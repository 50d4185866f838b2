// SPDX-License-Identifier: GPL-3.0-or-later
// What the training commands read: set records, masses, loads, ranges and days of options. What cannot be
// read is thrown as files::FileError or UsageError that names the option and the entry.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "kiosk/cli/args.h"
#include "kiosk/files/json_text.h"
#include "scheduler/class_spec.h"
#include "scheduler/training/set_record.h"

namespace floorwheel::cli {

std::vector<training::SetRecord> sets_of(const std::string& path, const ExerciseTable&);

/// The text of an option that must be given; `example` is what would be right.
std::string needed(const Args&, std::string_view option, std::string_view example);
/// The exercise of an option.
const Exercise& exercise_named(std::string_view option, const std::string& id, const ExerciseTable&);

/// `entry` is a part of the option's value, or all of it: "12.5", "45lb".
training::Weight weight_of(std::string_view option, std::string_view entry);
/// "4,6,8": ascending, equal ones once; none at all is an error.
std::vector<training::Weight> loads_of(std::string_view option, std::string_view list);
/// The parts of a list with commas; "" has none.
std::vector<std::string> entries_of(std::string_view list);
/// "6-10", from 1 to `most`.
std::array<int, 2> range_of(std::string_view option, const std::string& text, int most);

training::Day day_of(std::string_view option, const std::string& text);
/// The machine's local date.
training::Day local_today();

using files::in_quotes;
using files::in_quotes_or_null;

/// What stands under every advice.
inline constexpr std::string_view caution =
    "A suggestion, not medical advice: stop on pain, ask the instructor, follow the advice of a licensed "
    "professional.\n";

}  // namespace floorwheel::cli
