// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/wire/row.h"

#include <array>
#include <utility>

namespace floorwheel::wire {
namespace {

constexpr std::array<std::pair<Role, std::string_view>, 5> role_ids{{
    {Role::wall, "wall"},
    {Role::touch, "touch"},
    {Role::instructor, "instructor"},
    {Role::desk, "desk"},
    {Role::tool, "tool"},
}};

}  // namespace

std::string_view id_of(Role role) {
  for (const auto& [r, id] : role_ids)
    if (r == role) return id;
  return "";
}

std::optional<Role> role_from(std::string_view id) {
  for (const auto& [r, name] : role_ids)
    if (name == id) return r;
  return {};
}

}  // namespace floorwheel::wire
