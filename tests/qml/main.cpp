// SPDX-License-Identifier: GPL-3.0-or-later
// Runs one tst_*.qml against a real hub process of its own: ctest gives the file (-input) and the role
// ($FLOORWHEEL_TEST_ROLE). A test reaches hub and store through the singleton TestHub (import
// FloorwheelTest), the screen through its visible items only. Any warning of Qt or QML fails the run (see
// CMakeLists.txt).
#include <QGuiApplication>
#include <QQmlEngine>
#include <QStyleHints>
#include <QTemporaryDir>
#include <QtQuickTest>

#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/this_screen.h"
#include "tests/qml/test_hub.h"

using namespace floorwheel;

class Setup : public QObject {
  Q_OBJECT
 public Q_SLOTS:
  void applicationAvailable() {
    // As the program does: two quick taps are two taps.
    QGuiApplication::styleHints()->setMouseDoubleClickInterval(0);
    const auto role = wire::role_from(qgetenv("FLOORWHEEL_TEST_ROLE").toStdString());
    if (!role) qFatal("FLOORWHEEL_TEST_ROLE must be wall, touch, instructor or desk");
    screens::this_screen().set(*role);
    if (!hub_.begin()) qFatal("no hub: %s", qPrintable(hub_.trouble()));
    const QString trouble = screens::hub_link().keep_outbox_in(outbox_.path());
    if (!trouble.isEmpty()) qFatal("%s", qPrintable(trouble));
    screens::hub_link().start(hub_.url(), *role);
  }
  void qmlEngineAvailable(QQmlEngine* engine) {
    engine->addImportPath(QStringLiteral(":/qt/qml"));
    qmlRegisterSingletonInstance("FloorwheelTest", 1, 0, "TestHub", &hub_);
  }
  void cleanupTestCase() { hub_.end(); }

 private:
  tests::TestHub hub_;
  QTemporaryDir outbox_;
};

QUICK_TEST_MAIN_WITH_SETUP(floorwheel_screens, Setup)
#include "main.moc"
