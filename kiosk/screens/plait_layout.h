// SPDX-License-Identifier: GPL-3.0-or-later
// Where everything of the plait lies: all members' paths, slots to the right, stations in rows. One pure
// function from a rotation to lines, dots and boxes in pixels of the instructor's 1280 x 800 page; QML only
// draws them. Slots here count from 1, rows and members from 0. Source of the figures: the look, "The plait".
#pragma once

#include <string>
#include <vector>

namespace floorwheel::screens {

/// A row in which nobody is: the member does not work in that slot.
inline constexpr int no_row = -1;

struct PlaitClosure {
  int row = 0;
  int first = 1;  // slots, both included
  int last = 1;
};

struct PlaitAsk {
  int slots = 0;
  int laps = 1;
  bool ring = false;                 // a strand past the last row comes in again above
  std::vector<std::string> letters;  // one a row, in drawing order
  bool waiting = false;              // one more row below them for the waiting place
  std::vector<std::vector<int>> at;  // at[member][slot - 1]: a row, letters.size() for waiting, no_row
  std::vector<PlaitClosure> closed;
  int gone = 0;                          // slots that lie behind: 1..gone
  int present = 0;                       // the slot worked now, 0 for none
  int chosen = -1;                       // the member whose strand is yellow
  std::vector<std::vector<int>> before;  // a preview: the run sheet as it is; else empty
  int from_slot = 0;                     // a preview: the first slot that may change
};

struct PlaitPoint {
  double x = 0;
  double y = 0;
  friend bool operator==(const PlaitPoint&, const PlaitPoint&) = default;
};
using PlaitLine = std::vector<PlaitPoint>;  // two points or more

struct PlaitBox {
  double x = 0;
  double y = 0;
  double width = 0;
  double height = 0;
};

struct PlaitLetter {
  std::string letter;
  double y = 0;
  bool waiting = false;
};
struct PlaitNumber {
  int slot = 0;
  double x = 0;
  bool present = false;
};

/// One ink of strands: its lines, and the middles of its dots.
struct PlaitStrands {
  std::vector<PlaitLine> lines;
  std::vector<PlaitPoint> dots;
};

struct Plait {
  int first_slot = 1;  // of the page
  int slots = 0;       // on the page
  int first_row = 0;
  int rows = 0;  // on the page
  double column = 0;
  double row = 0;
  std::vector<PlaitLetter> letters;
  std::vector<PlaitNumber> numbers;
  PlaitStrands grey;
  PlaitStrands yellow;
  PlaitStrands sky;
  std::vector<PlaitPoint> skipped;  // small sky dots along a stretch that a change leaves out
  std::vector<PlaitBox> closed;
  std::vector<double> lap_lines;  // x
  PlaitBox gone;                  // width 0: none
  PlaitBox present;               // width 0: none
};

inline constexpr double plait_left = 366;
inline constexpr double plait_width = 605;
inline constexpr double plait_top = 132;
inline constexpr double plait_height = 500;
inline constexpr double plait_column_most = 52;
inline constexpr double plait_apart = 10;  // between members of one station
inline constexpr int plait_slots_page = 24;
inline constexpr int plait_rows_page = 16;

Plait lay_plait(const PlaitAsk&);

}  // namespace floorwheel::screens
