// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel audit`: rules and cost of a rotation, recomputed from the files alone.
#include "scheduler/rotation/audit.h"

#include "kiosk/cli/certificate.h"
#include "kiosk/cli/class_input.h"
#include "kiosk/cli/command.h"
#include "kiosk/cli/text.h"

namespace floorwheel::cli {
namespace {

std::string audit_text(const Audit& a, const files::RotationFile& r, bool true_cost) {
  std::string text;
  if (a.holds()) {
    text += "The rotation keeps all rules.\n";
  } else {
    text += "The rotation does not hold: " + counted(std::ssize(a.breaches), "breach.", "breaches.") + "\n";
    for (const Breach& b : a.breaches)
      text += "  " + (b.rule == 0 ? std::string("header or history") : "rule " + std::to_string(b.rule)) +
              ": " + b.text + "\n";
  }
  std::vector<std::vector<std::string>> rows{{"cost", "recomputed", "stated"}};
  const bool repair = r.at_slot > 0 || a.moved_known;
  for (Component c : components) {
    if (c == Component::moved && !repair) continue;
    const bool counted_here = c != Component::moved || a.moved_known;
    const bool stated = c != Component::moved || r.has_moved;
    rows.push_back({std::string(id_of(c)), counted_here ? std::to_string(a.cost[c]) : "not known",
                    stated ? std::to_string(r.cost[c]) : "not stated"});
    if (counted_here && stated && a.cost[c] != r.cost[c]) rows.back().push_back("! differs");
  }
  text += "\n" + columns(rows) + "\n";
  return text + (true_cost ? "The cost stated is the true one.\n" : "The cost stated is not the true one.\n");
}

int run(const Args& args) {
  const std::string file = *args.operand(1);
  const ClassSpec c = class_of(*args.operand(0), args);
  const files::RotationFile r = rotation_file_of(file);
  const Rotation rotation = value_or_throw(files::rotation_for(c, r, file));
  if (args.has("--at-slot") && !args.has("--before"))
    throw UsageError{"--at-slot without --before", "add --before OLD, the rotation that was repaired"};
  int at_slot = r.at_slot > 0 ? r.at_slot : 1;
  if (const auto given = args.whole("--at-slot", 1, r.slots + 1)) at_slot = static_cast<int>(*given);

  std::optional<EarlierSheet> before;
  if (args.has("--before")) {
    const std::string old = args.value("--before");
    before = value_or_throw(files::earlier_sheet_for(c, rotation_file_of(old), old));
    if (!args.has("--at-slot") && r.at_slot == 0)
      throw UsageError{"--before without --at-slot", "add --at-slot K, the slot the repair began at"};
  }

  Audit a = audit(c, rotation, at_slot, before ? &*before : nullptr);
  std::vector<Breach> header = files::header_breaches(c, r);
  if (r.at_slot > 0 && r.at_slot != at_slot)
    header.push_back({0, "", "", 0,
                      "The rotation's at_slot is " + std::to_string(r.at_slot) + ", --at-slot says " +
                          std::to_string(at_slot) + "."});
  a.breaches.insert(a.breaches.begin(), header.begin(), header.end());
  const bool true_cost = files::states_true_cost(r, a);
  std::optional<CertificateAudit> certificate;
  if (args.has("--certificate")) {
    if (r.at_slot > 0)
      throw UsageError{"--certificate with a repair", "certificates are of plans, not of repairs"};
    certificate = audit_certificate(args.value("--certificate"), c, r, a.cost);
  }
  if (args.has("--json")) {
    std::string json = files::to_json(a, true_cost, r.at_slot > 0);
    if (certificate)
      json.replace(json.rfind(" }"), 2, ",\n  \"certificate\": " + json_of(*certificate) + " }");
    print(json);
  } else {
    print(audit_text(a, r, true_cost) + (certificate ? text_of(*certificate) : ""));
  }
  return a.holds() && true_cost && (!certificate || certificate->holds()) ? exit_done : exit_holds_not;
}

}  // namespace

Command audit_command() {
  return {
      {"audit",
       "Recomputes rules and cost of a rotation from the files alone.",
       {"CLASS", "ROTATION"},
       {{"--before", "OLD", "the rotation that was repaired: history is judged and `moved` counted"},
        {"--at-slot", "K", "with --before: the slot the repair began at (default: what the rotation says)"},
        {"--certificate", "FILE", "recompute also what proves the bounds, as plan wrote it"},
        {"--json", "", "machine-readable"},
        exercises_option},
       {"floorwheel audit hall.class.toml ring.json",
        "floorwheel audit changed.class.toml mended.json --before ring.json --at-slot 5 --json"}},
      run};
}

}  // namespace floorwheel::cli
