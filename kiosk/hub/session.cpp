// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/session.h"

#include <spdlog/spdlog.h>

#include <boost/asio/redirect_error.hpp>
#include <boost/asio/use_awaitable.hpp>
#include <boost/beast/http.hpp>
#include <boost/beast/websocket.hpp>
#include <chrono>

namespace floorwheel::hub {
namespace asio = boost::asio;
namespace beast = boost::beast;
namespace http = beast::http;
namespace websocket = beast::websocket;
using wire::Trouble;
namespace {

constexpr std::size_t most_queued_bytes = std::size_t{8} << 20;
constexpr std::size_t longest_from_screen = std::size_t{1} << 20;
constexpr auto handshake_within = std::chrono::seconds(5);
constexpr auto silent_for = std::chrono::seconds(10);

/// A browser names the page it comes from; a screen does not. No page of the web may reach the hub.
bool from_a_web_page(const http::request<http::string_body>& r) {
  return r.find(http::field::origin) != r.end();
}

http::response<http::string_body> plain_answer(const http::request<http::string_body>& r, http::status status,
                                               const char* text) {
  http::response<http::string_body> answer{status, r.version()};
  answer.set(http::field::content_type, "text/plain; charset=utf-8");
  answer.keep_alive(false);
  answer.body() = text;
  answer.prepare_payload();
  return answer;
}

Trouble trouble(std::string id, std::string code, std::string text, std::string hint) {
  return {.id = std::move(id),
          .code = std::move(code),
          .text = std::move(text),
          .hint = std::move(hint),
          .body = "{}"};
}

}  // namespace

Session::Session(ScreenId id, asio::ip::tcp::socket socket, Ledger& ledger, const HubClock& clock,
                 Owner owner)
    : id_(id), socket_(std::move(socket)), ledger_(ledger), clock_(clock), owner_(std::move(owner)) {}

asio::awaitable<void> Session::run() {
  const auto self = shared_from_this();
  beast::error_code error;
  const auto token = [&error] { return asio::redirect_error(asio::use_awaitable, error); };
  auto& stream = beast::get_lowest_layer(socket_);
  stream.socket().set_option(asio::ip::tcp::no_delay(true), error);
  stream.expires_after(handshake_within);
  http::request<http::string_body> request;
  co_await http::async_read(stream, buffer_, request, token());
  if (!error && from_a_web_page(request)) {
    const auto answer =
        plain_answer(request, http::status::forbidden, "The hub takes no requests from web pages.\n");
    co_await http::async_write(stream, answer, token());
    owner_.gone(id_);
    co_return;
  }
  if (!error && !websocket::is_upgrade(request)) {
    const auto answer = plain_answer(request, http::status::upgrade_required,
                                     "This is a Floorwheel hub. Open it with floorwheel-screen.\n");
    co_await http::async_write(stream, answer, token());
    owner_.gone(id_);
    co_return;
  }
  if (!error) {
    stream.expires_never();
    websocket::stream_base::timeout timeout =
        websocket::stream_base::timeout::suggested(beast::role_type::server);
    timeout.idle_timeout = silent_for;
    timeout.keep_alive_pings = true;
    socket_.set_option(timeout);
    socket_.read_message_max(longest_from_screen);
    co_await socket_.async_accept(request, token());
  }
  open_ = !error;
  buffer_.clear();
  while (!error) {
    co_await socket_.async_read(buffer_, token());
    if (error) break;
    if (socket_.got_text()) {
      const auto data = buffer_.cdata();
      take({static_cast<const char*>(data.data()), data.size()});
    } else {
      const Trouble t =
          trouble("", "bad_body", "The hub reads text frames.", "Send one JSON object a frame.");
      send(std::make_shared<const std::string>(wire::encode(t)));
    }
    buffer_.clear();
  }
  open_ = false;
  queue_.clear();
  ledger_.forget(id_);
  owner_.gone(id_);
}

void Session::take(std::string_view text) {
  auto decoded = wire::decode(text);
  const auto reply = [this](const wire::Message& m) {
    send(std::make_shared<const std::string>(wire::encode(m)));
  };
  if (const auto* t = std::get_if<Trouble>(&decoded)) return reply(*t);
  auto& message = std::get<wire::Message>(decoded);
  if (const auto* hello = std::get_if<wire::Hello>(&message)) {
    role_ = hello->role;
    reached_ = hello->after;
    asked_ = true;
    return ledger_.welcome(id_, *role_, reached_);
  }
  if (auto* probe = std::get_if<wire::Probe>(&message)) {
    probe->hub_boot_ms = clock_.machine().boot_ms();
    return reply(*probe);
  }
  if (!role_)
    return reply(trouble("", "refused", "This screen has not said what it is.", "Send 'hello' first."));
  if (auto* tell = std::get_if<wire::Tell>(&message)) return ledger_.tell(id_, *role_, std::move(*tell));
  if (auto* ask = std::get_if<wire::Ask>(&message))
    return ledger_.ask(id_, *role_, std::move(*ask), owner_.screens());
  if (auto* cancel = std::get_if<wire::Cancel>(&message)) return ledger_.cancel(id_, std::move(cancel->id));
  reply(trouble("", "unknown_kind", "This message is the hub's to send.",
                "A screen sends hello, tell, ask, probe and cancel."));
}

void Session::send(std::shared_ptr<const std::string> text) {
  if (!open_) return;
  queued_bytes_ += text->size();
  if (queued_bytes_ > most_queued_bytes) {
    spdlog::warn("hub: a screen does not keep up and is cut off");
    return cut_off();
  }
  queue_.push_back(std::move(text));
  if (queue_.size() == 1) write_next();
}

void Session::send_rows(std::shared_ptr<const std::string> text, std::int64_t reached) {
  asked_ = false;
  reached_ = reached;
  send(std::move(text));
}

void Session::publish(const Published& p,
                      const std::function<std::shared_ptr<const std::string>(wire::Role)>& encoded) {
  if (!role_) return;
  if (reached_ + 1 == p.first && !asked_) {
    reached_ = p.last;
    send(encoded(*role_));
  } else {
    catch_up();
  }
}

void Session::catch_up() {
  if (!open_ || !role_ || asked_ || !queue_.empty() || reached_ >= owner_.journal()) return;
  asked_ = true;
  ledger_.more(id_, *role_, reached_);
}

void Session::write_next() {
  socket_.text(true);
  socket_.async_write(asio::buffer(*queue_.front()),
                      [self = shared_from_this()](beast::error_code error, std::size_t) {
                        if (error || self->queue_.empty()) return;  // the reader sees the end too
                        self->queued_bytes_ -= self->queue_.front()->size();
                        self->queue_.pop_front();
                        if (self->queue_.empty())
                          self->catch_up();
                        else
                          self->write_next();
                      });
}

void Session::cut_off() {
  open_ = false;
  beast::get_lowest_layer(socket_).close();
}

void Session::close() {
  if (!open_) {
    beast::get_lowest_layer(socket_).close();
    return;
  }
  open_ = false;
  socket_.async_close(websocket::close_code::going_away, [self = shared_from_this()](beast::error_code) {});
}

std::optional<ScreenFact> Session::fact() const {
  if (!role_) return {};
  return ScreenFact{.role = *role_, .reached = reached_};
}

}  // namespace floorwheel::hub
