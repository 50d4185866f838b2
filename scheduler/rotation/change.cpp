// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/change.h"

namespace floorwheel {

std::string_view id_of(Change::Kind kind) {
  switch (kind) {
    case Change::Kind::as_it_is:
      return "as-it-is";
    case Change::Kind::one_more_place:
      return "one-more-place";
    case Change::Kind::one_more_unit:
      return "one-more-unit";
    case Change::Kind::left_out:
      return "left-out";
    case Change::Kind::more_slots:
      return "more-slots";
    case Change::Kind::one_more_station:
      return "one-more-station";
    case Change::Kind::two_to_a_place:
      return "two-to-a-place";
    case Change::Kind::two_waves:
      return "two-waves";
  }
  return {};
}

}  // namespace floorwheel
