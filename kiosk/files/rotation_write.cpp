// SPDX-License-Identifier: GPL-3.0-or-later
// The writing half of the rotation format. The text is laid out by hand, one member a line, so that it can be
// read and compared; only strings go through the JSON library.
#include "kiosk/files/json_text.h"
#include "kiosk/files/rotation_file.h"

namespace floorwheel::files {
namespace {

std::string cost_json(const Cost& cost, bool with_moved, bool moved_known = true) {
  std::string out = "{ ";
  bool first = true;
  for (Component c : components) {
    if (c == Component::moved && !with_moved) continue;
    if (!first) out += ", ";
    first = false;
    out += in_quotes(id_of(c)) + ": ";
    out += c == Component::moved && !moved_known ? "null" : std::to_string(cost[c]);
  }
  return out + " }";
}

std::string proven_json(int proven, bool with_moved) {
  std::vector<std::string_view> names;
  for (Component c : components)
    if ((c != Component::moved || with_moved) && static_cast<int>(names.size()) < proven)
      names.push_back(id_of(c));
  return list(names, in_quotes);
}

std::string station_name(const ClassSpec& c, StationIndex s) {
  return s == nowhere ? "null" : in_quotes(c.stations[static_cast<std::size_t>(s)].id);
}

std::string member_rows(const ClassSpec& c, const Rotation& r, const std::string& indent) {
  std::string out = "[";
  for (std::size_t m = 0; m < r.at.size(); ++m) {
    out += m == 0 ? " " : ",\n" + indent;
    out += "{ \"id\": " + in_quotes(c.members[m].id) +
           ", \"stations\": " + list(r.at[m], [&](StationIndex s) { return station_name(c, s); }) + " }";
  }
  return out + " ]";
}

/// One rotation object whose further lines begin with `indent`.
std::string rotation_json(const ClassSpec& c, const Plan& plan, const std::string& indent,
                          std::optional<long> elapsed_ms) {
  const bool repair = plan.at_slot > 0;
  const Rotation& r = plan.rotation;
  const std::string line = ",\n" + indent;
  std::string out = R"({ "format": "floorwheel-rotation", "version": 1)" + line;
  out += "\"class\": " + in_quotes(c.name) + ", \"slots\": " + std::to_string(r.slots);
  out += ", \"work_s\": " + std::to_string(c.work_s) + ", \"change_s\": " + std::to_string(c.change_s);
  if (repair) out += ", \"at_slot\": " + std::to_string(plan.at_slot);
  out += line + "\"style\": " + in_quotes(id_of(r.style));
  if (r.style == Style::ring)
    out += ", \"ring\": " + list(r.ring, [&](StationIndex s) { return station_name(c, s); });
  out += line + "\"members\": " + member_rows(c, r, indent + std::string(13, ' '));
  out += line + "\"cost\":  " + cost_json(plan.cost, repair);
  out += line + "\"bound\": " + cost_json(plan.bound, repair);
  out += line + "\"proven\": " + proven_json(plan.proven, repair);
  out += line + "\"reasons\": " + list(plan.reasons, in_quotes, ",\n" + indent + std::string(12, ' '));
  out += line + "\"seed\": " + std::to_string(plan.seed);
  if (elapsed_ms) out += ", \"elapsed_ms\": " + std::to_string(*elapsed_ms);
  return out + " }";
}

std::string row_json(const SlotRow& row) {
  std::string out = "{ \"slots\": " + std::to_string(row.slots);
  out += ", \"class_s\": " + std::to_string(row.class_s) + ", \"fits\": ";
  out += truth(row.fits);
  out += ", \"style\": " + in_quotes(id_of(row.style)) + ",\n      ";
  out += "\"cost\":  " + cost_json(row.cost, false) + ",\n      ";
  out += "\"bound\": " + cost_json(row.bound, false) + ",\n      ";
  return out + "\"proven\": " + proven_json(row.proven, false) + " }";
}

std::string what_if_row_json(const WhatIfRow& row) {
  std::string out =
      "{ \"change\": " + in_quotes(id_of(row.change.kind)) + ", \"id\": " + in_quotes_or_null(row.change.id);
  if (row.refused)
    return out + ", \"refused\": { \"rule\": " + std::to_string(row.refused->rule) +
           ", \"reason\": " + in_quotes(row.refused->reason) + " } }";
  out += ", \"slots\": " + std::to_string(row.slots) + ", \"class_s\": " + std::to_string(row.class_s);
  out += ", \"fits\": ";
  out += truth(row.fits);
  out += ", \"style\": " + in_quotes(id_of(row.style));
  out += ", \"waits\": [" + std::to_string(row.waits_least) + ", " + std::to_string(row.waits_most) +
         "],\n      ";
  out += "\"cost\":  " + cost_json(row.cost, false) + ",\n      ";
  out += "\"bound\": " + cost_json(row.bound, false) + ",\n      ";
  return out + "\"proven\": " + proven_json(row.proven, false) + " }";
}

std::string breach_json(const Breach& b) {
  std::string out = "{ \"rule\": " + std::to_string(b.rule);
  out += ", \"member\": " + in_quotes_or_null(b.member) + ", \"station\": " + in_quotes_or_null(b.station);
  out += ", \"slot\": " + (b.slot == 0 ? std::string("null") : std::to_string(b.slot));
  return out + ", \"text\": " + in_quotes(b.text) + " }";
}

}  // namespace

std::string to_json(const ClassSpec& c, const Plan& plan, std::optional<long> elapsed_ms) {
  return rotation_json(c, plan, "  ", elapsed_ms) + "\n";
}

std::string to_json(const ClassSpec& c, const SlotTable& table, std::optional<long> elapsed_ms) {
  std::string out = "{ \"format\": \"floorwheel-slots\", \"version\": 1,\n  \"rows\": ";
  out += list(table.rows, row_json, ",\n    ");
  out += ",\n  \"chosen\": " + rotation_json(c, table.chosen, "    ", {});
  if (elapsed_ms) out += ",\n  \"elapsed_ms\": " + std::to_string(*elapsed_ms);
  return out + " }\n";
}

std::string to_json(const WhatIf& w, std::optional<long> elapsed_ms) {
  std::string out =
      R"({ "format": "floorwheel-what-if", "version": 1, "people": )" + std::to_string(w.people);
  out += ", \"places\": " + std::to_string(w.places) + ", \"left\": " + std::to_string(w.left);
  return out + ",\n  \"rows\": " + list(w.rows, what_if_row_json, ",\n    ") +
         (elapsed_ms ? ",\n  \"elapsed_ms\": " + std::to_string(*elapsed_ms) : std::string()) + " }\n";
}

std::string to_json(const Refusal& r) {
  const auto number = [](int n) { return std::to_string(n); };
  std::string out = R"({ "format": "floorwheel-refusal", "version": 1, "rule": )" + std::to_string(r.rule);
  out += ", \"members\": " + list(r.members, in_quotes) + ", \"stations\": " + list(r.stations, in_quotes);
  out += ", \"slots\": " + list(r.slots, number);
  return out + ",\n  \"reason\": " + in_quotes(r.reason) + " }\n";
}

std::string to_json(const Audit& a, bool true_cost, bool is_repair) {
  std::string out = "{ \"holds\": ";
  out += truth(a.holds());
  out += ", \"true_cost\": ";
  out += truth(true_cost);
  out += ",\n  \"cost\": " + cost_json(a.cost, is_repair || a.moved_known, a.moved_known);
  return out + ",\n  \"breaches\": " + list(a.breaches, breach_json, ",\n               ") + " }\n";
}

}  // namespace floorwheel::files
