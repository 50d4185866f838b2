// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/server.h"

#include <spdlog/spdlog.h>

#include <boost/asio/co_spawn.hpp>
#include <boost/asio/detached.hpp>
#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/post.hpp>
#include <boost/asio/redirect_error.hpp>
#include <boost/asio/signal_set.hpp>
#include <boost/asio/steady_timer.hpp>
#include <boost/asio/use_awaitable.hpp>
#include <charconv>
#include <csignal>
#include <map>

#include "kiosk/hub/session.h"

namespace floorwheel::hub {
namespace asio = boost::asio;
using asio::ip::tcp;
namespace {

constexpr std::size_t most_screens = 200;
constexpr auto leave_within = std::chrono::milliseconds(500);

using Text = std::shared_ptr<const std::string>;

}  // namespace

class Server::Impl {
 public:
  explicit Impl(const HubClock& clock) : clock_(clock) {}

  std::optional<ListenError> listen(const std::string& where) {
    const std::size_t colon = where.rfind(':');
    const std::string address = where.substr(0, colon);
    unsigned short port = 0;
    if (address != "127.0.0.1")
      return ListenError{"The hub listens on this machine alone, not on '" + address +
                             "': screens on other machines cannot be joined securely yet.",
                         "Use --listen 127.0.0.1:PORT."};
    const std::string text = colon == std::string::npos ? "" : where.substr(colon + 1);
    const auto [end, bad] = std::from_chars(text.data(), text.data() + text.size(), port);
    if (text.empty() || bad != std::errc() || end != text.data() + text.size())
      return ListenError{"'" + where + "' has no port.",
                         "Use --listen 127.0.0.1:PORT, with PORT from 0 to 65535."};
    boost::system::error_code error;
    const tcp::endpoint endpoint(asio::ip::address_v4::loopback(), port);
    acceptor_.open(endpoint.protocol(), error);
    if (!error) acceptor_.set_option(tcp::acceptor::reuse_address(true), error);
    if (!error) acceptor_.bind(endpoint, error);
    if (!error) acceptor_.listen(asio::socket_base::max_listen_connections, error);
    if (error == asio::error::address_in_use)
      return ListenError{"Port " + text + " of 127.0.0.1 is taken, perhaps by another hub.",
                         "Stop that program, or use --listen 127.0.0.1:0 for any free port."};
    if (error)
      return ListenError{"The hub cannot listen on " + where + ": " + error.message() + ".",
                         "Use --listen 127.0.0.1:0 for any free port."};
    port_ = acceptor_.local_endpoint().port();
    return {};
  }

  [[nodiscard]] unsigned short port() const { return port_; }

  void run(Ledger& ledger) {
    ledger_ = &ledger;
    signals_.async_wait([this](boost::system::error_code error, int) {
      if (!error) leave();
    });
    asio::co_spawn(io_, accept(), asio::detached);
    io_.run();
    sessions_.clear();
  }

  void send(ScreenId screen, const wire::Message& message) {
    std::optional<std::int64_t> reached;
    if (const auto* rows = std::get_if<wire::Rows>(&message)) reached = rows->reached;
    std::int64_t journal = 0;
    if (const auto* welcome = std::get_if<wire::Welcome>(&message)) journal = welcome->journal;
    asio::post(io_, [this, screen, journal, reached,
                     text = std::make_shared<const std::string>(wire::encode(message))] {
      journal_ = std::max(journal_, journal);
      const auto found = sessions_.find(screen);
      if (found == sessions_.end()) return;
      if (reached)
        found->second->send_rows(text, *reached);
      else
        found->second->send(text);
    });
  }

  void publish(std::shared_ptr<const Published> p) {
    asio::post(io_, [this, p = std::move(p)] {
      journal_ = std::max(journal_, p->last);
      std::map<wire::Role, Text> encoded;  // once for each role, not for each screen
      const auto for_role = [&](wire::Role role) {
        Text& text = encoded[role];
        if (!text) {
          const auto rows = p->rows.find(role);
          text = std::make_shared<const std::string>(wire::encode(wire::Rows{
              .rows = rows == p->rows.end() ? std::vector<wire::Row>() : rows->second, .reached = p->last}));
        }
        return text;
      };
      for (const auto& [id, session] : std::map(sessions_)) session->publish(*p, for_role);
    });
  }

 private:
  asio::awaitable<void> accept() {
    while (acceptor_.is_open()) {
      boost::system::error_code error;
      tcp::socket socket = co_await acceptor_.async_accept(asio::redirect_error(asio::use_awaitable, error));
      if (error == asio::error::operation_aborted) break;
      if (error) {
        spdlog::error("hub: taking a connection: {}", error.message());
        continue;
      }
      if (sessions_.size() >= most_screens) {
        spdlog::warn("hub: {} screens are connected; one more is turned away", sessions_.size());
        continue;
      }
      const ScreenId id = ++last_id_;
      auto session = std::make_shared<Session>(id, std::move(socket), *ledger_, clock_,
                                               Session::Owner{.gone = [this](ScreenId gone) { forget(gone); },
                                                              .screens = [this] { return screens(); },
                                                              .journal = [this] { return journal_; }});
      sessions_.emplace(id, session);
      asio::co_spawn(
          io_, [session] { return session->run(); }, asio::detached);
    }
  }

  std::vector<ScreenFact> screens() {
    std::vector<ScreenFact> out;
    for (const auto& [id, session] : sessions_)
      if (const auto fact = session->fact()) out.push_back(*fact);
    return out;
  }

  void forget(ScreenId id) {
    sessions_.erase(id);
    if (leaving_ && sessions_.empty()) grace_.cancel();
  }

  void leave() {
    leaving_ = true;
    boost::system::error_code ignored;
    acceptor_.close(ignored);
    if (sessions_.empty()) return;
    // Screens get a proper goodbye; one that does not answer is not waited for.
    grace_.expires_after(leave_within);
    grace_.async_wait([this](boost::system::error_code error) {
      if (!error) io_.stop();
    });
    for (const auto& [id, session] : std::map(sessions_)) session->close();
  }

  const HubClock& clock_;
  Ledger* ledger_ = nullptr;
  asio::io_context io_{1};
  tcp::acceptor acceptor_{io_};
  asio::signal_set signals_{io_, SIGINT, SIGTERM};
  asio::steady_timer grace_{io_};
  unsigned short port_ = 0;
  std::map<ScreenId, std::shared_ptr<Session>> sessions_;
  ScreenId last_id_ = 0;
  std::int64_t journal_ = 0;
  bool leaving_ = false;
};

Server::Server(const HubClock& clock) : impl_(std::make_unique<Impl>(clock)) {}
Server::~Server() = default;
std::optional<ListenError> Server::listen(const std::string& where) { return impl_->listen(where); }
unsigned short Server::port() const { return impl_->port(); }
void Server::run(Ledger& ledger) { impl_->run(ledger); }
void Server::send(ScreenId screen, wire::Message message) { impl_->send(screen, message); }
void Server::publish(std::shared_ptr<const Published> p) { impl_->publish(std::move(p)); }

}  // namespace floorwheel::hub
