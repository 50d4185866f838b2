// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/fields.h"

#include <algorithm>

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

void refuse(std::string code, std::string text, std::string hint, json::object body) {
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

int Fields::whole(std::string_view key, int least, int most) const {
  const json::value& v = at(key);
  if (!v.is_int64() || v.get_int64() < least || v.get_int64() > most)
    wrong_type(key, "a whole number from " + std::to_string(least) + " to " + std::to_string(most));
  return static_cast<int>(v.get_int64());
}

std::optional<int> Fields::maybe_whole(std::string_view key, int least, int most) const {
  return has(key) ? std::optional(whole(key, least, most)) : std::nullopt;
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
