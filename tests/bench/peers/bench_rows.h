// SPDX-License-Identifier: GPL-3.0-or-later
// The rows that bench_peers prints. Each returns whether its limits were kept; what is called a limit is so
// in seconds of processor time, and wall seconds stand beside it.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "tests/bench/peers/floor.h"

namespace floorwheel::peers {

struct Settings {
  std::uint64_t seed = 1;
  double limit_s = 60;  // wall seconds that a peer gets
  int share = 100;      // the rows of many cases do so many of a hundred: 1 to 100
  std::string only;     // this peer alone; empty: all that are installed
  std::string self;     // this program, to be run for one floor alone
  std::string folder;   // for the files of the peers
};

bool first_rotations(const Settings&);  // no back-to-back, against peers
bool cheapest(const Settings&);         // the whole cost, against peers
bool growth(const Settings&);           // of time and memory with the size of the floor
bool hall_like(const Settings&);        // proofs within 2 s
bool repairs(const Settings&);          // time, and the fewest entries moved
bool history(const Settings&);          // entries of history that moved

/// Our planner on one floor: seconds of each run, and what the auditor says of the last answer.
struct Ours {
  std::vector<double> cpu_s;
  std::vector<double> wall_s;
  Cost cost;
  int proven = 0;
  bool holds = false;
};
enum class Ask { first, plan };
Ours ours(const ClassSpec&, int slots, Ask, int runs, int effort_times = 1);

double median(std::vector<double>);
double worst(const std::vector<double>&);
double percentile(std::vector<double>, int percent);

/// "missed 0, back_to_back 0, idle 3, ...": what is counted on regular floors.
std::string words_of(const Cost&);
void head_line(const std::string& title);
bool verdict(const std::string& what, bool kept);

}  // namespace floorwheel::peers
