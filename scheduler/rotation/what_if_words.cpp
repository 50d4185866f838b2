// SPDX-License-Identifier: GPL-3.0-or-later
// A change and what it buys, as an instructor reads it.
#include <vector>

#include "scheduler/rotation/what_if.h"
#include "scheduler/rotation/words.h"

namespace floorwheel {

std::string in_words(const Change& change) {
  switch (change.kind) {
    case Change::Kind::as_it_is:
      return "as it is";
    case Change::Kind::one_more_place:
      return "one more place at " + change.id;
    case Change::Kind::one_more_unit:
      return "one more " + change.id;
    case Change::Kind::left_out:
      return "without " + change.id;
    case Change::Kind::more_slots:
      return "so many slots that all get everywhere";
    case Change::Kind::one_more_station:
      return "one more station: " + change.id;
    case Change::Kind::two_to_a_place:
      return "two to a place where there is equipment for two";
    case Change::Kind::two_waves:
      return "two waves, one after the other";
  }
  return {};
}

std::string what_it_buys(const WhatIfRow& as_it_is, const WhatIfRow& row) {
  std::vector<std::string> parts;
  const auto differs = [&](std::int64_t before, std::int64_t after, const char* one, const char* many) {
    if (after < before) parts.push_back(counted(before - after, one, many) + " fewer");
    if (after > before) parts.push_back(counted(after - before, one, many) + " more");
  };
  const auto component = [&](Component c, const char* one, const char* many) {
    differs(as_it_is.cost[c], row.cost[c], one, many);
  };
  component(Component::missed, "missed visit", "missed visits");
  component(Component::back_to_back, "back-to-back", "back-to-backs");
  differs(as_it_is.slots, row.slots, "slot", "slots");
  component(Component::short_rest, "short rest", "short rests");
  component(Component::idle, "idle slot", "idle slots");
  return parts.empty() ? "nothing" : listed(parts);
}

}  // namespace floorwheel
