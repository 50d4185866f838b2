// SPDX-License-Identifier: GPL-3.0-or-later
// Changes that the search proposes to a draft. Each sets entries of one change and says whether it has set
// any; whether the change keeps the rules and what it costs is for the draft to say. The three chains are the
// switches of Latin squares (rows, columns, symbols), here with several places at a station: each follows the
// room it takes until nobody is in the way. With teams, all members of a team move alike.
#pragma once

#include "scheduler/rotation/draft.h"
#include "scheduler/rotation/random.h"

namespace floorwheel {

class Moves {
 public:
  Moves(const Problem& p, Random& random);

  /// One change at random; false: nothing came of it.
  bool propose(Draft&);

  /// m visits s in slot t; what m does there goes into `free_slot`, and so on along a chain of the two slots.
  /// Without windows, closed slots, pairs and scarce equipment the chain always ends well (Koenig 1916).
  /// `alone`: those held together with m wait meanwhile.
  bool add_visit_at(Draft&, int m, StationIndex s, int t, int free_slot, bool alone);

 private:
  bool exchange_slots(Draft&, int m, int t, int u);
  bool exchange_members(Draft&, int a, int b, int t);
  bool exchange_stations(Draft&, int m, StationIndex a, StationIndex b);
  bool add_visit(Draft&, int m);
  bool replace_visit(Draft&, int m);
  bool restore(Draft&, int m);

  void set(Draft&, int m, int t, StationIndex s);
  int somebody_at(const Draft&, StationIndex s, int t);
  int slot_of(const Draft&, int m);

  const Problem& p_;
  Random& random_;
  std::vector<int> able_;  // members with planned slots
  std::vector<int> mark_;  // members already moved in this change
  int mark_now_ = 0;
  bool alone_ = false;  // what m is newly given is not given to those held together with m
  std::vector<int> queue_;
};

}  // namespace floorwheel
