// SPDX-License-Identifier: GPL-3.0-or-later
// The item tree as a person or assistive technology meets it: what is visible, by accessible name or text.
// Pictures' text twins, --hands and tests read the screen through this and nothing else.
#pragma once

#include <QList>
#include <QRectF>
#include <QString>

class QQuickItem;
class QQuickWindow;

namespace floorwheel::screens {

struct ShownItem {
  QQuickItem* item = nullptr;
  QString name;          // accessible name, else the text
  QRectF rect;           // in the window, px, clipped to it
  bool acts = false;     // a control that can be pressed, chosen or typed into
  bool enabled = false;  // it and all around it
};

/// Everything visible with a name, in drawing order: opaque enough to be seen, not clipped away, inside the
/// window. Items behind a full-window cover are listed too; a tap on them would reach the cover.
QList<ShownItem> shown_items(const QQuickWindow&);

struct ShownText {
  QString text;
  QRectF rect;
  double pixel_size = 0;
  QString family;
  QString colour;  // "#rrggbb"
};
/// Every visible text with its place and size.
QList<ShownText> shown_texts(const QQuickWindow&);

}  // namespace floorwheel::screens
