// SPDX-License-Identifier: GPL-3.0-or-later
// The command line of floorwheel-screen, read and checked before anything starts.
#pragma once

#include <QList>
#include <QSize>
#include <QSizeF>
#include <QString>
#include <QStringList>
#include <QUrl>
#include <variant>

#include "kiosk/screens/shots.h"
#include "kiosk/wire/row.h"

namespace floorwheel::screens {

struct Options {
  wire::Role role = wire::Role::wall;
  QUrl hub{QStringLiteral("ws://127.0.0.1:7413")};
  QSize size;    // px; empty: full screen, or the drawn size without a display
  QSizeF mm;     // empty: of the panel the look was drawn for
  QString lang;  // "": the system's
  QList<Shot> shots;
  QString hands;  // "": none
  QString frames;
  QString site;   // "": none
  QString state;  // folder of the outbox
  int patience_s = 20;
  bool live = false;
  bool stay = false;
};

/// What to say and with which code to leave, instead of starting.
struct Leave {
  int code = 0;
  QString text;
};

std::variant<Options, Leave> options_from(const QStringList& arguments);

}  // namespace floorwheel::screens
