// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/cli/floor_input.h"

#include <charconv>

#include "kiosk/cli/training_input.h"

namespace floorwheel::cli {
namespace {

using training::Weight;

struct Counted {
  Weight each;
  int count = 0;
};

/// "20x2", "45lbx2".
Counted counted_of(std::string_view option, const std::string& entry, int most) {
  const auto x = entry.rfind('x');
  int count = 0;
  const char* const end = entry.data() + entry.size();
  const char* const from = entry.data() + (x == std::string::npos ? entry.size() : x + 1);
  const auto [stop, error] = std::from_chars(from, end, count);
  if (error != std::errc() || stop != end || count < 1 || count > most)
    throw UsageError{std::string(option) + ": \"" + entry + "\" has no number of pieces",
                     "write mass x pieces as in 20x2, with 1 to " + std::to_string(most) + " pieces"};
  const Weight each = weight_of(option, std::string_view(entry).substr(0, x));
  if (each.mass == training::Mass{})
    throw UsageError{std::string(option) + ": \"" + entry + "\" weighs nothing",
                     "write its mass, such as 20x2"};
  return {each, count};
}

void only_with(const Args& args, std::string_view option, std::string_view other) {
  if (args.has(option) && !args.has(other))
    throw UsageError{std::string(option) + " without " + std::string(other), "give both"};
}

}  // namespace

std::optional<training::Barbell> barbell_of(const Args& args) {
  only_with(args, "--plates", "--bar");
  only_with(args, "--collars", "--bar");
  if (!args.has("--bar")) return std::nullopt;
  training::Barbell b;
  b.bar = weight_of("--bar", args.value("--bar"));
  if (b.bar.mass == training::Mass{}) throw UsageError{"--bar weighs nothing", "write its mass, such as 20"};
  b.collar = weight_of("--collars", args.value("--collars", "0"));
  for (const std::string& entry : entries_of(needed(args, "--plates", "20x2,10x2,5x2"))) {
    const Counted c = counted_of("--plates", entry, training::most_discs);
    b.discs.push_back({c.each, c.count});
  }
  if (b.discs.empty())
    throw UsageError{"--plates: a rack of no weights", "name the discs there are, such as 20x2,10x2"};
  if (b.discs.size() > training::most_kinds)
    throw UsageError{"--plates names " + std::to_string(b.discs.size()) + " kinds of discs",
                     "name at most " + std::to_string(training::most_kinds)};
  return b;
}

std::optional<std::vector<Weight>> floor_of(const Args& args) {
  const int kinds =
      (args.has("--loads") ? 1 : 0) + (args.has("--stack") ? 1 : 0) + (args.has("--bar") ? 1 : 0);
  if (kinds > 1) throw UsageError{"more than one of --loads, --stack and --bar", "give one of them"};
  only_with(args, "--add-ons", "--stack");
  if (args.has("--loads")) return loads_of("--loads", args.value("--loads"));
  if (args.has("--stack")) {
    const Counted c = counted_of("--stack", args.value("--stack"), 100);
    training::Stack s{c.each, c.count, {}};
    for (const std::string& entry : entries_of(args.value("--add-ons")))
      s.add_ons.push_back(weight_of("--add-ons", entry));
    if (s.add_ons.size() > training::most_add_ons)
      throw UsageError{"--add-ons names too many weights",
                       "name at most " + std::to_string(training::most_add_ons)};
    return training::loads_of(s);
  }
  const auto bar = barbell_of(args);
  if (!bar) return std::nullopt;
  auto loads = training::loads_of(*bar);
  if (!loads || loads->empty())
    throw UsageError{"--plates: these discs make too many different loads", "name fewer kinds of discs"};
  return loads;
}

}  // namespace floorwheel::cli
