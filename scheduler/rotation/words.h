// SPDX-License-Identifier: GPL-3.0-or-later
// Counts and lists as a sentence says them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <string>
#include <vector>

namespace floorwheel {

/// "1 visit", "2 visits".
std::string counted(std::int64_t n, const std::string& one, const std::string& many);

/// "A", "A and B", "A, B and C"; of more than `longest` the first `kept` and how many more.
std::string listed(std::vector<std::string> words, std::size_t kept = 0,
                   std::size_t longest = std::numeric_limits<std::size_t>::max());

}  // namespace floorwheel
