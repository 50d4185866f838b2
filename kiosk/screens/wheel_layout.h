// SPDX-License-Identifier: GPL-3.0-or-later
// Where everything stands on the wall: one pure function from a class's shape (stations, people, waiting
// place, face) to discs, boxes, rows, tags and leaders. QML only places what this says. All lengths are in
// units of a wall of 1920 x 1080; the screen scales the whole. Angles in degrees, 0 at the top, clockwise.
// Source: the look of the wall (DEVELOPERS.md, "The wall"); fixed numbers are ours, drawn and measured.
#pragma once

#include <vector>

namespace floorwheel::screens {

struct WheelPoint {
  double x = 0;
  double y = 0;
  friend bool operator==(const WheelPoint&, const WheelPoint&) = default;
};
struct WheelRect {
  double x = 0;
  double y = 0;
  double w = 0;
  double h = 0;
  [[nodiscard]] double right() const { return x + w; }
  [[nodiscard]] double bottom() const { return y + h; }
  friend bool operator==(const WheelRect&, const WheelRect&) = default;
};
using WheelLine = std::vector<WheelPoint>;

/// The fixed sizes of the wheel.
namespace wheel {
inline constexpr double width = 1920;
inline constexpr double height = 1080;
inline constexpr WheelPoint centre{960, 624};
inline constexpr double rail = 394;            // radius of the rail
inline constexpr double disc = 49;             // radius of a disc
inline constexpr double halo = 6;              // ink round a disc
inline constexpr double ink_half_width = 271;  // of the widest two figures of the clock, round the centre
inline constexpr double ink_half_height = 213;
inline constexpr double gate_half = 27;              // the gate runs from rail - 27 to rail + 27
inline constexpr WheelRect plate{544, 966, 92, 92};  // the waiting place W
inline constexpr double column_top = 12;
inline constexpr double column_height = 1056;
inline constexpr double left_x = 14;       // outer edge of the left column
inline constexpr double left_flush = 490;  // edges next to the wheel
inline constexpr double right_flush = 1430;
inline constexpr double right_x = 1906;
inline constexpr double near_width = 474;  // the widest line of the near face
inline constexpr int rows_a_side = 12;
inline constexpr double pitch_most = 104;
inline constexpr double pitch_least = 88;
inline constexpr double tag_width = 100;
}  // namespace wheel

/// near: exercise and aliases flush to the wheel, while people stay; go: large aliases with the next letter.
enum class WheelFace { near, go };

struct WheelStation {
  int people = 0;
  std::vector<int> go_lines;   // lines of each alias on the go face; empty: one each
  std::vector<int> tag_lines;  // lines of each alias with a small tag on the near face; empty: one each
  int name_lines = 1;          // of the exercise, near face
  int joined_lines = 0;        // of the aliases joined by a dot, near face
  bool closed = false;         // no people, a dashed disc
};

struct WheelAsk {
  std::vector<WheelStation> stations;  // in the order of the rail, clockwise from the gate
  bool waiting_place = false;
  WheelStation waiting;  // who stands at W, if waiting_place
  WheelFace face = WheelFace::near;
  bool tag_a_row = false;   // go face: free rotation, a tag for each person; else one for a box
  bool small_tags = false;  // near face: free rotation, an outlined tag behind each alias where there is room
  bool names_only = false;  // near face without people (show)
  int page = 0;             // which page, modulo their count
};

struct WheelDisc {
  double angle = 0;
  WheelPoint centre;
};
struct WheelRow {
  enum class What { name, joined, person };
  What what = What::name;
  int person = -1;  // index into the station's people
  int line = 0;     // of that text
  double baseline = 0;
};
struct WheelTag {
  int person = -1;  // -1: for the whole box
  WheelRect rect;   // at its full width; the notched and pointed outline fits in it
};
struct WheelBox {
  int station = 0;  // -1: the waiting place
  bool left = false;
  WheelRect rect;
  double pitch = 0;
  int first_person = 0;  // a box of more rows than a side has goes on over the pages
  int people = 0;        // shown in this box
  bool tagged = false;   // near face: this box has room for its small tags
  std::vector<WheelRow> rows;
  std::vector<WheelTag> tags;
  WheelLine bracket;  // two points; empty at a closed station
  WheelLine leader;   // from the bracket to the disc or the W plate
};
struct WheelLayout {
  double phi = 0.5;
  std::vector<WheelDisc> discs;
  std::vector<WheelBox> boxes;  // right column from the top, then left from the top
  int pages = 1;
  int chevrons = 1;                // in each gap of a ring changeover
  std::vector<double> gaps;        // angles of the middles between neighbouring discs
  bool every_leader_clear = true;  // false: one had to cross something (never for 4 to 16 stations)
};

/// The part of a step by which the first disc stands off the gate, for n stations.
double wheel_phi(int stations);
WheelPoint wheel_point(double angle, double radius);
WheelLayout lay_out_wheel(const WheelAsk&);

}  // namespace floorwheel::screens
