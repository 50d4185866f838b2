// SPDX-License-Identifier: GPL-3.0-or-later
// The messages between hub and screens: one JSON text frame each over a WebSocket. Every message carries
// "v": 1; another number is answered with an error that says which was expected. Encoding and decoding
// happen here only, so that the JSON library stays behind message.cpp.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "kiosk/wire/row.h"

namespace floorwheel::wire {

inline constexpr int protocol_version = 1;
inline constexpr std::size_t max_message_bytes = std::size_t{4} << 20;
inline constexpr std::size_t max_message_depth = 16;

// --- screen to hub
/// The first message of a connection: who, and the journal number reached (0: everything please).
struct Hello {
  Role role = Role::wall;
  std::string screen;  // UUID, made once per screen process
  std::int64_t after = 0;
};
/// One command. `id` is made once at the tap; a repeat with the same id gets the same receipt.
struct Tell {
  std::string id;  // UUID
  std::string kind;
  std::string body;  // JSON object
};
struct Ask {
  std::string id;
  std::string kind;
  std::string body;
};
/// Asks for the hub's clock; comes back with both readings.
struct Probe {
  std::int64_t sent_ms = 0;      // the screen's monotonic clock
  std::int64_t hub_boot_ms = 0;  // filled by the hub
};
/// Ends a question under way (a preview that is no longer wanted).
struct Cancel {
  std::string id;
};

// --- hub to screen
struct Welcome {
  std::string hub;               // UUID of this data folder
  std::int64_t journal = 0;      // the highest number there is
  std::int64_t hub_boot_ms = 0;  // boot-time clock now; class clock = boot clock * speed
  std::int64_t civil_ms = 0;     // Unix time now
  double speed = 1.0;
  int utc_offset_s = 0;  // of the hub's local time
};
/// Rows of this audience in order; `reached` counts the others in.
struct Rows {
  std::vector<Row> rows;
  std::int64_t reached = 0;
};
struct Receipt {
  std::string id;
  std::int64_t seq = 0;
  std::string body;  // JSON object: what the command made, {"class": "..."}
};
struct Answer {
  std::string id;
  std::string body;
};
/// A question under way: how far (best and bound as text in the body).
struct Underway {
  std::string id;
  std::string body;
};
/// `id` names the command or question it answers, or is empty.
struct Trouble {
  std::string id;
  std::string code;  // version | unknown_kind | bad_body | not_found | stale | refused | busy | store
  std::string text;  // what is wrong and where
  std::string hint;  // what would be right
  std::string body;  // JSON object: details, such as both versions or a refusal
};

using Message =
    std::variant<Hello, Tell, Ask, Probe, Cancel, Welcome, Rows, Receipt, Answer, Underway, Trouble>;

std::string encode(const Message&);
/// A message, or the Trouble to answer with.
std::variant<Message, Trouble> decode(std::string_view text);

}  // namespace floorwheel::wire
