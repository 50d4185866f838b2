// SPDX-License-Identifier: GPL-3.0-or-later
// The numbers of a TOML table: whole numbers, decimals as written, loads and ranges of slots.
#include <algorithm>

#include "kiosk/files/decimal.h"
#include "kiosk/files/toml_reader.h"

namespace floorwheel::files {
namespace {

std::string between(int low, int high) {
  return "a number from " + std::to_string(low) + " to " + std::to_string(high);
}

}  // namespace

int TomlTable::whole(const toml::node& n, std::string_view key, int low, int high) const {
  const auto* value = n.as_integer();
  const std::string what = std::string(key) + " of " + name_;
  if (!value) fail(n, what + " is no whole number", example(key));
  if (value->get() < low || value->get() > high)
    fail(n, what + " is " + std::to_string(value->get()), "write " + between(low, high));
  return static_cast<int>(value->get());
}

int TomlTable::whole(std::string_view key, int low, int high) const {
  return whole(need(key), key, low, high);
}

int TomlTable::whole(std::string_view key, int low, int high, int otherwise) const {
  return has(key) ? whole(key, low, high) : otherwise;
}

int TomlTable::decimal(const toml::node& n, std::string_view key, int places, int low, int high) const {
  const std::string what = std::string(key) + " of " + name_;
  if (!n.is_number()) fail(n, what + " is no number", example(key));
  const std::string written = document_.raw(n);
  std::int64_t unit = 1;
  for (int i = 0; i < places; ++i) unit *= 10;
  std::optional<std::int64_t> value;
  if (const auto* integer = n.as_integer()) {  // 0x10 as well
    if (integer->get() >= low && integer->get() <= high) value = integer->get() * unit;
  } else {
    value = scaled_decimal(written, places);
  }
  // -0.04 rounds to 0 and is below it all the same.
  const bool below_zero = low == 0 && written.starts_with('-') && n.value<double>().value_or(0) < 0;
  if (!value || below_zero || *value < low * unit || *value > high * unit)
    fail(n, what + " is " + written, "write " + between(low, high));
  return static_cast<int>(*value);
}

std::vector<int> TomlTable::loads(std::string_view key) const {
  std::vector<int> hg;
  if (!has(key)) return hg;
  for (const toml::node& n : list(key)) hg.push_back(decimal(n, key, 1, 0, most_load_kg));
  std::sort(hg.begin(), hg.end());
  hg.erase(std::unique(hg.begin(), hg.end()), hg.end());
  return hg;
}

SlotRange TomlTable::slot_range(const toml::node& n, std::string_view key) const {
  const auto* pair = n.as_array();
  const std::string what = std::string(key) + " of " + name_;
  if (!pair || pair->empty() || pair->size() > 2)
    fail(n, what + " is no range of slots", "write [first, last], or [first] for: to the end");
  SlotRange range;
  range.first = whole((*pair)[0], key, 1, most_slots);
  if (pair->size() == 2) range.last = whole((*pair)[1], key, 1, most_slots);
  if (range.last < range.first)
    fail(n, what + " ends before it begins",
         "write [" + std::to_string(range.last) + ", " + std::to_string(range.first) +
             "] if this was meant; the first slot stands first");
  return range;
}

std::array<int, 2> TomlTable::span(std::string_view key, int low, int high) const {
  const toml::array& pair = list(key);
  if (pair.size() != 2) wrong(key, "is no pair of numbers");
  const std::array<int, 2> ends{whole(pair[0], key, low, high), whole(pair[1], key, low, high)};
  if (ends[1] < ends[0]) wrong(key, "ends below its beginning");
  return ends;
}

}  // namespace floorwheel::files
