// SPDX-License-Identifier: GPL-3.0-or-later
// A rotation in the making: who is where, with counts of used places and units, so that "is there room" and
// "does this row keep the rules" are answered at once. Starts with history and nobody else anywhere.
#pragma once

#include <bit>
#include <cstdint>
#include <vector>

#include "scheduler/rotation/problem.h"

namespace floorwheel {

using Row = std::vector<StationIndex>;

class Sheet {
 public:
  explicit Sheet(const Problem&);
  Sheet(const Problem&, const std::vector<Row>&);

  [[nodiscard]] StationIndex at(int m, int t) const { return at_(m, t); }
  [[nodiscard]] const StationIndex* row(int m) const { return at_.row(m); }
  /// How many more fit at s in slot t: places and units; negative when too many are there.
  [[nodiscard]] int room(int s, int t) const;
  /// Rule 2 everywhere.
  [[nodiscard]] bool rooms_hold() const;
  /// Tells each member at s in slot t, in order.
  template <class Tell>
  void each_at(int s, int t, Tell tell) const {
    for (int w = 0; w < words_; ++w)
      for (std::uint64_t left = who_(s, t * words_ + w); left; left &= left - 1)
        tell(w * 64 + std::countr_zero(left));
  }
  /// How often m visits s, history included.
  [[nodiscard]] int visits(int m, int s) const { return visits_(m, s); }

  /// Sets one entry, whatever the rules say; s may be nowhere.
  void put(int m, int t, StationIndex s);
  /// Empties the row of m from the first planned slot on.
  void clear(int m);
  void set_row(int m, const StationIndex* row);

  /// Rule 4 and, with a ring, rule 6 for the row of m.
  [[nodiscard]] bool laps_hold(int m) const;
  /// Rule 5 for m against everybody m is paired with, in one slot or in all.
  [[nodiscard]] bool pairs_hold(int m, int t) const;
  [[nodiscard]] bool pairs_hold(int m) const;

  [[nodiscard]] std::vector<Row> rows() const;

 private:
  const Problem* p_;
  Grid<StationIndex> at_;
  int words_ = 0;
  Grid<std::uint64_t> who_;  // (station, slot by words of 64 members): a bit for each who is there
  Grid<int> used_;           // (station, slot)
  Grid<int> units_used_;     // (kind, slot)
  Grid<int> visits_;         // (member, station)
};

/// Rule 4 for a row: its worked slots, cut greedily, make no more than the laps allowed. Only slots that are
/// planned are judged; history counts.
bool laps_hold(const Problem&, const StationIndex* row);

/// How far a row has come on a ring, visit by visit.
struct RingSteps {
  StationIndex at = nowhere;   // the last station
  int lap = 0;                 // rule 4: which one it is in
  int in_lap = 0, in_row = 0;  // steps gone
};
/// `seen_in`: by station the last lap with it, kept up.
RingSteps step_on(const Problem&, const std::vector<int>& place, RingSteps, StationIndex,
                  std::vector<int>& seen_in);
/// Rule 6 so far.
bool steps_hold(const Problem&, const RingSteps&);

/// Rule 6 for a row; place[s] is the place of station s in the ring.
bool steps_hold(const Problem&, const std::vector<int>& place, const StationIndex* row);

}  // namespace floorwheel
