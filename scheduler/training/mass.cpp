// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/mass.h"

namespace floorwheel::training {
namespace {

/// n / 10^places, without trailing zeros.
std::string decimal(std::int64_t n, int places) {
  const std::string raw = std::to_string(n < 0 ? -n : n);
  const auto decimals = static_cast<std::size_t>(places);
  const std::string padded = std::string(raw.size() <= decimals ? decimals + 1 - raw.size() : 0, '0') + raw;
  std::string text = (n < 0 ? "-" : "") + padded.substr(0, padded.size() - decimals) + "." +
                     padded.substr(padded.size() - decimals);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

constexpr std::int64_t rounded(std::int64_t n, std::int64_t by) {
  return n < 0 ? -((-n + (by - 1) / 2) / by) : (n + by / 2) / by;
}

}  // namespace

std::string decimal_kg(Mass m) { return decimal(m.units, 11); }

std::string text_of(Weight w) {
  if (w.unit == MassUnit::lb) return decimal(rounded(w.mass.units, Mass::per_lb / 1000), 3) + " lb";
  return decimal_kg(w.mass) + " kg";
}

std::string shown(Mass m) { return decimal(rounded(m.units, Mass::per_kg / 100), 2) + " kg"; }

}  // namespace floorwheel::training
