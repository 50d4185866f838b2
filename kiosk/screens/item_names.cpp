// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/item_names.h"

#include <QAccessible>
#include <QColor>
#include <QFontInfo>
#include <QQuickItem>
#include <QQuickWindow>
#include <algorithm>
#include <functional>

namespace floorwheel::screens {

namespace {

constexpr double seen_from_opacity = 0.05;

// Visits every visible item with the part of it that is not clipped away.
void walk(QQuickItem* item, const QRectF& clip, bool enabled,
          const std::function<void(QQuickItem*, const QRectF&, bool)>& visit) {
  if (!item->isVisible() || item->opacity() < seen_from_opacity) return;
  const QRectF rect = item->mapRectToScene(QRectF(0, 0, item->width(), item->height()));
  enabled = enabled && item->isEnabled();
  visit(item, rect.intersected(clip), enabled);
  const QRectF inner = item->clip() ? rect.intersected(clip) : clip;
  QList<QQuickItem*> children = item->childItems();
  std::stable_sort(children.begin(), children.end(),
                   [](QQuickItem* a, QQuickItem* b) { return a->z() < b->z(); });
  for (QQuickItem* child : children) walk(child, inner, enabled, visit);
}

bool acts(QAccessible::Role role) {
  switch (role) {
    case QAccessible::Button:
    case QAccessible::CheckBox:
    case QAccessible::RadioButton:
    case QAccessible::EditableText:
    case QAccessible::ListItem:
    case QAccessible::MenuItem:
    case QAccessible::PageTab:
    case QAccessible::Link:
      return true;
    default:
      return false;
  }
}

QString text_of(const QQuickItem* item) {
  // Text, TextInput and TextEdit alike; all others have no painted width.
  if (!item->property("contentWidth").isValid() || !item->property("font").isValid()) return {};
  return item->property("text").toString();
}

}  // namespace

QList<ShownItem> shown_items(const QQuickWindow& window) {
  QList<ShownItem> all;
  walk(window.contentItem(), QRectF(QPointF(0, 0), QSizeF(window.size())), true,
       [&](QQuickItem* item, const QRectF& rect, bool enabled) {
         if (rect.isEmpty()) return;
         ShownItem shown{item, {}, rect, false, enabled};
         QAccessibleInterface* face = QAccessible::queryAccessibleInterface(item);
         if (face != nullptr && face->isValid()) {
           shown.name = face->text(QAccessible::Name);
           shown.acts = acts(face->role());
         }
         if (shown.name.isEmpty()) shown.name = text_of(item);
         if (!shown.name.isEmpty()) all.append(shown);
       });
  return all;
}

QList<ShownText> shown_texts(const QQuickWindow& window) {
  QList<ShownText> all;
  walk(window.contentItem(), QRectF(QPointF(0, 0), QSizeF(window.size())), true,
       [&](QQuickItem* item, const QRectF& rect, bool) {
         const QString text = text_of(item);
         if (text.isEmpty() || rect.isEmpty()) return;
         const QFont font = item->property("font").value<QFont>();
         // A screen drawn in units of its own is scaled as a whole.
         const double scale = item->mapRectToScene(QRectF(0, 0, 1, 1)).height();
         all.append({text, rect, font.pixelSize() * scale, QFontInfo(font).family(),
                     item->property("color").value<QColor>().name()});
       });
  return all;
}

}  // namespace floorwheel::screens
