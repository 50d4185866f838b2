// SPDX-License-Identifier: GPL-3.0-or-later
// The known word nearest to one that is not known, for errors that say what would be right.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace floorwheel::files {

/// Fewest letters to insert, leave out, change or swap with a neighbour (restricted Damerau-Levenshtein
/// distance; Damerau 1964, Levenshtein 1966).
std::size_t distance(std::string_view a, std::string_view b);

/// The nearest of `known`, the first of equals; "" if there is none.
std::string nearest(std::string_view word, const std::vector<std::string>& known);

/// `did you mean X?` with the nearest; where nothing is known, `otherwise`.
std::string did_you_mean(std::string_view word, const std::vector<std::string>& known,
                         std::string_view otherwise = {});

}  // namespace floorwheel::files
