// SPDX-License-Identifier: GPL-3.0-or-later
// What stands inside the wheel: the clock, the station shown, the class before it starts, a note at the foot.
#pragma once

#include "kiosk/screens/wall_items.h"

namespace floorwheel::screens {

/// Collects texts that stand at the middle, an edge or a left edge.
class TextSetter {
 public:
  TextSetter(const WallText& measure, std::vector<WallTextItem>& out) : measure_(measure), out_(out) {}
  enum class From { left, middle, right };
  WallTextItem& set(const QString& key, const QString& label, From from, double at, double base, double cap,
                    bool bold = true, bool mute = false, double spacing = 0) {
    WallTextItem t;
    t.key = key;
    t.label = label;
    t.base = base;
    t.cap = cap;
    t.bold = bold;
    t.mute = mute;
    t.spacing = spacing;
    t.width = measure_.width(label, cap, bold) + spacing * static_cast<double>(label.size() - 1);
    t.x = from == From::left ? at : from == From::right ? at - t.width : at - t.width / 2;
    out_.push_back(t);
    return out_.back();
  }

 private:
  const WallText& measure_;
  std::vector<WallTextItem>& out_;
};

void add_middle(const WallFace&, const WallText&, const QStringList& notes, const QString& time_of_day,
                const WheelLayout&, std::vector<WallTextItem>& out);

}  // namespace floorwheel::screens
