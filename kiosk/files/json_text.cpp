// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/json_text.h"

#include <boost/json.hpp>

namespace floorwheel::files {

std::string in_quotes(std::string_view text) { return boost::json::serialize(boost::json::string(text)); }
std::string in_quotes_or_null(std::string_view text) { return text.empty() ? "null" : in_quotes(text); }
std::string_view truth(bool b) { return b ? "true" : "false"; }

}  // namespace floorwheel::files
