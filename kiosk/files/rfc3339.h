// SPDX-License-Identifier: GPL-3.0-or-later
// A moment as RFC 3339 writes it: local date and time with the offset from UTC.
#pragma once

#include <optional>
#include <string_view>

#include "scheduler/training/calendar.h"

namespace floorwheel::files {

struct Moment {
  training::Day day;            // the date written, whatever the offset
  std::int64_t instant_us = 0;  // Unix time; finer fractions are cut off
};

/// "2026-03-05T18:30:00+01:00"; a blank for the T, lower case t and z, and second 60 are understood too.
std::optional<Moment> moment_from(std::string_view text);

}  // namespace floorwheel::files
