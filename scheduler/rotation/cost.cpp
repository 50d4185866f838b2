// SPDX-License-Identifier: GPL-3.0-or-later
// The id of each component.
#include "scheduler/rotation/cost.h"

namespace floorwheel {

std::string_view id_of(Component c) {
  constexpr std::array<std::string_view, component_count> ids = {
      "missed", "uneven",         "back_to_back", "moved",    "short_rest",
      "idle",   "assist_overlap", "walk_cm",      "reload_hg"};
  return ids[static_cast<std::size_t>(c)];
}

}  // namespace floorwheel
