// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel exercises`: the exercise table that classes are read with.
#include <boost/json.hpp>

#include "kiosk/cli/class_input.h"
#include "kiosk/cli/command.h"
#include "kiosk/cli/text.h"

namespace floorwheel::cli {
namespace {

template <class E>
std::vector<std::string> ids_in(EnumSet<E> set, int count) {
  std::vector<std::string> ids;
  for (int i = 0; i < count; ++i)
    if (set.contains(static_cast<E>(i))) ids.emplace_back(id_of(static_cast<E>(i)));
  return ids;
}

std::string kg(int hg) { return hg % 10 == 0 ? std::to_string(hg / 10) : decimal_text(hg, 1); }

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : " ") + word;
  return out.empty() ? "-" : out;
}

std::vector<std::string> loads_of(const Exercise& e) {
  std::vector<std::string> loads;
  for (int hg : e.loads_hg) loads.push_back(kg(hg));
  return loads;
}

std::string table_text(const ExerciseTable& table) {
  std::vector<std::vector<std::string>> rows{
      {"id", "name", "primary", "assisting", "features", "kind", "loads kg", "substitutes"}};
  for (const auto& [id, e] : table)
    rows.push_back({id, e.name, joined(ids_in(e.primary, group_count)),
                    joined(ids_in(e.assisting, group_count)), joined(ids_in(e.features, feature_count)),
                    std::string(id_of(e.kind)), joined(loads_of(e)), joined(e.substitutes)});
  return columns(rows);
}

std::string quoted_list(const std::vector<std::string>& words) {
  std::string out = "[";
  for (const std::string& word : words)
    out += (out.size() > 1 ? ", " : "") + boost::json::serialize(boost::json::string(word));
  return out + "]";
}

std::string number_list(const std::vector<std::string>& numbers) {
  std::string out = "[";
  for (const std::string& n : numbers) out += (out.size() > 1 ? ", " : "") + n;
  return out + "]";
}

std::string table_json(const ExerciseTable& table) {
  std::string out = "{ \"exercises\": [";
  bool first = true;
  for (const auto& [id, e] : table) {
    out += first ? "\n  " : ",\n  ";
    first = false;
    out += "{ \"id\": \"" + id + "\", \"name\": " + boost::json::serialize(boost::json::string(e.name));
    out += ", \"primary\": " + quoted_list(ids_in(e.primary, group_count));
    out += ", \"assisting\": " + quoted_list(ids_in(e.assisting, group_count));
    out += ", \"features\": " + quoted_list(ids_in(e.features, feature_count));
    out += ", \"kind\": \"" + std::string(id_of(e.kind)) + "\", \"loads_kg\": " + number_list(loads_of(e));
    out += ", \"reps\": " + number_list({std::to_string(e.reps[0]), std::to_string(e.reps[1])});
    out += ", \"rir\": " + number_list({std::to_string(e.rir[0]), std::to_string(e.rir[1])});
    out += std::string(", \"hold\": ") + (e.hold ? "true" : "false");
    out += ", \"substitutes\": " + quoted_list(e.substitutes);
    out += ", \"equipment\": " + quoted_list(e.equipment);
    out += std::string(", \"per_side\": ") + (e.per_side ? "true" : "false");
    out += ", \"how\": " + boost::json::serialize(boost::json::string(e.how));
    out += ", \"caution\": " + boost::json::serialize(boost::json::string(e.caution)) + " }";
  }
  return out + " ] }\n";
}

int run(const Args& args) {
  const ExerciseTable table = exercises_of(args);
  print(args.has("--json") ? table_json(table) : table_text(table));
  return exit_done;
}

}  // namespace

Command exercises_command() {
  return {{"exercises",
           "Prints the exercise table: what each trains, needs and offers.",
           {},
           {{"--json", "", "machine-readable"}, exercises_option},
           {"floorwheel exercises", "floorwheel exercises --exercises ours.csv --json"}},
          run};
}

}  // namespace floorwheel::cli
