// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/cli/message_body.h"

#include <boost/json.hpp>
#include <iostream>
#include <iterator>

#include "kiosk/cli/class_input.h"
#include "kiosk/files/text_file.h"

namespace floorwheel::cli {
namespace {

bool looks_like_json(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  return first != std::string_view::npos && text[first] == '{';
}

}  // namespace

std::string body_of(const Args& args, std::string_view fields) {
  const std::string given = args.operand(1).value_or("{}");
  std::string text = given;
  if (given == "-") {
    text.assign(std::istreambuf_iterator<char>(std::cin), {});
  } else if (given.starts_with('@')) {
    text = value_or_throw(files::read_text(given.substr(1), "file with the command's JSON, or a class file"));
    if (!looks_like_json(text) && fields.find("toml") != std::string_view::npos)
      return boost::json::serialize(boost::json::object{{"toml", text}});
  }
  boost::json::error_code error;
  const boost::json::value body = boost::json::parse(text, error);
  if (error)
    throw UsageError{"the body is no JSON (" + error.message() + ")",
                     "write an object, such as '{\"class\": \"...\"}'; fields: " + std::string(fields)};
  if (!body.is_object())
    throw UsageError{"the body is no JSON object", "write { } with the fields: " + std::string(fields)};
  return boost::json::serialize(body);
}

}  // namespace floorwheel::cli
