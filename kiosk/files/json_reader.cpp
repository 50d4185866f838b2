// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/json_reader.h"

#include <algorithm>
#include <vector>

#include "kiosk/files/nearest.h"

namespace floorwheel::files {
namespace {

/// RFC 6901, section 3: '~' is written ~0 and '/' ~1.
std::string pointer_token(std::string_view key) {
  std::string out = "/";
  for (char c : key) {
    if (c == '~')
      out += "~0";
    else if (c == '/')
      out += "~1";
    else
      out += c;
  }
  return out;
}

}  // namespace

boost::json::value parse_json(std::string_view text, const std::string& file) {
  boost::json::stream_parser parser;
  boost::json::error_code error;
  std::size_t read = parser.write_some(text.data(), text.size(), error);
  if (!error && read < text.size()) {
    const std::size_t more = text.find_first_not_of(" \t\r\n", read);
    if (more != std::string_view::npos) {
      read = more;
      error = boost::json::error::extra_data;
    }
  }
  if (!error) parser.finish(error);
  if (!error) return parser.release();

  const std::string_view before = text.substr(0, std::min(read, text.size()));
  const auto line = static_cast<int>(std::count(before.begin(), before.end(), '\n')) + 1;
  const std::size_t start = before.find_last_of('\n');
  const std::size_t from = start == std::string_view::npos ? 0 : start + 1;
  int column = 1;
  for (char c : before.substr(from))
    if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) ++column;
  throw JsonStop{{file, line, column, "", "this is no JSON: " + error.message(),
                  "give a rotation as `floorwheel plan CLASS --slots T --json` prints it"}};
}

void JsonNode::fail(const std::string& what, const std::string& right) const {
  throw JsonStop{{file_, 0, 0, pointer_, what, right}};
}

bool JsonNode::has(std::string_view key) const {
  const auto* object = value_.if_object();
  if (!object) fail("is no object", "write { }");
  return object->contains(key);
}

JsonNode JsonNode::operator[](std::string_view key) const {
  if (!has(key)) fail("has no " + std::string(key), "add \"" + std::string(key) + "\"");
  return {value_.get_object().at(key), file_, pointer_ + pointer_token(key)};
}

JsonNode JsonNode::operator[](std::size_t i) const {
  return {value_.as_array().at(i), file_, pointer_ + "/" + std::to_string(i)};
}

void JsonNode::only(std::initializer_list<std::string_view> keys) const {
  const auto* object = value_.if_object();
  if (!object) fail("is no object", "write { }");
  for (const auto& [key, value] : *object) {
    if (std::find(keys.begin(), keys.end(), key) != keys.end()) continue;
    const JsonNode wrong(value, file_, pointer_ + pointer_token(key));
    wrong.fail("there is no such key", did_you_mean(key, std::vector<std::string>(keys.begin(), keys.end())));
  }
}

std::size_t JsonNode::size() const {
  const auto* list = value_.if_array();
  if (!list) fail("is no list", "write [ ]");
  return list->size();
}

std::string JsonNode::text() const {
  const auto* string = value_.if_string();
  if (!string) fail("is no text", "write it in quotes");
  return std::string(*string);
}

std::int64_t JsonNode::whole(std::int64_t low, std::int64_t high) const {
  const auto* number = value_.if_int64();
  if (!number || *number < low || *number > high)
    fail("is " + boost::json::serialize(value_),
         "write a whole number from " + std::to_string(low) +
             (high == INT64_MAX ? " up" : " to " + std::to_string(high)));
  return *number;
}

}  // namespace floorwheel::files
