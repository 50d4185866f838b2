// SPDX-License-Identifier: GPL-3.0-or-later
// A UUID as 16 bytes: kept as a blob in the store, written as text on the wire. Source: RFC 4122.
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace floorwheel::store {

struct Uuid {
  std::array<std::uint8_t, 16> bytes{};
  friend auto operator<=>(const Uuid&, const Uuid&) = default;
};

/// A random one (version 4) from the system's random source.
Uuid make_uuid();
/// "8c2a…-…": 36 characters, hexadecimal of either case, with or without braces; else nothing.
std::optional<Uuid> uuid_from(std::string_view text);
std::string text_of(const Uuid&);

}  // namespace floorwheel::store
