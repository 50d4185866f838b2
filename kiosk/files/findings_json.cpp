// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/findings_json.h"

#include "kiosk/files/json_text.h"

namespace floorwheel::files {

std::string findings_json(const std::vector<Finding>& findings) {
  std::string out = "{ \"findings\": [";
  bool first = true;
  for (const Finding& f : findings) {
    out += first ? "\n  " : ",\n  ";
    first = false;
    out += "{ \"rule\": " + in_quotes(f.rule) + ", \"severity\": " + in_quotes(id_of(f.severity));
    out += ", \"day\": " + in_quotes_or_null(f.day) + ", \"exercise\": " + in_quotes_or_null(f.exercise);
    out += ", \"group\": " + in_quotes_or_null(f.group ? id_of(*f.group) : std::string_view());
    out += ", \"line\": " + std::to_string(f.line) + ", \"found\": " + in_quotes(f.found);
    out += ", \"wanted\": " + in_quotes(f.wanted) + ", \"source\": " + in_quotes(f.source);
    out += ", \"mend\": " + in_quotes(f.mend) + " }";
  }
  return out + (first ? "] }\n" : " ] }\n");
}

}  // namespace floorwheel::files
