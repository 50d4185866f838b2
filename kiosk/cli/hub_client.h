// SPDX-License-Identifier: GPL-3.0-or-later
// A short visit to the hub: one connection, one command or question, or the hall as the journal tells it.
// Beast and Asio stay behind hub_client.cpp.
#pragma once

#include <memory>
#include <stdexcept>
#include <string>
#include <variant>

#include "kiosk/cli/args.h"
#include "kiosk/wire/hall.h"
#include "kiosk/wire/message.h"

namespace floorwheel::cli {

inline constexpr std::string_view default_hub = "ws://127.0.0.1:7413";
inline constexpr Option hub_option{"--hub", "URL", "the hub's address (default ws://127.0.0.1:7413)"};

/// No hub answers, or it went away in the middle: what, and what to do. Exit code 2.
struct HubAway : std::runtime_error {
  using std::runtime_error::runtime_error;
};

class HubClient {
 public:
  /// Connects and says hello. `after` is the journal number whose later rows are wanted.
  /// Throws UsageError where `url` is none, HubAway where no hub answers.
  static constexpr std::int64_t no_rows = 1'000'000'000'000'000;
  explicit HubClient(const std::string& url, std::int64_t after = no_rows);
  ~HubClient();
  HubClient(const HubClient&) = delete;
  HubClient& operator=(const HubClient&) = delete;

  [[nodiscard]] const wire::Welcome& welcome() const;
  std::variant<wire::Receipt, wire::Trouble> tell(const std::string& id, const std::string& kind,
                                                  const std::string& body);
  std::variant<wire::Answer, wire::Trouble> ask(const std::string& kind, const std::string& body);

  struct Told {
    wire::Hall hall;
    std::string last_opened;  // the class opened last, ended or not; "" if none
  };
  /// Everything the journal tells up to now; of a client made with `after` 0.
  Told hall();

 private:
  struct Connection;
  wire::Message next();
  std::unique_ptr<Connection> connection_;
};

}  // namespace floorwheel::cli
