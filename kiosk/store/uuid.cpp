// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/store/uuid.h"

#include <sys/random.h>

#include <cerrno>
#include <system_error>

namespace floorwheel::store {
namespace {

constexpr std::string_view digits = "0123456789abcdef";

int digit_of(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

bool dash_before(std::size_t byte) { return byte == 4 || byte == 6 || byte == 8 || byte == 10; }

}  // namespace

Uuid make_uuid() {
  Uuid u;
  if (getrandom(u.bytes.data(), u.bytes.size(), 0) != static_cast<ssize_t>(u.bytes.size()))
    throw std::system_error(errno, std::generic_category(), "the system gives no random bytes");
  u.bytes[6] = static_cast<std::uint8_t>((u.bytes[6] & 0x0F) | 0x40);
  u.bytes[8] = static_cast<std::uint8_t>((u.bytes[8] & 0x3F) | 0x80);
  return u;
}

std::optional<Uuid> uuid_from(std::string_view text) {
  if (text.size() == 38 && text.front() == '{' && text.back() == '}') text = text.substr(1, 36);
  if (text.size() != 36) return {};
  Uuid u;
  std::size_t at = 0;
  for (std::size_t byte = 0; byte < 16; ++byte) {
    if (dash_before(byte) && text[at++] != '-') return {};
    const int high = digit_of(text[at++]);
    const int low = digit_of(text[at++]);
    if (high < 0 || low < 0) return {};
    u.bytes[byte] = static_cast<std::uint8_t>(high * 16 + low);
  }
  return u;
}

std::string text_of(const Uuid& u) {
  std::string out;
  for (std::size_t byte = 0; byte < 16; ++byte) {
    if (dash_before(byte)) out += '-';
    out += digits[u.bytes[byte] >> 4];
    out += digits[u.bytes[byte] & 0x0F];
  }
  return out;
}

}  // namespace floorwheel::store
