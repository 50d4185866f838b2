// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel report`: the desk's tables, through the hub, or with --data straight from the store; and of the
// class opened last its run sheet and the sets kept.
#include <boost/json.hpp>

#include "kiosk/cli/command.h"
#include "kiosk/cli/dose_text.h"
#include "kiosk/cli/hub_client.h"
#include "kiosk/cli/plan_text.h"
#include "kiosk/cli/text.h"
#include "kiosk/cli/training_input.h"
#include "kiosk/files/csv.h"
#include "kiosk/files/exercise_table.h"
#include "kiosk/files/nearest.h"
#include "kiosk/hub/training_page.h"
#include "kiosk/store/people.h"
#include "kiosk/store/reports.h"
#include "kiosk/store/store.h"

namespace floorwheel::cli {
namespace {

namespace json = boost::json;

struct Report {
  std::vector<std::string> header;
  std::vector<std::vector<std::string>> rows;
  std::string below;  // sentences for a person, under the table
};

/// The ISO week of --week, else the one of this machine's date.
training::IsoWeek week_of(const Args& args) {
  if (!args.has("--week")) return training::iso_week_of(local_today());
  const auto week = training::iso_week_from(args.value("--week"));
  if (!week)
    throw UsageError{"--week: \"" + args.value("--week") + "\" is no ISO week", "write it as in 2026-W10"};
  return *week;
}

/// The alias beside each member of the dose's rows, as the hub gives it.
json::array named(store::Database& db, json::array rows) {
  std::map<std::string, std::string> aliases;
  for (const MemberSpec& m : store::all_members(db)) aliases[m.id] = m.shown_as;
  for (json::value& row : rows) {
    const std::string member(row.at("member").as_string());
    const auto alias = aliases.find(member);
    row.as_object()["shown_as"] = alias == aliases.end() ? member : alias->second;
  }
  return rows;
}

/// The store's answer in the shape of the hub's, so that both print alike.
json::array rows_from_store(const std::string& name, const std::string& data, const Args& args) {
  const store::Days days{args.value("--from"), args.value("--to")};
  auto opened = store::Store::open_to_read(data);
  if (const auto* e = std::get_if<store::StoreError>(&opened))
    throw std::runtime_error(e->what + " " + e->right);
  store::Database& db = std::get<std::unique_ptr<store::Store>>(opened)->database();
  json::array rows;
  if (name == "dose") return named(db, hub::dose_rows(db, files::shipped_exercises(), week_of(args), ""));
  if (name == "attendance") {
    for (const store::AttendanceRow& r : store::attendance(db, days))
      rows.push_back({{"name", r.name}, {"date", r.date}, {"expected", r.expected}, {"here", r.here}});
  } else {
    for (const store::FrequencyRow& r : store::frequency(db, days))
      rows.push_back(
          {{"member", r.member}, {"shown_as", r.shown_as}, {"iso_week", r.iso_week}, {"visits", r.visits}});
  }
  return rows;
}

json::array rows_from_hub(const std::string& name, const Args& args) {
  json::object body;
  for (const char* end : {"from", "to", "week"})
    if (const std::string option = std::string("--") + end; args.has(option)) body[end] = args.value(option);
  HubClient hub(args.value("--hub", default_hub));
  const auto result = hub.ask(name, json::serialize(body));
  if (const auto* t = std::get_if<wire::Trouble>(&result)) throw UsageError{t->text, t->hint};
  return json::parse(std::get<wire::Answer>(result).body).at("rows").as_array();
}

json::array rows_of(const std::string& name, const Args& args) {
  if (!args.has("--data")) return rows_from_hub(name, args);
  if (args.has("--hub")) throw UsageError{"--hub and --data at once", "give one of them"};
  return rows_from_store(name, args.value("--data"), args);
}

std::string cell(const json::object& row, const char* key) {
  const json::value& v = row.at(key);
  return v.is_string() ? std::string(v.get_string()) : json::serialize(v);
}

/// The members of the answer's rows as columns; the class is named by its name.
Report table(const json::array& rows, std::vector<std::string> header, const std::vector<const char*>& keys) {
  Report report{std::move(header), {}, {}};
  for (const json::value& row : rows) {
    report.rows.emplace_back();
    for (const char* key : keys) report.rows.back().push_back(cell(row.as_object(), key));
  }
  return report;
}

Report attendance(const Args& args) {
  return table(rows_of("attendance", args), {"class", "date", "expected", "here"},
               {"name", "date", "expected", "here"});
}

/// By member for programs; a person reads the alias beside it.
Report frequency(const Args& args) {
  const json::array rows = rows_of("frequency", args);
  if (args.has("--csv"))
    return table(rows, {"member", "iso_week", "visits"}, {"member", "iso_week", "visits"});
  return table(rows, {"member", "shown as", "week", "visits"}, {"member", "shown_as", "iso_week", "visits"});
}

/// By member and group for programs; a person reads alias and published classifications beside them.
Report dose(const Args& args) {
  if (args.has("--week")) week_of(args);  // refused before anybody is asked
  const json::array rows = rows_of("dose", args);
  if (args.has("--csv")) {
    const std::vector<const char*> keys{"member", "week", "group", "sets", "assisting_sets", "days", "band"};
    return table(rows, {keys.begin(), keys.end()}, keys);
  }
  Report report = table(rows, {"member", "shown as", "week", "group", "sets", "assisting", "days"},
                        {"member", "shown_as", "week", "group", "sets", "assisting_sets", "days"});
  report.header.insert(report.header.end(), judged_heads.begin(), judged_heads.end());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto sets = 100 * rows[i].at("sets").to_number<training::Centisets>();
    for (std::string& cell : judged(sets)) report.rows[i].push_back(std::move(cell));
  }
  report.below = "\n" + dose_notes();
  return report;
}

wire::ClassView last_class(const Args& args) {
  if (args.has("--data"))
    throw UsageError{"this report is read through the hub", "leave --data out and start the hub"};
  HubClient hub(args.value("--hub", default_hub), 0);
  const HubClient::Told told = hub.hall();
  const auto found = told.hall.classes.find(told.last_opened);
  if (found == told.hall.classes.end())
    throw UsageError{"no class was opened yet", "open one on the instructor's screen"};
  return found->second;
}

std::string letter_of(const wire::ClassView& c, const std::string& station) {
  const wire::StationView* s = wire::find_station(c, station);
  return s ? s->letter : station;
}

std::string alias_of(const wire::ClassView& c, const std::string& member) {
  const wire::MemberView* m = wire::find_member(c, member);
  return m && !m->shown_as.empty() ? m->shown_as : member;
}

/// Cost and proof of the latest sheet, as the planner gave them when it was published.
std::string score_of(const wire::RunSheet& sheet) {
  Plan plan;
  plan.rotation.style = sheet.style;
  plan.cost = sheet.cost;
  plan.bound = sheet.bound;
  plan.proven = sheet.proven;
  plan.at_slot = sheet.at_slot;
  std::string out = "\nRun sheet " + std::to_string(sheet.version) + ", cost\n";
  out += cost_sentences(plan, std::nullopt);
  out += "\nProof (of the order of stations only)\n" + proof_sentences(plan);
  for (const std::string& reason : sheet.reasons) out += "  " + reason + "\n";
  return out;
}

Report run_sheet(const Args& args) {
  const wire::ClassView c = last_class(args);
  Report report{{"member", "shown as"}, {}, {}};
  for (int t = 1; t <= c.sheet.timing.slots; ++t) report.header.push_back(std::to_string(t));
  for (const RunSheetRow& row : c.sheet.rows) {
    report.rows.push_back({row.member, alias_of(c, row.member)});
    for (const std::string& station : row.stations)
      report.rows.back().push_back(station.empty() ? "–" : letter_of(c, station));
  }
  if (c.sheet.version > 0) report.below = score_of(c.sheet);
  return report;
}

Report sets(const Args& args) {
  const wire::ClassView c = last_class(args);
  Report report{
      {"member", "shown as", "slot", "station", "exercise", "done", "load_kg", "reps", "rir"}, {}, {}};
  for (const auto& [key, set] : c.records)
    report.rows.push_back(
        {set.member, alias_of(c, set.member), std::to_string(set.slot), letter_of(c, set.station),
         set.exercise, set.done ? "yes" : "no", set.load_hg ? decimal_text(*set.load_hg, 1) : "",
         set.done ? std::to_string(set.reps) : "", set.rir ? std::to_string(*set.rir) : ""});
  return report;
}

/// RFC 3339's full-date, as far as text comparison of days needs it.
void check_day(const Args& args, std::string_view option) {
  const std::string day = args.value(option);
  bool good = !args.has(option) || day.size() == 10;
  for (std::size_t i = 0; good && i < day.size(); ++i)
    good = i == 4 || i == 7 ? day[i] == '-' : day[i] >= '0' && day[i] <= '9';
  if (!good) throw UsageError{std::string(option) + " is \"" + day + "\"", "write a day such as 2026-03-01"};
}

struct Named {
  std::string name;
  Report (*make)(const Args&);
};
const std::vector<Named>& reports() {
  static const std::vector<Named> all{{"attendance", attendance},
                                      {"frequency", frequency},
                                      {"dose", dose},
                                      {"run-sheet", run_sheet},
                                      {"sets", sets}};
  return all;
}

int run(const Args& args) {
  check_day(args, "--from");
  check_day(args, "--to");
  const std::string name = *args.operand(0);
  if (name == "dose" && (args.has("--from") || args.has("--to")))
    throw UsageError{"a dose is of one ISO week", "write --week 2026-W10 in place of --from and --to"};
  if (name != "dose" && args.has("--week"))
    throw UsageError{"--week is for the report dose", "leave it out, or write --from and --to"};
  std::vector<std::string> names;
  for (const Named& r : reports()) {
    names.push_back(r.name);
    if (r.name != name) continue;
    const Report report = r.make(args);
    std::string out;
    if (args.has("--csv")) {
      out = files::csv_line(report.header);
      for (const auto& row : report.rows) out += files::csv_line(row);
    } else {
      std::vector<std::vector<std::string>> rows = report.rows;
      rows.insert(rows.begin(), report.header);
      out = columns(rows);
      if (report.rows.empty()) out += "(nothing yet)\n";
      out += report.below;
    }
    print(out);
    return exit_done;
  }
  throw UsageError{"there is no report " + name, files::did_you_mean(name, names)};
}

}  // namespace

Command report_command() {
  return {
      {"report",
       "Prints a table of the desk: attendance, frequency, dose, or the last class's run-sheet or sets.",
       {"NAME"},
       {{"--csv", "", "RFC 4180, for programs"},
        {"--from", "DAY", "attendance, frequency: from this day on, such as 2026-03-01"},
        {"--to", "DAY", "attendance, frequency: up to this day"},
        {"--week", "WEEK", "dose: of this ISO week, such as 2026-W10 (default: this one)"},
        hub_option,
        {"--data", "DIR", "attendance, frequency, dose: from a hub's data folder, without a hub"}},
       {"floorwheel report attendance", "floorwheel report frequency --from 2026-03-01 --csv > visits.csv",
        "floorwheel report dose --week 2026-W10"}},
      run};
}

}  // namespace floorwheel::cli
