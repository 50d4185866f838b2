// SPDX-License-Identifier: GPL-3.0-or-later
// The body of a command or question: held against the fields its kind names, then read field by field. What
// is wrong is thrown as Refused, caught where commands and questions are called.
#pragma once

#include <array>
#include <boost/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kiosk/store/uuid.h"
#include "kiosk/wire/message.h"

namespace floorwheel::hub {

/// Why a command or question is not done; becomes the Trouble that is sent back.
struct Refused {
  wire::Trouble trouble;
};

[[noreturn]] void refuse(std::string code, std::string text, std::string hint,
                         const boost::json::object& body = {});

class Fields {
 public:
  /// `allowed` is the list of a kind ("class, saw, station, until_slot?"). Unknown fields and missing ones
  /// are refused here.
  Fields(const boost::json::object& body, std::string_view allowed);

  [[nodiscard]] bool has(std::string_view key) const;
  [[nodiscard]] std::string text(std::string_view key) const;  // not empty
  [[nodiscard]] std::string text_or(std::string_view key, std::string otherwise) const;
  /// A line of what somebody said: no control characters, at most so many characters (code points), may be
  /// empty. Nothing where left out.
  [[nodiscard]] std::optional<std::string> maybe_line(std::string_view key, int most) const;
  [[nodiscard]] int whole(std::string_view key, int least, int most) const;
  [[nodiscard]] std::optional<int> maybe_whole(std::string_view key, int least, int most) const;
  /// A number of at most three decimals from 0 to `most`, in thousandths: 12.5 kg is 12500 g.
  [[nodiscard]] int thousandths(std::string_view key, int most) const;
  /// [6, 10]: two whole numbers, the lower first.
  [[nodiscard]] std::optional<std::array<int, 2>> maybe_range(std::string_view key, int least,
                                                              int most) const;
  [[nodiscard]] bool flag(std::string_view key) const;
  [[nodiscard]] std::vector<std::string> texts(std::string_view key) const;  // empty where left out
  [[nodiscard]] store::Uuid uuid(std::string_view key) const;
  [[nodiscard]] const boost::json::object& object(std::string_view key) const;

 private:
  [[nodiscard]] const boost::json::value& at(std::string_view key) const;
  const boost::json::object& body_;
};

}  // namespace floorwheel::hub
