// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel plan`: a rotation for a class file, or what each number of slots buys.
#include "kiosk/cli/certificate.h"
#include "kiosk/cli/class_input.h"
#include "kiosk/cli/command.h"
#include "kiosk/cli/planning.h"
#include "kiosk/files/nearest.h"

namespace floorwheel::cli {
namespace {

Style style_of(const std::string& text) {
  if (const auto style = style_from(text)) return *style;
  throw UsageError{"there is no style " + text, files::did_you_mean(text, {"ring", "free", "auto"})};
}

int plan_one(const Args& args, const Planning& planning, const ClassSpec& c, const std::string& file) {
  PlanOptions options = planning.options();
  Certificate certificate;
  options.certificate = &certificate;
  const OrRefusal<Plan> answer = plan(c, *c.slots, options);
  if (args.has("--certificate") && std::holds_alternative<Plan>(answer))
    write_certificate(args.value("--certificate"), c, certificate);
  return planning.finish(c, file, answer);
}

int run(const Args& args) {
  const Planning planning(args);
  const auto slots = args.whole("--slots", 1, 1000);
  const bool styled = args.has("--style");
  const Style style = styled ? style_of(args.value("--style")) : Style::automatic;

  const std::string file = *args.operand(0);
  ClassSpec c = class_of(file, args);
  if (slots) c.slots = static_cast<int>(*slots);
  if (styled) c.style = style;
  if (args.has("--certificate") && (!c.slots || args.has("--what-if")))
    throw UsageError{"--certificate without a number of slots",
                     "add --slots T: a certificate is of one rotation"};
  if (args.has("--what-if")) return planning.finish(c, file, what_if(c, planning.for_what_if()));
  if (c.slots) return plan_one(args, planning, c, file);
  PlanOptions options = planning.options();
  options.prove_chosen = true;
  return planning.finish(c, file, plan_slots(c, options));
}

}  // namespace

Command plan_command() {
  Usage usage{
      "plan",
      "Computes who is at which station in which slot, with its cost and proof.",
      {"CLASS"},
      planning_options(),
      {"floorwheel plan hall.class.toml", "floorwheel plan hall.class.toml --slots 12 --json > ring.json",
       "floorwheel plan hall.class.toml --what-if"}};
  usage.options.push_back({"--certificate", "FILE", "write what proves the bounds, for `floorwheel audit`"});
  usage.options.insert(usage.options.begin() + 1,
                       {{"--slots", "T", "so many slots; without it, what each number of slots buys"},
                        {"--style", "STYLE", "ring, free or auto; wins over the class file"},
                        {"--what-if", "", "what a place, a unit of equipment or a station less would buy"}});
  return {usage, run};
}

}  // namespace floorwheel::cli
