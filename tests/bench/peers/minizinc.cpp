// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/peers/minizinc.h"

#include <functional>

namespace floorwheel::peers {
namespace {

constexpr const char* rules = R"(
include "all_different.mzn";
include "global_cardinality.mzn";
include "global_cardinality_low_up.mzn";
array[1..members, 1..slots] of var 0..stations: at;

constraint forall (m in 1..members) (
  if slots = stations
  then all_different([at[m, t] | t in 1..slots]) /\ forall (t in 1..slots) (at[m, t] > 0)
  else global_cardinality([at[m, t] | t in 1..slots], [s | s in 0..stations],
                          [if s = 0 then slots - stations else 1 endif | s in 0..stations])
  endif);
constraint forall (t in 1..slots) (
  global_cardinality_low_up([at[m, t] | m in 1..members], [s | s in 1..stations],
                            [0 | s in 1..stations], [capacity | s in 1..stations]));
constraint forall (m in 1..members, t in 1..slots - 1) (fine[at[m, t], at[m, t + 1]] = 1);
)";

// last[m, t]: where m worked last, in slot t or before it. Everybody works as many slots as there are
// stations.
constexpr const char* cost = R"(
array[1..members, 1..slots] of var 0..stations: last;
constraint forall (m in 1..members) (last[m, 1] = at[m, 1]);
constraint forall (m in 1..members, t in 2..slots) (
  if slots = stations then last[m, t] = at[m, t]
  else last[m, t] = if at[m, t] = 0 then last[m, t - 1] else at[m, t] endif
  endif);
array[1..members] of var stations..slots: ends;
constraint forall (m in 1..members, t in stations + 1..slots) (at[m, t] > 0 -> ends[m] >= t);
var int: cost = idle_weight * sum (m in 1..members) (ends[m] - stations)
  + assist_weight * sum (m in 1..members, t in 1..slots - 1) (overlap[at[m, t], at[m, t + 1]])
  + sum (m in 1..members, t in 1..slots - 1) (walk[last[m, t], last[m, t + 1]]);
)";

std::string number(const char* name, std::int64_t value) {
  return "int: " + std::string(name) + " = " + std::to_string(value) + ";\n";
}

/// A matrix over stations with a leading row and column for 'not worked'.
std::string matrix(const char* name, const Floor& f, int where_not_worked,
                   const std::function<int(std::size_t, std::size_t)>& value) {
  const std::size_t n = f.walk.size();
  std::string out = "array[0..stations, 0..stations] of int: " + std::string(name) +
                    " = array2d(0..stations, 0..stations, [\n";
  for (std::size_t a = 0; a <= n; ++a) {
    for (std::size_t b = 0; b <= n; ++b)
      out += std::to_string(a == 0 || b == 0 ? where_not_worked : value(a - 1, b - 1)) + ",";
    out += "\n";
  }
  return out + "]);\n";
}

}  // namespace

std::string minizinc_text(const Floor& f, Goal goal, Search search) {
  std::string out = number("members", f.size.members) + number("stations", f.size.stations) +
                    number("slots", f.size.slots) + number("capacity", f.size.capacity);
  out += matrix("fine", f, 1, [&](auto a, auto b) { return f.clash[a][b] ? 0 : 1; });
  const bool lns = goal == Goal::cheapest && search == Search::neighbourhoods;
  const std::string picks = "[at[m, t] | t in 1..slots, m in 1..members]";
  std::string solve = "solve :: int_search(" + picks + ", dom_w_deg, indomain_random, complete)\n" +
                      "  :: restart_luby(250)\n";
  if (lns) solve += "  :: relax_and_reconstruct(" + picks + ", 85)\n";
  if (goal == Goal::cheapest) {
    const Weights w = weights_of(f);
    out += number("idle_weight", w.idle) + number("assist_weight", w.assist);
    out += matrix("overlap", f, 0, [&](auto a, auto b) { return f.assist[a][b] ? 1 : 0; });
    out += matrix("walk", f, 0, [&](auto a, auto b) { return f.walk[a][b]; });
    if (lns) out += "include \"gecode.mzn\";\n";
    return out + rules + cost + solve + "  minimize cost;\noutput [\"at = \", show(at), \";\\n\"];\n";
  }
  return out + rules + solve + "  satisfy;\noutput [\"at = \", show(at), \";\\n\"];\n";
}

}  // namespace floorwheel::peers
