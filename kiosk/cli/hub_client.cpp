// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/cli/hub_client.h"

#include <boost/asio/connect.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/beast/core.hpp>
#include <boost/beast/websocket.hpp>
#include <boost/json.hpp>
#include <chrono>
#include <optional>

#include "kiosk/store/uuid.h"

namespace floorwheel::cli {
namespace {

namespace asio = boost::asio;
namespace beast = boost::beast;
namespace websocket = beast::websocket;

struct Address {
  std::string host;
  std::string port;
};

Address address_of(std::string_view url) {
  const UsageError wrong{"\"" + std::string(url) + "\" is no address of a hub",
                         "write it as ws://127.0.0.1:7413"};
  constexpr std::string_view scheme = "ws://";
  if (!url.starts_with(scheme)) throw wrong;
  url.remove_prefix(scheme.size());
  if (url.ends_with('/')) url.remove_suffix(1);
  const std::size_t colon = url.rfind(':');
  const std::string host(url.substr(0, colon));
  const std::string port = colon == std::string_view::npos ? "7413" : std::string(url.substr(colon + 1));
  if (host.empty() || host.find('/') != std::string::npos || port.empty() || port.size() > 5 ||
      port.find_first_not_of("0123456789") != std::string::npos || std::stoi(port) > 65'535)
    throw wrong;
  return {host, port};
}

}  // namespace

struct HubClient::Connection {
  std::string url;
  asio::io_context io;
  websocket::stream<beast::tcp_stream> socket{io};
  beast::flat_buffer buffer;
  wire::Welcome welcome;

  /// Runs one asynchronous operation to its end: only those know the time limits of Beast. Its timers stay
  /// pending in between, so it is the operation that ends the loop.
  template <class Start>
  beast::error_code finish(Start start) {
    std::optional<beast::error_code> result;
    start([&result](beast::error_code error, auto&&...) { result = error; });
    io.restart();
    while (!result && io.run_one() > 0) {
    }
    return result.value_or(asio::error::operation_aborted);
  }

  [[noreturn]] void away(const beast::error_code& error) const {
    throw HubAway("no hub answers at " + url + " (" + error.message() +
                  "); start one with `floorwheel hub`, or give its address with --hub");
  }

  void open(const Address& at) {
    beast::error_code error;
    const auto found = asio::ip::tcp::resolver(io).resolve(at.host, at.port, error);
    if (error) away(error);
    auto& lowest = beast::get_lowest_layer(socket);
    lowest.expires_after(std::chrono::seconds(5));
    error = finish([&](auto done) { lowest.async_connect(found, done); });
    if (error) away(error);
    lowest.expires_never();
    // A hub that is there answers pings, however long it plans; one that hangs does not.
    websocket::stream_base::timeout limits{};
    limits.handshake_timeout = std::chrono::seconds(5);
    limits.idle_timeout = std::chrono::seconds(20);
    limits.keep_alive_pings = true;
    socket.set_option(limits);
    socket.read_message_max(std::size_t{64} << 20);
    error = finish([&](auto done) { socket.async_handshake(at.host + ":" + at.port, "/", done); });
    if (error) away(error);
    socket.text(true);
  }

  void send(const wire::Message& message) {
    const std::string text = wire::encode(message);
    const auto error = finish([&](auto done) { socket.async_write(asio::buffer(text), done); });
    if (error) away(error);
  }
};

HubClient::HubClient(const std::string& url, std::int64_t after) : connection_(new Connection) {
  connection_->url = url;
  connection_->open(address_of(url));
  connection_->send(
      wire::Hello{.role = wire::Role::tool, .screen = store::text_of(store::make_uuid()), .after = after});
  const wire::Message first = next();
  if (const auto* trouble = std::get_if<wire::Trouble>(&first))
    throw HubAway("the hub does not take this program: " + trouble->text + " " + trouble->hint);
  const auto* welcome = std::get_if<wire::Welcome>(&first);
  if (!welcome) throw HubAway("what answers at " + url + " is no hub; give the hub's address with --hub");
  connection_->welcome = *welcome;
}

HubClient::~HubClient() {
  auto& socket = connection_->socket;
  if (socket.is_open())
    static_cast<void>(
        connection_->finish([&](auto done) { socket.async_close(websocket::close_code::normal, done); }));
}

const wire::Welcome& HubClient::welcome() const { return connection_->welcome; }

wire::Message HubClient::next() {
  connection_->buffer.clear();
  const auto error =
      connection_->finish([&](auto done) { connection_->socket.async_read(connection_->buffer, done); });
  if (error) connection_->away(error);
  const auto data = connection_->buffer.cdata();
  auto decoded = wire::decode({static_cast<const char*>(data.data()), data.size()});
  if (const auto* trouble = std::get_if<wire::Trouble>(&decoded))
    throw HubAway("what answers at " + connection_->url + " is no hub of this version: " + trouble->text);
  return std::get<wire::Message>(std::move(decoded));
}

std::variant<wire::Receipt, wire::Trouble> HubClient::tell(const std::string& id, const std::string& kind,
                                                           const std::string& body) {
  connection_->send(wire::Tell{.id = id, .kind = kind, .body = body});
  for (;;) {
    wire::Message message = next();
    if (auto* receipt = std::get_if<wire::Receipt>(&message); receipt && receipt->id == id)
      return std::move(*receipt);
    if (auto* trouble = std::get_if<wire::Trouble>(&message);
        trouble && (trouble->id == id || trouble->id.empty()))
      return std::move(*trouble);
  }
}

std::variant<wire::Answer, wire::Trouble> HubClient::ask(const std::string& kind, const std::string& body) {
  const std::string id = store::text_of(store::make_uuid());
  connection_->send(wire::Ask{.id = id, .kind = kind, .body = body});
  for (;;) {
    wire::Message message = next();
    if (auto* answer = std::get_if<wire::Answer>(&message); answer && answer->id == id)
      return std::move(*answer);
    if (auto* trouble = std::get_if<wire::Trouble>(&message);
        trouble && (trouble->id == id || trouble->id.empty()))
      return std::move(*trouble);
  }
}

HubClient::Told HubClient::hall() {
  Told told;
  while (told.hall.reached < connection_->welcome.journal) {
    const wire::Message message = next();
    const auto* rows = std::get_if<wire::Rows>(&message);
    if (!rows) continue;
    for (const wire::Row& row : rows->rows) {
      wire::fold(told.hall, row);
      if (row.kind == "class.open" && !told.hall.current.empty()) told.last_opened = told.hall.current;
    }
    told.hall.reached = std::max(told.hall.reached, rows->reached);
  }
  return told;
}

}  // namespace floorwheel::cli
