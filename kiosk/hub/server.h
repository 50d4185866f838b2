// SPDX-License-Identifier: GPL-3.0-or-later
// The io thread: WebSocket connections of screens on one port of this machine. Each connection has a bounded
// outgoing queue; a screen that cannot keep up is cut off and comes back with its last number. Boost.Beast
// stays behind server.cpp and session.cpp.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "kiosk/hub/ledger.h"

namespace floorwheel::hub {

struct ListenError {
  std::string what;
  std::string right;
};

class Server : public Outgoing {
 public:
  explicit Server(const HubClock&);
  ~Server() override;
  /// "127.0.0.1:PORT"; any other address is refused.
  std::optional<ListenError> listen(const std::string& address_and_port);
  [[nodiscard]] unsigned short port() const;
  /// Serves on this thread until SIGINT or SIGTERM.
  void run(Ledger&);

  // From the ledger thread:
  void send(ScreenId, wire::Message) override;
  void publish(std::shared_ptr<const Published>) override;

 private:
  class Impl;
  std::unique_ptr<Impl> impl_;
};

}  // namespace floorwheel::hub
