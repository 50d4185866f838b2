// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/fields.h"

#include <algorithm>
#include <cmath>

#include "kiosk/files/nearest.h"

namespace floorwheel::hub {
namespace json = boost::json;
namespace {

struct Field {
  std::string name;
  bool needed = true;
};

/// "answer: fine|hurts, spot?" names the fields answer (needed) and spot (may be left out).
std::vector<Field> fields_of(std::string_view allowed) {
  std::vector<Field> out;
  while (!allowed.empty()) {
    const std::size_t comma = allowed.find(',');
    std::string_view one = allowed.substr(0, comma);
    allowed = comma == std::string_view::npos ? std::string_view() : allowed.substr(comma + 1);
    while (!one.empty() && one.front() == ' ') one.remove_prefix(1);
    const std::size_t end = std::min(one.find_first_of("?: "), one.size());
    if (end > 0)
      out.push_back({.name = std::string(one.substr(0, end)), .needed = one.substr(end, 1) != "?"});
  }
  return out;
}

[[noreturn]] void wrong_type(std::string_view key, const std::string& wanted) {
  refuse("bad_body", "The field '" + std::string(key) + "' is not what it should be.",
         "'" + std::string(key) + "' is " + wanted + ".");
}

}  // namespace

void refuse(std::string code, std::string text, std::string hint, const json::object& body) {
  throw Refused{wire::Trouble{.id = {},
                              .code = std::move(code),
                              .text = std::move(text),
                              .hint = std::move(hint),
                              .body = json::serialize(body)}};
}

Fields::Fields(const json::object& body, std::string_view allowed) : body_(body) {
  const std::vector<Field> fields = fields_of(allowed);
  std::vector<std::string> names;
  for (const Field& f : fields) names.push_back(f.name);
  const std::string all =
      allowed.empty() ? "It has no fields." : "Its fields are: " + std::string(allowed) + ".";
  for (const auto& [key, value] : body) {
    if (std::find(names.begin(), names.end(), key) != names.end()) continue;
    const std::string near = files::nearest(key, names);
    refuse("bad_body", "The field '" + std::string(key) + "' is not known here.",
           (near.empty() ? "" : "Did you mean '" + near + "'? ") + all);
  }
  for (const Field& f : fields)
    if (f.needed && !body.contains(f.name)) refuse("bad_body", "The field '" + f.name + "' is missing.", all);
}

bool Fields::has(std::string_view key) const {
  const json::value* v = body_.if_contains(key);
  return v && !v->is_null();
}

const json::value& Fields::at(std::string_view key) const {
  const json::value* v = body_.if_contains(key);
  if (!v) wrong_type(key, "needed");
  return *v;
}

std::string Fields::text(std::string_view key) const {
  const json::value& v = at(key);
  if (!v.is_string() || v.get_string().empty()) wrong_type(key, "a text that is not empty");
  return std::string(v.get_string());
}

std::string Fields::text_or(std::string_view key, std::string otherwise) const {
  return has(key) ? text(key) : std::move(otherwise);
}

std::optional<std::string> Fields::maybe_line(std::string_view key, int most) const {
  if (!has(key)) return std::nullopt;
  const json::value& v = at(key);
  const std::string wanted = "a text of one line with at most " + std::to_string(most) + " characters";
  if (!v.is_string()) wrong_type(key, wanted);
  std::string line(v.get_string());
  const auto is_control = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; };
  // A byte 10xxxxxx goes on with a character of UTF-8 (RFC 3629); JSON has been checked for the rest.
  const auto begins = [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; };
  if (std::ranges::any_of(line, is_control) || std::ranges::count_if(line, begins) > most)
    wrong_type(key, wanted);
  return line;
}

int Fields::whole(std::string_view key, int least, int most) const {
  const json::value& v = at(key);
  if (!v.is_int64() || v.get_int64() < least || v.get_int64() > most)
    wrong_type(key, "a whole number from " + std::to_string(least) + " to " + std::to_string(most));
  return static_cast<int>(v.get_int64());
}

std::optional<int> Fields::maybe_whole(std::string_view key, int least, int most) const {
  return has(key) ? std::optional(whole(key, least, most)) : std::nullopt;
}

int Fields::thousandths(std::string_view key, int most) const {
  const json::value& v = at(key);
  boost::system::error_code not_a_number;
  const auto n = v.to_number<double>(not_a_number);
  const bool inside = !not_a_number && n >= 0 && n <= most;
  const auto whole = inside ? std::llround(n * 1000) : 0;
  if (!inside || std::abs(n * 1000 - static_cast<double>(whole)) > 1e-6)
    wrong_type(key, "a number from 0 to " + std::to_string(most) + " with at most three decimals");
  return static_cast<int>(whole);
}

std::optional<std::array<int, 2>> Fields::maybe_range(std::string_view key, int least, int most) const {
  if (!has(key)) return std::nullopt;
  const json::value& v = at(key);
  const auto inside = [&](const json::value& n) {
    return n.is_int64() && n.get_int64() >= least && n.get_int64() <= most;
  };
  const bool good = v.is_array() && v.get_array().size() == 2 && inside(v.get_array()[0]) &&
                    inside(v.get_array()[1]) && v.get_array()[0].get_int64() <= v.get_array()[1].get_int64();
  if (!good)
    wrong_type(key, "two whole numbers such as [6, 10], from " + std::to_string(least) + " to " +
                        std::to_string(most));
  return std::array{static_cast<int>(v.get_array()[0].get_int64()),
                    static_cast<int>(v.get_array()[1].get_int64())};
}

bool Fields::flag(std::string_view key) const {
  const json::value& v = at(key);
  if (!v.is_bool()) wrong_type(key, "true or false");
  return v.get_bool();
}

std::vector<std::string> Fields::texts(std::string_view key) const {
  std::vector<std::string> out;
  if (!has(key)) return out;
  const json::value& v = at(key);
  if (!v.is_array()) wrong_type(key, "an array of texts");
  for (const json::value& each : v.get_array()) {
    if (!each.is_string() || each.get_string().empty()) wrong_type(key, "an array of texts");
    out.emplace_back(each.get_string());
  }
  return out;
}

store::Uuid Fields::uuid(std::string_view key) const {
  const auto id = store::uuid_from(text(key));
  if (!id) wrong_type(key, "a UUID of 36 characters");
  return *id;
}

const json::object& Fields::object(std::string_view key) const {
  const json::value& v = at(key);
  if (!v.is_object()) wrong_type(key, "an object");
  return v.get_object();
}

}  // namespace floorwheel::hub
