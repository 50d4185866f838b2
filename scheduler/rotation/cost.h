// SPDX-License-Identifier: GPL-3.0-or-later
// The cost of a rotation: named components, compared in order, smaller first. One list gives their names
// and order to everything that prints or compares them. Source: the rotation model, "Cost" and "Repair".
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <string_view>

namespace floorwheel {

enum class Component : std::uint8_t {
  missed,
  uneven,
  back_to_back,
  moved,
  short_rest,
  idle,
  assist_overlap,
  walk_cm,
  reload_hg,
};
inline constexpr int component_count = 9;
inline constexpr std::array<Component, component_count> components = {
    Component::missed,         Component::uneven,     Component::back_to_back,
    Component::moved,          Component::short_rest, Component::idle,
    Component::assist_overlap, Component::walk_cm,    Component::reload_hg};

/// "missed", "back_to_back", ...: as files write it.
std::string_view id_of(Component);

/// `moved` counts in a repair only; elsewhere it stays 0 and is not printed.
struct Cost {
  std::array<std::int64_t, component_count> value{};
  std::int64_t& operator[](Component c) { return value[static_cast<std::size_t>(c)]; }
  std::int64_t operator[](Component c) const { return value[static_cast<std::size_t>(c)]; }
  friend auto operator<=>(const Cost&, const Cost&) = default;
};

}  // namespace floorwheel
