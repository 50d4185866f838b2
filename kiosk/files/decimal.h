// SPDX-License-Identifier: GPL-3.0-or-later
// Decimals as written, without a trip through binary floating point: 0.285 m is 29 cm, although the nearest
// double lies below 0.285. Rounding is to the nearest, halves up (towards plus infinity).
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace floorwheel::files {

/// The decimal `text` times 10^places, rounded. Understands what a TOML 1.0 integer or float may look like in
/// base ten: sign, digits with `_` between, point, exponent. Nothing for anything else (inf, nan, 0x10) or
/// beyond ±10^15.
std::optional<std::int64_t> scaled_decimal(std::string_view text, int places);

}  // namespace floorwheel::files
