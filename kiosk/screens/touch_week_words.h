// SPDX-License-Identifier: GPL-3.0-or-later
// What the page 'My week' says of the hub's answer, in short words for somebody who stands before it: a
// group, its sets, a next load, its reason, a trend.
#pragma once

#include <QCoreApplication>
#include <QJsonObject>
#include <QList>
#include <QPointF>
#include <QString>

#include "scheduler/vocabulary.h"

namespace floorwheel::screens {

class TouchWeekWords {
  Q_DECLARE_TR_FUNCTIONS(TouchWeekWords)
 public:
  static QString group(Group);
  /// "8 sets, 3 to 9", "none yet"; the band as in GroupDose.
  static QString sets(int sets, int band);
  /// "27.5 kg × 8–12, 3 sets" of a row of `next`; "own body × 8–15, 1 set".
  static QString load(const QJsonObject& next);
  /// One sentence; who decided otherwise comes first, then the rule.
  static QString reason(const QJsonObject& next);
  /// "62 to 68 kg, +0.6 a week" of a row of `trends`.
  static QString trend(const QJsonObject& trend);
  /// Its points in a box of 1 x 1: days to the right, loads up; the least and the greatest touch its edges.
  static QList<QPointF> line(const QJsonObject& trend);
};

}  // namespace floorwheel::screens
