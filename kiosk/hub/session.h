// SPDX-License-Identifier: GPL-3.0-or-later
// One screen's connection. It alone owns its socket and its outgoing queue: one write at a time. Lives on the
// io thread.
#pragma once

#include <boost/asio/awaitable.hpp>
#include <boost/beast/core/flat_buffer.hpp>
#include <boost/beast/core/tcp_stream.hpp>
#include <boost/beast/websocket/stream.hpp>
#include <deque>
#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "kiosk/hub/ledger.h"

namespace floorwheel::hub {

class Session : public std::enable_shared_from_this<Session> {
 public:
  struct Owner {
    std::function<void(ScreenId)> gone;
    std::function<std::vector<ScreenFact>()> screens;
    std::function<std::int64_t()> journal;  // the highest number published
  };
  Session(ScreenId, boost::asio::ip::tcp::socket, Ledger&, const HubClock&, Owner);

  /// Takes the connection from its first byte to its end.
  boost::asio::awaitable<void> run();
  /// Queues one text; what does not fit cuts the connection off.
  void send(std::shared_ptr<const std::string> text);
  /// Rows that catch up, as asked for.
  void send_rows(std::shared_ptr<const std::string> text, std::int64_t reached);
  /// Rows just committed: sent where this screen has all before them, else caught up later.
  void publish(const Published&,
               const std::function<std::shared_ptr<const std::string>(wire::Role)>& encoded);
  /// The hub ends.
  void close();

  [[nodiscard]] std::optional<ScreenFact> fact() const;

 private:
  void take(std::string_view text);
  void write_next();
  void catch_up();
  void cut_off();

  const ScreenId id_;
  boost::beast::websocket::stream<boost::beast::tcp_stream> socket_;
  boost::beast::flat_buffer buffer_;
  Ledger& ledger_;
  const HubClock& clock_;
  const Owner owner_;
  std::deque<std::shared_ptr<const std::string>> queue_;
  std::size_t queued_bytes_ = 0;
  bool open_ = false;  // the WebSocket stands
  std::optional<wire::Role> role_;
  std::int64_t reached_ = 0;
  bool asked_ = false;  // for rows, and they have not come yet
};

}  // namespace floorwheel::hub
