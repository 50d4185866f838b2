// SPDX-License-Identifier: GPL-3.0-or-later
// Classes of earlier days for tests of what takes weeks: played through a real hub whose clock stands on each
// day in turn, by the commands that screens tell. Nothing is written past the hub.
#pragma once

#include <QDate>
#include <QList>
#include <QString>
#include <QStringList>

namespace floorwheel::testing {

struct PastSet {
  QString member;
  QString station;
  int slot = 1;
  int load_hg = 0;
  int reps = 0;
};
struct PastClass {
  QDate day;
  QStringList here = {};
  QList<PastSet> sets = {};
  QString hurts = {};  // a member who answers that something hurts, at `spot`
  QString spot = {};
};

/// Each class is checked in to, published, started, recorded and ended at half past six in the evening (UTC)
/// of its day. `data` is a hub's data folder that no hub uses now; days in order. The classes' ids.
QStringList play_past_classes(const QString& data, const QString& toml, const QList<PastClass>&);

}  // namespace floorwheel::testing
