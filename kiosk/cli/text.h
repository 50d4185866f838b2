// SPDX-License-Identifier: GPL-3.0-or-later
// Text for a terminal: columns that line up for every script, plain words for numbers and times.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace floorwheel::cli {

/// Columns a UTF-8 text takes on a terminal (East Asian wide characters two, combining ones none). Relies on
/// a UTF-8 LC_CTYPE, which `main` sets.
std::size_t width_of(std::string_view text);
std::string padded(std::string_view text, std::size_t width);

/// Rows of cells as columns two blanks apart, without blanks at the line ends.
std::string columns(const std::vector<std::vector<std::string>>& rows, std::string_view indent = {});

/// "1 slot", "3 slots".
std::string counted(std::int64_t n, std::string_view one, std::string_view many);
/// 754 -> "12:34"; 3754 -> "1:02:34".
std::string clock_text(int seconds);
/// 1250 with two places -> "12.50".
std::string decimal_text(std::int64_t scaled, int places);
/// "A, B and C".
std::string listed(const std::vector<std::string>& words);

/// Writes to standard output; throws std::runtime_error where it cannot be written (a full disk, a closed
/// pipe).
void print(std::string_view text);

}  // namespace floorwheel::cli
