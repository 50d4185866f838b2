// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/findings_json.h"

#include <boost/json.hpp>

namespace floorwheel::files {
namespace {

std::string quoted(std::string_view text) { return boost::json::serialize(boost::json::string(text)); }
std::string quoted_or_null(std::string_view text) { return text.empty() ? "null" : quoted(text); }

}  // namespace

std::string findings_json(const std::vector<Finding>& findings) {
  std::string out = "{ \"findings\": [";
  bool first = true;
  for (const Finding& f : findings) {
    out += first ? "\n  " : ",\n  ";
    first = false;
    out += "{ \"rule\": " + quoted(f.rule) + ", \"severity\": " + quoted(id_of(f.severity));
    out += ", \"day\": " + quoted_or_null(f.day) + ", \"exercise\": " + quoted_or_null(f.exercise);
    out += ", \"group\": " + quoted_or_null(f.group ? id_of(*f.group) : std::string_view());
    out += ", \"line\": " + std::to_string(f.line) + ", \"found\": " + quoted(f.found);
    out += ", \"wanted\": " + quoted(f.wanted) + ", \"source\": " + quoted(f.source);
    out += ", \"mend\": " + quoted(f.mend) + " }";
  }
  return out + (first ? "] }\n" : " ] }\n");
}

}  // namespace floorwheel::files
