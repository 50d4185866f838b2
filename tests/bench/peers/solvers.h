// SPDX-License-Identifier: GPL-3.0-or-later
// The general solvers that the planner is measured against, all of them Debian packages: each is given the
// floor in its own format, a limit of wall seconds and one thread, and its answer is read back.
#pragma once

#include <string>
#include <vector>

#include "tests/bench/peers/answers.h"
#include "tests/bench/peers/minizinc.h"

namespace floorwheel::peers {

enum class Peer {
  clasp,       // pseudo-Boolean, conflict-driven
  cadical,     // clauses; decides only
  gecode,      // constraints: dom/wdeg and Luby restarts
  gecode_lns,  // the same, keeping 85 % of the best so far; for the cheapest only
  cbc,         // integer programme
};
std::vector<Peer> peers_for(Goal);
const char* name_of(Peer);
bool is_installed(Peer);

struct Asked {
  Answer answer;
  bool in_time = false;  // the answer came within the limit
  double wall_s = 0;     // until it ended, translating into its own format included
  double cpu_s = 0;
  double first_s = -1;  // until its first answer, where it tells; else -1
};

/// Writes into `folder`, which must exist.
Asked ask(Peer, const Floor&, Goal, double limit_s, const std::string& folder);

}  // namespace floorwheel::peers
