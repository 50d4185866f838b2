// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/this_screen.h"

#include <QCoreApplication>
#include <QDir>
#include <QFontDatabase>
#include <QJSEngine>

namespace floorwheel::screens {

namespace {
// Where Debian's fonts-paratype puts them.
const QString paratype_folder = QStringLiteral("/usr/share/fonts/truetype/paratype");
// Millimetres a pixel of the panels that the look was drawn for.
double mm_a_px(wire::Role role) {
  switch (role) {
    case wire::Role::wall:
      return 0.634;
    case wire::Role::touch:
      return 0.248;
    case wire::Role::instructor:
      return 0.170;
    default:
      return 0.277;
  }
}
}  // namespace

ThisScreen::ThisScreen(QObject* parent) : QObject(parent) {
  find_typefaces();
  set(wire::Role::wall);
}

ThisScreen* ThisScreen::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(&this_screen(), QJSEngine::CppOwnership);
  return &this_screen();
}

void ThisScreen::set(wire::Role role, QSizeF mm) {
  role_ = role;
  mm_ = mm.isEmpty() ? QSizeF(design_size()) * mm_a_px(role) : mm;
}

QStringList ThisScreen::find_typefaces() {
  if (!QFontDatabase::families().contains(QStringLiteral("PT Sans Narrow"))) {
    const QDir folder(paratype_folder);
    for (const QString& file : folder.entryList({QStringLiteral("*.ttf")}))
      QFontDatabase::addApplicationFont(folder.filePath(file));
  }
  const QStringList there = QFontDatabase::families();
  QStringList missing;
  const auto pick = [&](const char* wanted, const char* instead) {
    const QString family = QString::fromLatin1(wanted);
    if (there.contains(family)) return family;
    missing.append(family);
    return QString::fromLatin1(instead);
  };
  plain_ = pick("PT Sans", "DejaVu Sans");
  narrow_ = pick("PT Sans Narrow", "DejaVu Sans Condensed");
  caption_ = pick("PT Sans Caption", "DejaVu Sans");
  return missing;
}

QString ThisScreen::role() const { return QString::fromUtf8(wire::id_of(role_)); }
bool ThisScreen::inRoom() const { return role_ == wire::Role::wall || role_ == wire::Role::instructor; }
QSize ThisScreen::design_size() const {
  return role_ == wire::Role::instructor ? QSize(1280, 800) : QSize(1920, 1080);
}

ThisScreen& this_screen() {
  static ThisScreen* const screen = new ThisScreen(QCoreApplication::instance());
  return *screen;
}

}  // namespace floorwheel::screens
