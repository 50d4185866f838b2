// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/cli/port.h"

#include <arpa/inet.h>
#include <netinet/in.h>
#include <sys/socket.h>
#include <unistd.h>

#include <cstdint>

namespace floorwheel::cli {

bool is_free(int port) {
  const int s = ::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
  if (s < 0) return false;
  const int yes = 1;  // as the hub does: a port just given up is free
  ::setsockopt(s, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
  sockaddr_in at{};
  at.sin_family = AF_INET;
  at.sin_port = htons(static_cast<std::uint16_t>(port));
  at.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  const bool free = ::bind(s, reinterpret_cast<const sockaddr*>(&at), sizeof at) == 0 && ::listen(s, 1) == 0;
  ::close(s);
  return free;
}

}  // namespace floorwheel::cli
