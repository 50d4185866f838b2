// SPDX-License-Identifier: GPL-3.0-or-later
// Masses as people type them: "12.5", "12.5kg", "45lb". Exact, and kept with the unit.
#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "scheduler/training/mass.h"

namespace floorwheel::files {

/// Why a text is no mass, and what would be right.
struct NoMass {
  std::string what;
  std::string right;
};

/// 0 to 600 kg; no sign, exponent or decimal comma; kilograms with up to 11 decimals, pounds with up to 3.
std::variant<training::Weight, NoMass> typed_mass(std::string_view text);
/// Kilograms alone, as in a column `load_kg`.
std::variant<training::Weight, NoMass> typed_kg(std::string_view text);

}  // namespace floorwheel::files
