// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/wire/message.h"

#include <boost/json.hpp>

#include "kiosk/wire/shapes.h"

namespace floorwheel::wire {
namespace json = boost::json;
namespace {

json::value embedded(const std::string& body) { return object_from(body.empty() ? "{}" : body); }

json::object to_object(const Hello& m) {
  return {{"type", "hello"}, {"role", id_of(m.role)}, {"screen", m.screen}, {"after", m.after}};
}
json::object to_object(const Tell& m) {
  return {{"type", "tell"}, {"id", m.id}, {"kind", m.kind}, {"body", embedded(m.body)}};
}
json::object to_object(const Ask& m) {
  return {{"type", "ask"}, {"id", m.id}, {"kind", m.kind}, {"body", embedded(m.body)}};
}
json::object to_object(const Probe& m) {
  return {{"type", "probe"}, {"sent_ms", m.sent_ms}, {"hub_boot_ms", m.hub_boot_ms}};
}
json::object to_object(const Cancel& m) { return {{"type", "cancel"}, {"id", m.id}}; }
json::object to_object(const Welcome& m) {
  return {{"type", "welcome"},
          {"hub", m.hub},
          {"journal", m.journal},
          {"hub_boot_ms", m.hub_boot_ms},
          {"civil_ms", m.civil_ms},
          {"speed", m.speed},
          {"utc_offset_s", m.utc_offset_s}};
}
json::object to_object(const Rows& m) {
  json::array rows;
  for (const Row& r : m.rows)
    rows.push_back({{"seq", r.seq},
                    {"at_ms", r.at_ms},
                    {"civil_ms", r.civil_ms},
                    {"kind", r.kind},
                    {"body", embedded(r.body)},
                    {"words", embedded(r.words)}});
  return {{"type", "rows"}, {"rows", rows}, {"reached", m.reached}};
}
json::object to_object(const Receipt& m) {
  return {{"type", "receipt"}, {"id", m.id}, {"seq", m.seq}, {"body", embedded(m.body)}};
}
json::object to_object(const Answer& m) {
  return {{"type", "answer"}, {"id", m.id}, {"body", embedded(m.body)}};
}
json::object to_object(const Underway& m) {
  return {{"type", "underway"}, {"id", m.id}, {"body", embedded(m.body)}};
}
json::object to_object(const Trouble& m) {
  return {{"type", "trouble"}, {"id", m.id},     {"code", m.code},
          {"text", m.text},    {"hint", m.hint}, {"body", embedded(m.body)}};
}

/// Reads the fields of one message and remembers the first that is missing or of another type.
class Reader {
 public:
  explicit Reader(const json::object& o) : object_(o) {}

  std::string text(std::string_view key) {
    const json::value* v = object_.if_contains(key);
    if (v && v->is_string()) return std::string(v->get_string());
    fail(key, "a text");
    return {};
  }
  std::int64_t whole(std::string_view key) {
    const json::value* v = object_.if_contains(key);
    if (v && v->is_int64()) return v->get_int64();
    fail(key, "a whole number");
    return 0;
  }
  double number(std::string_view key) {
    const json::value* v = object_.if_contains(key);
    if (v && v->is_double()) return v->get_double();
    if (v && v->is_int64()) return static_cast<double>(v->get_int64());
    fail(key, "a number");
    return 0;
  }
  /// A JSON object kept as text; left out means an empty one.
  std::string object(std::string_view key) {
    const json::value* v = object_.if_contains(key);
    if (!v) return "{}";
    if (v->is_object()) return json::serialize(*v);
    fail(key, "an object");
    return "{}";
  }
  void fail(std::string_view key, std::string_view wanted) {
    if (!wrong_.empty()) return;
    wrong_ = "The field '" + std::string(key) + "' is missing or is not what it should be.";
    right_ = "'" + std::string(key) + "' is " + std::string(wanted) + ".";
  }
  [[nodiscard]] bool ok() const { return wrong_.empty(); }
  [[nodiscard]] const std::string& wrong() const { return wrong_; }
  [[nodiscard]] const std::string& right() const { return right_; }

 private:
  const json::object& object_;
  std::string wrong_;
  std::string right_;
};

std::vector<Row> rows_from(const json::object& o, Reader& reader) {
  std::vector<Row> out;
  const json::value* rows = o.if_contains("rows");
  if (!rows || !rows->is_array()) {
    reader.fail("rows", "an array of rows");
    return out;
  }
  for (const json::value& v : rows->get_array()) {
    if (!v.is_object()) {
      reader.fail("rows", "an array of rows");
      return out;
    }
    Reader each(v.get_object());
    Row r{.seq = each.whole("seq"),
          .at_ms = each.whole("at_ms"),
          .civil_ms = each.whole("civil_ms"),
          .kind = each.text("kind"),
          .body = each.object("body"),
          .words = each.object("words")};
    if (!each.ok()) {
      reader.fail("rows", "an array of rows, each with seq, at_ms, civil_ms, kind, body and words");
      return out;
    }
    out.push_back(std::move(r));
  }
  return out;
}

constexpr std::string_view known_types =
    "hello, tell, ask, probe, cancel, welcome, rows, receipt, answer, underway or trouble";

std::optional<Message> read(std::string_view type, const json::object& o, Reader& r) {
  if (type == "hello") {
    Hello m;
    const auto role = role_from(r.text("role"));
    if (!role) r.fail("role", "wall, touch, instructor, desk or tool");
    m.role = role.value_or(Role::wall);
    m.screen = r.text("screen");
    m.after = r.whole("after");
    if (m.after < 0) r.fail("after", "a journal number, 0 or more");
    return m;
  }
  if (type == "tell") return Tell{.id = r.text("id"), .kind = r.text("kind"), .body = r.object("body")};
  if (type == "ask") return Ask{.id = r.text("id"), .kind = r.text("kind"), .body = r.object("body")};
  if (type == "probe") return Probe{.sent_ms = r.whole("sent_ms"), .hub_boot_ms = r.whole("hub_boot_ms")};
  if (type == "cancel") return Cancel{.id = r.text("id")};
  if (type == "welcome")
    return Welcome{.hub = r.text("hub"),
                   .journal = r.whole("journal"),
                   .hub_boot_ms = r.whole("hub_boot_ms"),
                   .civil_ms = r.whole("civil_ms"),
                   .speed = r.number("speed"),
                   .utc_offset_s = static_cast<int>(r.whole("utc_offset_s"))};
  if (type == "rows") return Rows{.rows = rows_from(o, r), .reached = r.whole("reached")};
  if (type == "receipt") return Receipt{.id = r.text("id"), .seq = r.whole("seq"), .body = r.object("body")};
  if (type == "answer") return Answer{.id = r.text("id"), .body = r.object("body")};
  if (type == "underway") return Underway{.id = r.text("id"), .body = r.object("body")};
  if (type == "trouble")
    return Trouble{.id = r.text("id"),
                   .code = r.text("code"),
                   .text = r.text("text"),
                   .hint = r.text("hint"),
                   .body = r.object("body")};
  return {};
}

Trouble bad(const json::object* o, std::string text, std::string hint) {
  Trouble t{.id = {}, .code = "bad_body", .text = std::move(text), .hint = std::move(hint), .body = "{}"};
  if (o) t.id = get_string(*o, "id");
  return t;
}

}  // namespace

std::string encode(const Message& message) {
  json::object o{{"v", protocol_version}};
  merge(o, std::visit([](const auto& m) { return to_object(m); }, message));
  return json::serialize(o);
}

std::variant<Message, Trouble> decode(std::string_view text) {
  if (text.size() > max_message_bytes)
    return bad(nullptr, "The message is longer than " + std::to_string(max_message_bytes) + " bytes.",
               "Send less at once.");
  json::parse_options options;
  options.max_depth = max_message_depth;
  json::error_code error;
  const json::value v = json::parse(text, error, {}, options);
  if (error == json::error::too_deep)
    return bad(nullptr, "The message is nested deeper than " + std::to_string(max_message_depth) + ".",
               "Send a flatter body.");
  if (error)
    return bad(nullptr, "The message is not JSON: " + error.message() + ".",
               "Send one JSON object in each text frame.");
  if (!v.is_object())
    return bad(nullptr, "The message is not a JSON object.", "Send one JSON object in each text frame.");
  const json::object& o = v.get_object();
  const std::string expected = std::to_string(protocol_version);
  const json::value* version = o.if_contains("v");
  if (!version || !version->is_int64() || version->get_int64() != protocol_version) {
    Trouble t = bad(&o,
                    version ? "The message says version " + json::serialize(*version) + "."
                            : "The message does not say its version.",
                    "This side understands version " + expected + ": \"v\": " + expected + ".");
    t.code = "version";
    t.body = json::serialize(
        json::object{{"expected", protocol_version}, {"found", version ? *version : json::value()}});
    return t;
  }
  Reader reader(o);
  const std::string type = reader.text("type");
  std::optional<Message> m = read(type, o, reader);
  if (!reader.ok()) return bad(&o, reader.wrong(), reader.right());
  if (!m) {
    Trouble t = bad(&o, "The message type '" + type + "' is not known.",
                    "Known are " + std::string(known_types) + ".");
    t.code = "unknown_kind";
    return t;
  }
  return *std::move(m);
}

}  // namespace floorwheel::wire
