// SPDX-License-Identifier: GPL-3.0-or-later
// The rotation problem as the search sees it: a class that has been checked once, by indices, for a fixed
// number of slots. Built whole or refused; not changed after. Slots count from 0 here, times are seconds.
// Source: the rotation model, "Given", "Rules" and "Repair".
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "scheduler/class_spec.h"
#include "scheduler/rotation/grid.h"
#include "scheduler/rotation/rotation.h"

namespace floorwheel {

/// What a member does at a station, by rule 3. Where the member has no exercise, groups are those of the
/// station's own, for pricing history only.
struct Work {
  std::uint32_t primary = 0;
  std::uint32_t assisting = 0;
  bool may = false;
  bool required = false;
  int load_hg = -1;  // planned load; -1: none, or a substitute is worked
};

/// Rule 3 for one exercise.
bool may_do(const MemberSpec&, const Exercise&);

class Problem {
 public:
  int members = 0;
  int stations = 0;
  int slots = 0;
  int laps = 1;
  int kinds = 0;  // of equipment
  int from = 0;   // first slot that is planned; those before are history

  std::vector<int> capacity;                  // [station]
  std::vector<std::vector<int>> takes;        // [station] kinds of equipment
  std::vector<int> units;                     // [kind]
  std::vector<int> first, last;               // [member] slots present; last < first: none
  std::vector<std::vector<int>> required;     // [member] stations
  std::vector<std::vector<int>> mates, foes;  // [member] held together with, kept apart from
  std::vector<std::vector<int>> teams;        // members held together, also over a chain; singles too
  std::vector<int> team_of;                   // [member]
  Grid<std::uint8_t> open;                    // (station, slot)
  Grid<int> walk_cm;                          // (station, station)
  Grid<int> rest_from;                        // (member's level, slot t): earliest u, gap(u, t) too short
  std::vector<int> level;                     // [member]
  bool has_loads = false;

  bool is_repair = false;
  Grid<StationIndex> history;        // (member, slot < from)
  Grid<StationIndex> old;            // (member, slot): the earlier sheet
  std::vector<std::uint8_t> counts;  // [member] entries count as `moved`
  std::vector<std::string> notes;    // what could not be kept, for `reasons`

  [[nodiscard]] const Work& work(int m, int s) const { return work_(m, s); }
  [[nodiscard]] const Work* works(int m) const { return work_.row(m); }
  [[nodiscard]] bool present(int m, int t) const { return first[ix(m)] <= t && t <= last[ix(m)]; }
  [[nodiscard]] int slots_present(int m) const {
    return last[ix(m)] < first[ix(m)] ? 0 : last[ix(m)] - first[ix(m)] + 1;
  }
  [[nodiscard]] int visits_wanted(int m) const { return laps * static_cast<int>(required[ix(m)].size()); }
  /// Of these, in history.
  [[nodiscard]] int visits_made(int m) const;
  /// Missed visits that the member's own window forces.
  [[nodiscard]] int forced_missed(int m) const {
    const int over = visits_wanted(m) - slots_present(m);
    return over > 0 ? over : 0;
  }
  /// Places at a station in a slot, were nobody else there: 0 while closed.
  [[nodiscard]] int places(int s, int t) const { return places_(s, t); }
  /// People, of those there are, that every station takes in every slot.
  [[nodiscard]] int places_always() const;

 private:
  friend class ProblemBuilder;
  Grid<Work> work_;
  Grid<int> places_;
};

/// The class with `slots` slots, or why it is refused. With `earlier`, a repair from slot `at_slot`
/// (1-based).
OrRefusal<Problem> make_problem(const ClassSpec&, int slots, const EarlierSheet* earlier = nullptr,
                                int at_slot = 1);

}  // namespace floorwheel
