// SPDX-License-Identifier: GPL-3.0-or-later
// Masses, exact in kilograms and pounds alike. 1 lb = 0.45359237 kg exactly (international yard and pound
// agreement, 1959), which is 45 359 237 units of 10 µg. A disc of 2.5 lb is no whole number of those, so what
// is kept is the thousandth part of 10 µg: every 0.001 lb and every 10^-11 kg is whole.
#pragma once

#include <compare>
#include <cstdint>
#include <string>

namespace floorwheel::training {

struct Mass {
  std::int64_t units = 0;

  static constexpr std::int64_t per_kg = 100'000'000'000;
  static constexpr std::int64_t per_lb = 45'359'237'000;
  static constexpr Mass grams(std::int64_t g) { return {g * (per_kg / 1000)}; }
  static constexpr Mass kilograms(std::int64_t kg) { return {kg * per_kg}; }
  static constexpr Mass pounds(std::int64_t lb) { return {lb * per_lb}; }

  /// Rounded down.
  [[nodiscard]] constexpr std::int64_t whole_grams() const { return units / (per_kg / 1000); }

  friend constexpr auto operator<=>(Mass, Mass) = default;
  friend constexpr Mass operator+(Mass a, Mass b) { return {a.units + b.units}; }
  friend constexpr Mass operator-(Mass a, Mass b) { return {a.units - b.units}; }
  friend constexpr Mass operator*(std::int64_t n, Mass m) { return {n * m.units}; }
};

enum class MassUnit : std::uint8_t { kg, lb };

/// A mass as somebody typed it: it shows again in its unit.
struct Weight {
  Mass mass;
  MassUnit unit = MassUnit::kg;
  friend constexpr bool operator==(Weight, Weight) = default;
};

/// Heaviest load that anything here takes; more is a typing error.
inline constexpr Mass heaviest_load = Mass::kilograms(600);

/// Kilograms with all decimals and no trailing zeros: "20.41165665".
std::string decimal_kg(Mass);
/// In its unit with all decimals: "45 lb", "1.25 kg". Pounds that are no whole thousandths are rounded.
std::string text_of(Weight);
/// For people: kilograms rounded to 10 g, halves up: "20.41 kg".
std::string shown(Mass);

}  // namespace floorwheel::training
