// SPDX-License-Identifier: GPL-3.0-or-later
// From what the wall says to what stands where: every text with its left edge and baseline, every tag, disc
// and line, in units of 1920 x 1080. A plain value between WallFace and the models that QML repeats over.
#pragma once

#include <QPolygonF>
#include <QString>
#include <vector>

#include "kiosk/screens/wall_face.h"
#include "kiosk/screens/wall_site.h"
#include "kiosk/screens/wall_text.h"
#include "kiosk/screens/wheel_layout.h"

namespace floorwheel::screens {

struct WallTextItem {
  QString key;
  QString label;
  double x = 0;     // left edge of its advance
  double base = 0;  // baseline
  double cap = wall_cap::near;
  bool bold = true;
  bool mute = false;
  double spacing = 0;       // between letters
  double word_spacing = 0;  // added to each space
  double width = 0;         // as measured
};
struct WallTagItem {
  QString key;
  QString letter;
  double right = 0;  // its point
  double y = 0;
  double width = 0;
  double height = 0;
  double cap = wall_cap::go;
  bool filled = false;
  double stroke = 6;
};
struct WallDiscItem {
  QString key;
  QString letter;
  WheelPoint centre;
  bool filled = false;
  bool closed = false;
};

struct WallItems {
  WallTextItem headline;
  std::vector<WallTextItem> texts;   // columns and corners
  std::vector<WallTextItem> middle;  // in the wheel: clock, letter shown, notes
  std::vector<WallTagItem> tags;
  std::vector<WallDiscItem> discs;
  QList<QList<QPolygonF>> lines;  // brackets and leaders, a list for each box
  QList<QPolygonF> shown_line;    // of the station in turn
  QList<QList<QPolygonF>> dots;   // from aliases to tags, drawn dotted, a list for each row
  std::vector<double> rail;       // angles at which the rail is cut: 0, the discs, 360
  std::vector<double> gaps;       // middles between discs
  int chevrons = 1;               // in each gap
  bool plate = false;
  int pages = 1;
};

/// `note` stands at the foot of the wheel's face.
WallItems wall_items(const WallFace&, const WallText&, const WallSite&, const QString& note,
                     const QString& time_of_day, int page);

QString headline_of(const WallFace&);

/// Whether corner texts so wide have room beside a headline (or its plate) so wide.
bool corner_room(double headline_width, double corner_width);

/// One chevron at an angle, its point clockwise: half its length along the rail, half its width across.
QPolygonF chevron(double angle, double radius, double half_length, double half_width);

}  // namespace floorwheel::screens
