// SPDX-License-Identifier: GPL-3.0-or-later
// What this screen is: its role, its size in millimetres, the typefaces it really has. Set once by main or a
// test, before the engine; constant for QML.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QSize>
#include <QSizeF>
#include <QStringList>

#include "kiosk/wire/row.h"

class QQmlEngine;
class QJSEngine;

namespace floorwheel::screens {

class ThisScreen : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(QString role READ role CONSTANT FINAL)            // "wall" | "touch" | "instructor" | "desk"
  Q_PROPERTY(bool inRoom READ inRoom CONSTANT FINAL)           // ink ground: wall and instructor; else paper
  Q_PROPERTY(int designWidth READ designWidth CONSTANT FINAL)  // px of the size it was drawn for
  Q_PROPERTY(int designHeight READ designHeight CONSTANT FINAL)
  Q_PROPERTY(QSizeF mm READ mm CONSTANT FINAL)  // of the whole panel
  Q_PROPERTY(QString plainFamily READ plainFamily CONSTANT FINAL)
  Q_PROPERTY(QString narrowFamily READ narrowFamily CONSTANT FINAL)
  Q_PROPERTY(QString captionFamily READ captionFamily CONSTANT FINAL)

 public:
  // No default argument: a type that QML can construct by itself would get a second instance there.
  explicit ThisScreen(QObject* parent);
  static ThisScreen* create(QQmlEngine*, QJSEngine*);

  /// `mm` empty: the panel that the look was drawn for (55, 21.5, 10.1 and 24 inch).
  void set(wire::Role role, QSizeF mm = {});
  /// Finds the typefaces, loading them from the folder of fonts-paratype where the system's list lacks them.
  /// Returns what is missing, by family; a fallback is then used and a person should know.
  QStringList find_typefaces();

  [[nodiscard]] wire::Role kind() const { return role_; }
  [[nodiscard]] QString role() const;
  [[nodiscard]] bool inRoom() const;
  [[nodiscard]] int designWidth() const { return design_size().width(); }
  [[nodiscard]] int designHeight() const { return design_size().height(); }
  [[nodiscard]] QSize design_size() const;
  [[nodiscard]] QSizeF mm() const { return mm_; }
  [[nodiscard]] QString plainFamily() const { return plain_; }
  [[nodiscard]] QString narrowFamily() const { return narrow_; }
  [[nodiscard]] QString captionFamily() const { return caption_; }

 private:
  wire::Role role_ = wire::Role::wall;
  QSizeF mm_;
  QString plain_, narrow_, caption_;
};

ThisScreen& this_screen();

}  // namespace floorwheel::screens
