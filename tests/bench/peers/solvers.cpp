// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/peers/solvers.h"

#include <algorithm>
#include <fstream>
#include <sstream>

#include "tests/bench/peers/child.h"
#include "tests/bench/peers/cnf.h"
#include "tests/bench/peers/linear.h"

namespace floorwheel::peers {
namespace {

constexpr double grace_s = 5;         // to write the answer down after the limit that it was told
constexpr int memory_mib = 6 * 1024;  // of address space

void write(const std::string& file, const std::string& text) { std::ofstream(file) << text; }

std::string read(const std::string& file) {
  std::ostringstream out;
  out << std::ifstream(file).rdbuf();
  return out.str();
}

std::string whole(double seconds) { return std::to_string(std::max(1, static_cast<int>(seconds))); }

Asked timed(const Finished& run, Answer answer, double limit_s) {
  Asked out;
  out.answer = std::move(answer);
  out.wall_s = run.wall_s;
  out.cpu_s = run.cpu_s;
  out.first_s = run.marker_s;
  const double came = run.marker_s >= 0 ? run.marker_s : run.wall_s;
  out.in_time = out.answer.rotation && came <= limit_s + 1;
  return out;
}

Asked ask_clasp(const Floor& f, Goal goal, double limit_s, const std::string& folder) {
  const std::string file = folder + "/floor.opb";
  write(file, opb_text(goal == Goal::any ? rules_of(f) : cost_by_implications(f)));
  const Finished run = run_child({"clasp", "--quiet=1,0", "--time-limit=" + whole(limit_s), file},
                                 limit_s + grace_s, goal == Goal::any ? "s SATISFIABLE" : "\no ", memory_mib);
  return timed(run, read_pseudo_boolean(f, run.printed), limit_s);
}

Asked ask_cadical(const Floor& f, double limit_s, const std::string& folder) {
  const std::string file = folder + "/floor.cnf";
  write(file, cnf_text(clauses_of(f)));
  const Finished run = run_child({"cadical", "-q", "-t", whole(limit_s), file}, limit_s + grace_s,
                                 "s SATISFIABLE", memory_mib);
  return timed(run, read_dimacs(f, run.printed), limit_s);
}

Asked ask_gecode(const Floor& f, Goal goal, Search search, double limit_s, const std::string& folder) {
  const std::string model = folder + "/floor.mzn";
  const std::string flat = folder + "/floor.fzn";
  write(model, minizinc_text(f, goal, search));
  const Finished translation = run_child(
      {"minizinc", "-c", "--solver", "gecode", model, "-o", flat, "--ozn", folder + "/floor.ozn"}, limit_s);
  const double left = limit_s - translation.wall_s;
  Finished run;
  if (translation.code == 0 && left > 0) {
    std::vector<std::string> words{"fzn-gecode", "-time", std::to_string(static_cast<int>(left * 1000))};
    if (goal == Goal::cheapest) words.emplace_back("-a");  // each better one as it is found
    words.push_back(flat);
    run = run_child(words, left + grace_s, "----------", memory_mib);
  }
  run.wall_s += translation.wall_s;
  run.cpu_s += translation.cpu_s;
  if (run.marker_s >= 0) run.marker_s += translation.wall_s;
  return timed(run, read_flatzinc(f, run.printed), limit_s);
}

Asked ask_cbc(const Floor& f, Goal goal, double limit_s, const std::string& folder) {
  const std::string file = folder + "/floor.lp";
  const std::string solution = folder + "/floor.sol";
  write(file, lp_text(goal == Goal::any ? rules_of(f) : cost_by_flows(f)));
  write(solution, "");
  const Finished run =
      run_child({"cbc", file, "timeMode", "elapsed", "sec", whole(limit_s), "solve", "solution", solution},
                limit_s + grace_s, "Integer solution of", memory_mib);
  return timed(run, read_cbc(f, read(solution)), limit_s);
}

}  // namespace

std::vector<Peer> peers_for(Goal goal) {
  if (goal == Goal::any) return {Peer::clasp, Peer::cadical, Peer::gecode, Peer::cbc};
  return {Peer::clasp, Peer::gecode, Peer::gecode_lns, Peer::cbc};
}

const char* name_of(Peer p) {
  switch (p) {
    case Peer::clasp:
      return "clasp";
    case Peer::cadical:
      return "cadical";
    case Peer::gecode:
      return "gecode";
    case Peer::gecode_lns:
      return "gecode lns";
    case Peer::cbc:
      return "cbc";
  }
  return "";
}

bool is_installed(Peer p) {
  switch (p) {
    case Peer::clasp:
      return on_path("clasp");
    case Peer::cadical:
      return on_path("cadical");
    case Peer::gecode:
    case Peer::gecode_lns:
      return on_path("minizinc") && on_path("fzn-gecode");
    case Peer::cbc:
      return on_path("cbc");
  }
  return false;
}

Asked ask(Peer p, const Floor& f, Goal goal, double limit_s, const std::string& folder) {
  switch (p) {
    case Peer::clasp:
      return ask_clasp(f, goal, limit_s, folder);
    case Peer::cadical:
      return ask_cadical(f, limit_s, folder);
    case Peer::gecode:
      return ask_gecode(f, goal, Search::restarts, limit_s, folder);
    case Peer::gecode_lns:
      return ask_gecode(f, goal, Search::neighbourhoods, limit_s, folder);
    case Peer::cbc:
      return ask_cbc(f, goal, limit_s, folder);
  }
  return {};
}

}  // namespace floorwheel::peers
