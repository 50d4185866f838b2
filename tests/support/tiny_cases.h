// SPDX-License-Identifier: GPL-3.0-or-later
// Random classes small enough to look at every rotation, with every feature the model has, and random changes
// in the middle of them. The same number gives the same case on every machine.
#pragma once

#include <cstdint>
#include <string>

#include "scheduler/class_spec.h"
#include "scheduler/rotation/rotation.h"

namespace floorwheel::tiny {

/// splitmix64 (Steele, Lea and Flood 2014), with the little that the tests draw.
class Draw {
 public:
  explicit Draw(std::uint64_t seed) : state_(seed) {}
  std::uint64_t word();
  int below(int n) { return static_cast<int>(word() % static_cast<std::uint64_t>(n)); }
  int from(int low, int high) { return low + below(high - low + 1); }
  bool one_in(int n) { return below(n) == 0; }

 private:
  std::uint64_t state_;
};

struct Case {
  ClassSpec spec;
  int slots = 1;
};
/// Class number `seed`, with at most about `most` combinations of rows to look at.
Case make_case(std::uint64_t seed, double most);

/// A class of any size with the same features.
ClassSpec make_class(std::uint64_t seed, int stations, int members, int slots);

/// A class that changed at slot `at_slot` of a run sheet made for it as it was.
struct Change {
  ClassSpec spec;
  int slots = 1;
  EarlierSheet before;
  int at_slot = 1;
  std::string what;  // what changed, in words
};
Change make_change(std::uint64_t seed, double most);

/// One of the changes that the model knows, from slot `at_slot` on; what changed, in words.
std::string happen(Draw&, ClassSpec&, int& slots, int at_slot);

/// The case in words like those of the class file, for a report of a failure.
std::string dump(const ClassSpec&, int slots);
std::string dump(const EarlierSheet&);
std::string dump(const ClassSpec&, const Rotation&);
std::string dump(const Cost&);

/// How many cases a test runs: FLOORWHEEL_TINY_CASES, or so many, a hundred times that with FLOORWHEEL_LONG.
int cases_wanted(int by_default);
/// How large cases may be, in combinations of rows: FLOORWHEEL_TINY_MOST, or so many.
double most_wanted(double by_default);
/// The first case: FLOORWHEEL_TINY_SEED or FLOORWHEEL_SEED, or 1.
std::uint64_t first_seed();

}  // namespace floorwheel::tiny
