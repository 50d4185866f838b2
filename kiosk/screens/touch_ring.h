// SPDX-License-Identifier: GPL-3.0-or-later
// Where everything of the dose ring lies: one sector for each muscle group, clockwise from the top in a fixed
// order by region of the body, filled to its band, with its word in a row at its side. A pure function in
// pixels of the touch screen's 1920 x 1080; QML only draws it. Source of the figures: the look, "Dose ring".
#pragma once

#include <string_view>
#include <vector>

#include "scheduler/vocabulary.h"

namespace floorwheel::screens {

inline constexpr double ring_x = 640;  // its centre
inline constexpr double ring_y = 552;
inline constexpr double ring_inner = 118;
inline constexpr double ring_outer = 284;
inline constexpr int ring_bands = 4;
inline constexpr double rows_top = 202;  // of the words at both sides
inline constexpr double rows_bottom = 896;
inline constexpr double words_left = 300;  // left words end here, right ones begin at words_right
inline constexpr double words_right = 980;

struct GroupDose {
  Group group = Group::chest;
  int sets = 0;
  int band = 0;  // 0 none, 1 under 3, 2 from 3 to 9, 3 from 10 to 15, 4 over 15
};

struct RingSector {
  GroupDose dose;
  double from_deg = 0;  // clockwise from the top
  double sweep_deg = 0;
  bool at_right = true;
  double row_y = 0;      // middle of its words' row
  double leader_x1 = 0;  // from the words to the sector
  double leader_y1 = 0;
  double leader_x2 = 0;
  double leader_y2 = 0;
};

struct DoseRing {
  std::vector<RingSector> sectors;  // clockwise
  double row_height = 0;
};

/// The fourteen groups that always stand there, and of the others those in `trained` with sets.
DoseRing ring_of(const std::vector<GroupDose>& trained);

/// 0 where there are no sets, else the place of a band's id ("3_to_9") from 1 to 4; 0 for an unknown id.
int band_number(std::string_view id, int sets);

}  // namespace floorwheel::screens
