// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/picture.h"

#include <QFileInfo>
#include <QImage>
#include <QQuickWindow>
#include <QSaveFile>
#include <QTextStream>

#include "kiosk/screens/item_names.h"

namespace floorwheel::screens {

QString text_twin_name(const QString& file) {
  return file.endsWith(QLatin1String(".png")) ? file.chopped(4) + QStringLiteral(".txt")
                                              : file + QStringLiteral(".txt");
}

QString save_picture(QQuickWindow& window, const QString& file) {
  const QImage image = window.grabWindow();
  if (image.isNull()) return QStringLiteral("%1: the window gave no picture").arg(file);
  QSaveFile png(file);
  QSaveFile twin(text_twin_name(file));
  for (QSaveFile* f : {&png, &twin})
    if (!f->open(QIODevice::WriteOnly))
      return QStringLiteral("%1: %2; give a file in a folder that may be written")
          .arg(f->fileName(), f->errorString());
  if (!image.save(&png, "PNG")) return QStringLiteral("%1: %2").arg(file, png.errorString());
  QTextStream out(&twin);
  out << "x\ty\tw\th\tsize\tcolour\tfamily\ttext\n";
  for (const ShownText& t : shown_texts(window)) {
    out << qRound(t.rect.x()) << '\t' << qRound(t.rect.y()) << '\t' << qRound(t.rect.width()) << '\t'
        << qRound(t.rect.height()) << '\t' << t.pixel_size << '\t' << t.colour << '\t' << t.family << '\t'
        << QString(t.text).replace(QLatin1Char('\n'), QLatin1Char(' ')) << '\n';
  }
  out.flush();
  for (QSaveFile* f : {&png, &twin})
    if (!f->commit()) return QStringLiteral("%1: %2").arg(f->fileName(), f->errorString());
  return {};
}

}  // namespace floorwheel::screens
