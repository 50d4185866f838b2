// SPDX-License-Identifier: GPL-3.0-or-later
// Before any search, within milliseconds: what cannot be is refused, and what must be missed is counted and
// said. Visits flow from members (their slots) to stations (their places and units, period by period): the
// largest flow is the bound on `missed`, and the cut it leaves is its proof, a sentence of stations, members
// and slots. Hall's condition and König's bound in one; what only a search can refute is not found here.
// Slots count from 0 here, in sentences from 1. Source: the rotation model, "Bounds that come free".
#pragma once

#include <string>
#include <vector>

#include "scheduler/class_spec.h"
#include "scheduler/rotation/problem.h"

namespace floorwheel {

/// Visits that have to be missed, by members' slots and stations' places.
struct VisitFlow {
  std::int64_t missed = 0;  // at least, what members' own windows force included
  std::int64_t uneven = 0;  // at least, when `missed` is that
};

/// One part of the cut: these members are to make `required` visits at these stations in these slots, beyond
/// those they can make elsewhere, and there is room for `room`. The rest is missed.
struct VisitCut {
  enum class Why {
    places,  // of stations and units of equipment
    closed,  // the station is closed while the members are there
    team,    // members held together, and too few places for all of them
  };
  Why why = Why::places;
  std::vector<int> members;
  std::vector<int> stations;
  std::vector<int> kinds;  // of equipment whose units are too few
  std::vector<int> slots;
  std::int64_t required = 0;
  std::int64_t room = 0;
};

struct VisitBound {
  VisitFlow flow;
  std::vector<VisitCut> cuts;  // what goes beyond members' own windows
};

/// The bound alone, and with its cut.
VisitFlow bound_visits(const Problem&);
VisitBound cut_visits(const Problem&);

/// Why at least flow.missed visits are missed, each cause a clause without capital and full stop: members
/// with fewer slots than visits first, then the cuts.
std::vector<std::string> why_missed(const ClassSpec&, const Problem&, const VisitBound&);

/// What is known before any search.
struct Preflight {
  int slots = 0;
  VisitFlow least;
  std::string reason;  // one sentence; empty where nothing has to be missed
};
OrRefusal<Preflight> preflight(const ClassSpec&, int slots);

}  // namespace floorwheel
