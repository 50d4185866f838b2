// SPDX-License-Identifier: GPL-3.0-or-later
// One JSON document read value by value; what is wrong is named by its JSON Pointer (RFC 6901). Errors are
// thrown as `JsonStop` and caught by the public functions of kiosk/files.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

#include <boost/json.hpp>

#include "kiosk/files/file_error.h"

namespace floorwheel::files {

struct JsonStop {
  FileError error;
};

/// Parses text; a text that is no JSON is thrown with line and column.
boost::json::value parse_json(std::string_view text, const std::string& file);

/// A value and the way to it. Cheap to copy; the document must outlive it.
class JsonNode {
 public:
  JsonNode(const boost::json::value& value, const std::string& file, std::string pointer = {})
      : value_(value), file_(file), pointer_(std::move(pointer)) {}

  [[noreturn]] void fail(const std::string& what, const std::string& right) const;
  [[nodiscard]] bool has(std::string_view key) const;
  [[nodiscard]] bool is_null() const { return value_.is_null(); }
  [[nodiscard]] JsonNode operator[](std::string_view key) const;  // must be there
  [[nodiscard]] JsonNode operator[](std::size_t i) const;
  /// Fails at a key that is none of these.
  void only(std::initializer_list<std::string_view> keys) const;
  [[nodiscard]] std::size_t size() const;  // of a list; anything else is a failure
  [[nodiscard]] std::string text() const;
  [[nodiscard]] std::int64_t whole(std::int64_t low, std::int64_t high) const;

 private:
  const boost::json::value& value_;
  const std::string& file_;
  std::string pointer_;
};

}  // namespace floorwheel::files
