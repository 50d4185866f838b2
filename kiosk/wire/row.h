// SPDX-License-Identifier: GPL-3.0-or-later
// A journal row as a screen gets it: number, time, kind, and a body of ids and numbers with the words its
// audience may read. What may be erased (aliases, answers, reasons) lies in the words, never in the body.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "scheduler/vocabulary.h"

namespace floorwheel::wire {

/// Who a screen is. `tool` is the command line: it may see what the instructor sees.
enum class Role : std::uint8_t { wall, touch, instructor, desk, tool };
using Audience = EnumSet<Role>;
std::string_view id_of(Role);
std::optional<Role> role_from(std::string_view);

struct Row {
  std::int64_t seq = 0;
  std::int64_t at_ms = 0;     // class clock
  std::int64_t civil_ms = 0;  // Unix time
  std::string kind;
  std::string body;   // JSON object: ids and numbers
  std::string words;  // JSON object: what this audience may read of the words; "{}" if nothing
};

}  // namespace floorwheel::wire
