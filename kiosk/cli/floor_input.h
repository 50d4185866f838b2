// SPDX-License-Identifier: GPL-3.0-or-later
// The loads a floor has, as options say them: a list, a machine's stack, or a bar with its discs.
#pragma once

#include <optional>
#include <vector>

#include "kiosk/cli/args.h"
#include "scheduler/training/barbell.h"
#include "scheduler/training/rack.h"

namespace floorwheel::cli {

inline constexpr Option loads_option{"--loads", "LIST",
                                     "the loads the floor has, such as 4,6,8 or 10lb,15lb; 0 is body weight"};
inline constexpr Option stack_option{"--stack", "PLATExN",
                                     "a machine's stack: N plates of one weight, such as 5x20"};
inline constexpr Option add_ons_option{"--add-ons", "LIST",
                                       "weights that may lie on the stack, such as 1.25,2.5"};
inline constexpr Option bar_option{"--bar", "MASS", "the bar, such as 20 or 45lb"};
inline constexpr Option collars_option{"--collars", "MASS", "one collar; two are on the bar (default 0)"};
inline constexpr Option plates_option{"--plates", "LIST",
                                      "discs there are: 20x2 is two of 20, one for each side"};

/// The bar of --bar, --collars and --plates; none where --bar is not given.
std::optional<training::Barbell> barbell_of(const Args&);
/// Loads of exactly one of --loads, --stack and --bar; none where none of them is given.
std::optional<std::vector<training::Weight>> floor_of(const Args&);

}  // namespace floorwheel::cli
