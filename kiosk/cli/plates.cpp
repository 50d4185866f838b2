// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel plates`: the nearest load there is, which discs to hang, and the fewest disc changes between
// users.
#include "kiosk/cli/command.h"
#include "kiosk/cli/floor_input.h"
#include "kiosk/cli/text.h"
#include "kiosk/cli/training_input.h"

namespace floorwheel::cli {
namespace {

using training::Barbell;
using training::Hung;
using training::Mass;
using training::Weight;

std::string kg_list(const std::vector<Weight>& discs) {
  std::string out = "[";
  for (const Weight& d : discs) out += (out.size() > 1 ? ", " : "") + decimal_kg(d.mass);
  return out + "]";
}

std::string discs_text(const std::vector<Weight>& discs) {
  if (discs.empty()) return "no discs";
  std::vector<std::string> words;
  for (const Weight& d : discs) words.push_back(text_of(d));
  return listed(words);
}

std::string or_null(const std::optional<Mass>& m) { return m ? decimal_kg(*m) : "null"; }

/// The answer; `per_side` is there for a bar alone.
int say(const Args& args, const Weight& target, Mass below, const std::optional<Mass>& above,
        const std::optional<std::vector<Weight>>& per_side) {
  const bool exact = below == target.mass;
  if (args.has("--json")) {
    print("{ \"load_kg\": " + decimal_kg(below) + ", \"per_side\": " +
          (per_side ? kg_list(*per_side) : "null") + ", \"exact\": " + (exact ? "true" : "false") +
          ", \"below_kg\": " + decimal_kg(below) + ", \"above_kg\": " + or_null(above) + " }\n");
    return exit_done;
  }
  std::string out =
      text_of(target) +
      (exact ? ": there it is" : ": there is no such load; " + shown(below) + " is the nearest below");
  if (!exact) out += above ? ", " + shown(*above) + " the nearest above" : ", and nothing above";
  out += "\n";
  if (per_side)
    out += shown(below) + ": " + discs_text(*per_side) + " on each side, the heaviest innermost\n";
  print(out);
  return exit_done;
}

int on_bar(const Args& args, const Barbell& bar, const Weight& target) {
  if (bar.empty() > target.mass)
    throw UsageError{
        "--target: bar and collars weigh " + shown(bar.empty()) + ", more than " + text_of(target),
        "take a lighter bar or a heavier target"};
  const auto near = training::nearest_hung(bar, target.mass);
  if (!near)
    throw UsageError{"--plates: these discs make too many different loads", "name fewer kinds of discs"};
  return say(args, target, near->below.load, near->above ? std::optional(near->above->load) : std::nullopt,
             near->below.per_side);
}

int in_rack(const Args& args, const std::vector<Weight>& loads, const Weight& target) {
  const auto near = training::nearest_load(loads, target.mass);
  if (!near.below)
    throw UsageError{
        "--target: the lightest load is " + text_of(loads.front()) + ", more than " + text_of(target),
        "take a heavier target"};
  return say(args, target, near.below->mass, near.above ? std::optional(near.above->mass) : std::nullopt, {});
}

int between_users(const Args& args, const Barbell& bar) {
  std::vector<Weight> wanted;
  for (const std::string& entry : entries_of(args.value("--users")))
    wanted.push_back(weight_of("--users", entry));
  if (wanted.empty())
    throw UsageError{"--users names no load", "write the loads in turn, such as 60,80,62.5"};
  std::vector<Mass> loads;
  for (const Weight& w : wanted) {
    if (bar.empty() > w.mass)
      throw UsageError{"--users: bar and collars weigh " + shown(bar.empty()) + ", more than " + text_of(w),
                       "take a lighter bar or a heavier load"};
    const auto near = training::nearest_hung(bar, w.mass);
    if (near && near->below.load != w.mass)
      throw UsageError{"--users: " + text_of(w) + " cannot be hung",
                       "the nearest are " + shown(near->below.load) +
                           (near->above ? " and " + shown(near->above->load) : std::string())};
    loads.push_back(w.mass);
  }
  const auto sequence = training::fewest_changes(bar, loads);
  if (!sequence)
    throw UsageError{"--plates: there are too many ways to hang these loads", "name fewer discs or users"};
  std::string json = "{ \"users\": [";
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    const Hung& h = sequence->users[i];
    json += (i > 0 ? ",\n  " : "\n  ") + std::string("{ \"load_kg\": ") + decimal_kg(h.load) +
            ", \"per_side\": " + kg_list(h.per_side) + " }";
    rows.push_back({text_of(wanted[i]), discs_text(h.per_side)});
  }
  json += " ],\n  \"disc_changes\": " + std::to_string(sequence->changes) + " }\n";
  print(args.has("--json") ? json
                           : columns(rows) + counted(sequence->changes, "disc", "discs") +
                                 " taken off or put on between users, the fewest there can be.\n");
  return exit_done;
}

int run(const Args& args) {
  const auto bar = barbell_of(args);
  if (args.has("--users")) {
    if (args.has("--target")) throw UsageError{"--users and --target at once", "give one of them"};
    if (!bar) throw UsageError{"--users without --bar", "give the bar, its collars and discs"};
    return between_users(args, *bar);
  }
  if (!bar && !args.has("--loads") && !args.has("--stack")) needed(args, "--bar", "20");
  const Weight target = weight_of("--target", needed(args, "--target", "61"));
  if (bar && !args.has("--loads") && !args.has("--stack")) return on_bar(args, *bar, target);
  return in_rack(args, *floor_of(args), target);
}

}  // namespace

Command plates_command() {
  return {
      {"plates",
       "Says which discs to hang for a load, or the nearest load a rack has.",
       {},
       {bar_option,
        collars_option,
        plates_option,
        loads_option,
        stack_option,
        add_ons_option,
        {"--target", "MASS", "the load wanted, such as 61 or 135lb"},
        {"--users", "LIST", "loads of consecutive users of the bar: the fewest disc changes between them"},
        {"--json", "", "machine-readable"}},
       {"floorwheel plates --bar 20 --collars 0 --plates 25x2,20x2,10x2,5x2,2.5x2,1.25x2 --target 61",
        "floorwheel plates --bar 20 --plates 20x4,10x2,5x4 --users 60,80,70",
        "floorwheel plates --stack 5x20 --add-ons 1.25,2.5 --target 33"}},
      run};
}

}  // namespace floorwheel::cli
