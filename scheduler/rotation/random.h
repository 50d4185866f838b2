// SPDX-License-Identifier: GPL-3.0-or-later
// The planner's own generator: SplitMix64 (Steele, Lea, Flood 2014, from memory). The same seed gives the
// same numbers on every machine, which the standard distributions do not promise.
#pragma once

#include <bit>
#include <cstdint>

namespace floorwheel {

class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}

  std::uint64_t next() {
    std::uint64_t z = (state_ += 0x9e3779b97f4a7c15u);
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
    return z ^ (z >> 31);
  }

  /// 0 to n - 1; n >= 1. The bias of the modulus is below 2^-32 for the sizes in use here.
  int below(int n) { return static_cast<int>((next() >> 32) % static_cast<std::uint64_t>(n)); }

  /// Sixteenths of -log2 of a random number in (0, 1], without floating point: the integer part from the
  /// leading zeros, the fraction linear between two powers. For the acceptance rule of the search.
  int minus_log2_x16() {
    const std::uint64_t u = next() | 1u;
    const int zeros = std::countl_zero(u);
    const std::uint64_t mantissa = (u << zeros) >> 59 & 15u;  // four bits after the leading one
    return zeros * 16 + 15 - static_cast<int>(mantissa);
  }

 private:
  std::uint64_t state_;
};

}  // namespace floorwheel
