// SPDX-License-Identifier: GPL-3.0-or-later
// A screen process for tst_hub_link to kill: checks members in through a HubLink whose outbox lies in FOLDER,
// prints "kept ID" for each once it is on disk, and stays.
//   record_and_wait FOLDER HUB-URL CLASS COUNT
#include <QCoreApplication>
#include <QTextStream>
#include <QTimer>

#include "kiosk/screens/hub_link.h"

int main(int argc, char** argv) {
  QCoreApplication app(argc, argv);
  const QStringList args = QCoreApplication::arguments();
  floorwheel::screens::HubLink link(nullptr);
  if (!link.keep_outbox_in(args.at(1)).isEmpty()) return 2;
  link.start(QUrl(args.at(2)), floorwheel::wire::Role::touch);
  int n = 0;
  QTimer tap;
  QObject::connect(&tap, &QTimer::timeout, &app, [&] {
    ++n;
    const QString id = link.tell(
        QStringLiteral("check_in"),
        {{QStringLiteral("class"), args.at(3)}, {QStringLiteral("member"), QStringLiteral("m%1").arg(n)}});
    QTextStream(stdout) << "kept " << id << Qt::endl;
    if (n == args.at(4).toInt()) tap.stop();
  });
  tap.start(0);
  return QCoreApplication::exec();
}
