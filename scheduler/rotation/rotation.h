// SPDX-License-Identifier: GPL-3.0-or-later
// A rotation: who is at which station in which slot, for all members of a class; and what comes with it when
// it is an answer. Plain values that planner, auditor, files and hub pass about.
#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "scheduler/rotation/cost.h"
#include "scheduler/vocabulary.h"

namespace floorwheel {

/// A station in a row: index into ClassSpec::stations, or `nowhere`.
using StationIndex = int;
inline constexpr StationIndex nowhere = -1;

/// at[m][t - 1] is where member m (index into ClassSpec::members) works in slot t.
struct Rotation {
  int slots = 0;
  Style style = Style::free;       // ring or free, never automatic
  std::vector<StationIndex> ring;  // the cyclic order of all stations; only when style is ring
  std::vector<std::vector<StationIndex>> at;
  friend bool operator==(const Rotation&, const Rotation&) = default;
};

/// The earlier run sheet that a repair starts from, by ids so that members and stations may have come or
/// gone.
struct RunSheetRow {
  std::string member;
  std::vector<std::string> stations;  // "" where the member does not work
  friend bool operator==(const RunSheetRow&, const RunSheetRow&) = default;
};
struct EarlierSheet {
  int slots = 0;
  Style style = Style::free;
  std::vector<std::string> ring;
  std::vector<RunSheetRow> rows;
  int at_slot = 0;  // if this sheet was itself a repair: from which slot; else 0
  friend bool operator==(const EarlierSheet&, const EarlierSheet&) = default;
};

/// An answer: a rotation that keeps all rules, its cost as the auditor recomputes it, and how good it is.
struct Plan {
  Rotation rotation;
  Cost cost;
  Cost bound;  // of each component, over all rotations of this style whose earlier components equal `cost`
  int proven = 0;  // the first so many components in order (without `moved` unless a repair) are optimal
  std::vector<std::string> reasons;
  std::uint64_t seed = 1;
  int at_slot = 0;  // a repair: slots before it are history; else 0
};

/// Why a class cannot be planned: the rule of the model and the entries that clash, in one sentence.
struct Refusal {
  int rule = 0;
  std::vector<std::string> members;
  std::vector<std::string> stations;
  std::vector<int> slots;
  std::string reason;
  friend bool operator==(const Refusal&, const Refusal&) = default;
};

template <class T>
using OrRefusal = std::variant<T, Refusal>;

/// One row of "what one more slot buys".
struct SlotRow {
  int slots = 0;
  int class_s = 0;
  bool fits = true;
  Style style = Style::free;
  Cost cost;
  Cost bound;
  int proven = 0;
};
struct SlotTable {
  std::vector<SlotRow> rows;
  Plan chosen;
};

}  // namespace floorwheel
