// SPDX-License-Identifier: GPL-3.0-or-later
// The shipped program itself: pictures with their text twin, hands, clean ends, the typefaces really used.
#include <signal.h>

#include <QFile>
#include <QFontDatabase>
#include <QFontInfo>
#include <QImage>
#include <QProcess>
#include <QTemporaryDir>
#include <QtTest>

#include "kiosk/screens/this_screen.h"
#include "tests/support/hub_process.h"

using floorwheel::tests::bin;
using floorwheel::tests::HubProcess;

namespace {

constexpr int patience_ms = 30000;

struct Ended {
  int code = -1;
  QString out;
  QString err;
};

Ended screen(const QStringList& arguments, const QByteArray& in = {}) {
  QProcess p;
  p.start(bin(QStringLiteral("floorwheel-screen")), arguments);
  p.write(in);
  p.closeWriteChannel();
  if (!p.waitForFinished(patience_ms)) return {};
  return {p.exitStatus() == QProcess::NormalExit ? p.exitCode() : -2,
          QString::fromUtf8(p.readAllStandardOutput()), QString::fromUtf8(p.readAllStandardError())};
}

QString text_of(const QString& file) {
  QFile f(file);
  return f.open(QIODevice::ReadOnly) ? QString::fromUtf8(f.readAll()) : QString();
}

}  // namespace

class TestScreenProgram : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void the_typefaces_of_the_look_are_the_ones_used_data() {
    QTest::addColumn<QString>("family");
    for (const char* family : {"PT Sans", "PT Sans Narrow", "PT Sans Caption"})
      QTest::newRow(family) << QString::fromLatin1(family);
  }
  void the_typefaces_of_the_look_are_the_ones_used() {
    QFETCH(QString, family);
    QCOMPARE(floorwheel::screens::this_screen().find_typefaces(), QStringList());
    QFont font(family);
    font.setBold(true);
    QCOMPARE(QFontInfo(font).family(), family);
    QVERIFY2(QFontInfo(font).exactMatch(), qPrintable(family));
  }

  void a_screen_without_a_hub_says_so_in_its_picture_data() {
    QTest::addColumn<QString>("role");
    QTest::addColumn<QSize>("size");
    QTest::newRow("wall") << "wall" << QSize(1920, 1080);
    QTest::newRow("touch") << "touch" << QSize(1920, 1080);
    QTest::newRow("instructor") << "instructor" << QSize(1280, 800);
    QTest::newRow("desk") << "desk" << QSize(1920, 1080);
  }
  void a_screen_without_a_hub_says_so_in_its_picture() {
    QFETCH(QString, role);
    QFETCH(QSize, size);
    QTemporaryDir dir;
    const Ended e =
        screen({role, QStringLiteral("--hub"), QStringLiteral("ws://127.0.0.1:1"), QStringLiteral("--state"),
                dir.path(), QStringLiteral("--shot"), dir.filePath(QStringLiteral("a.png")),
                QStringLiteral("--at"), QStringLiteral("now")});
    QCOMPARE(e.err, QString());
    QCOMPARE(e.code, 0);
    QCOMPARE(QImage(dir.filePath(QStringLiteral("a.png"))).size(), size);
    const QString twin = text_of(dir.filePath(QStringLiteral("a.txt")));
    QVERIFY2(twin.contains(QStringLiteral("No hub yet")), qPrintable(twin));
    QVERIFY2(twin.contains(QStringLiteral("ws://127.0.0.1:1")), qPrintable(twin));
  }

  void every_screen_opens_on_a_real_hub_without_a_warning_data() {
    a_screen_without_a_hub_says_so_in_its_picture_data();
  }
  void every_screen_opens_on_a_real_hub_without_a_warning() {
    QFETCH(QString, role);
    HubProcess hub;
    QVERIFY2(hub.start(), qPrintable(hub.trouble()));
    hub.tell(QStringLiteral("class.add"),
             {{QStringLiteral("toml"), floorwheel::tests::small_class_toml(4, 6)}});
    QTemporaryDir dir;
    const Ended e = screen({role, QStringLiteral("--hub"), hub.url().toString(), QStringLiteral("--state"),
                            dir.path(), QStringLiteral("--shot"), dir.filePath(QStringLiteral("a.png")),
                            QStringLiteral("--at"), QStringLiteral("now")});
    QCOMPARE(e.err, QString());
    QCOMPARE(e.code, 0);
    QVERIFY(!text_of(dir.filePath(QStringLiteral("a.txt"))).contains(QStringLiteral("No hub yet")));
  }

  void hands_wait_for_what_becomes_visible_and_take_pictures() {
    QTemporaryDir dir;
    const Ended e = screen(
        {QStringLiteral("wall"), QStringLiteral("--hub"), QStringLiteral("ws://127.0.0.1:1"),
         QStringLiteral("--state"), dir.path(), QStringLiteral("--hands"), QStringLiteral("-")},
        "# a comment\n\nawait No hub yet\nshot " + dir.filePath(QStringLiteral("b.png")).toUtf8() + "\n");
    QCOMPARE(e.err, QString());
    QCOMPARE(e.code, 0);
    QCOMPARE(
        e.out,
        QStringLiteral("done await No hub yet\ndone shot %1\n").arg(dir.filePath(QStringLiteral("b.png"))));
    QVERIFY(!QImage(dir.filePath(QStringLiteral("b.png"))).isNull());
  }

  void hands_that_find_nothing_fail_and_name_what_is_visible() {
    QTemporaryDir dir;
    const Ended e =
        screen({QStringLiteral("wall"), QStringLiteral("--hub"), QStringLiteral("ws://127.0.0.1:1"),
                QStringLiteral("--state"), dir.path(), QStringLiteral("--hands"), QStringLiteral("-"),
                QStringLiteral("--patience"), QStringLiteral("1")},
               "tap Moon\n");
    QCOMPARE(e.code, 1);
    QVERIFY2(e.err.contains(QStringLiteral("tap Moon")) && e.err.contains(QStringLiteral("No hub yet")),
             qPrintable(e.err));
  }

  void a_script_with_an_unknown_step_is_refused_with_its_line() {
    QTemporaryDir dir;
    QFile script(dir.filePath(QStringLiteral("s")));
    QVERIFY(script.open(QIODevice::WriteOnly));
    script.write("await x\njump y\n");
    script.close();
    const Ended e = screen({QStringLiteral("wall"), QStringLiteral("--state"), dir.path(),
                            QStringLiteral("--hands"), script.fileName()});
    QCOMPARE(e.code, 2);
    QVERIFY2(e.err.contains(script.fileName() + QStringLiteral(":2:1")), qPrintable(e.err));
  }

  void a_picture_in_no_folder_fails_and_leaves_nothing() {
    QTemporaryDir dir;
    const Ended e =
        screen({QStringLiteral("wall"), QStringLiteral("--hub"), QStringLiteral("ws://127.0.0.1:1"),
                QStringLiteral("--state"), dir.path(), QStringLiteral("--shot"),
                dir.filePath(QStringLiteral("none/a.png")), QStringLiteral("--at"), QStringLiteral("now")});
    QCOMPARE(e.code, 1);
    QVERIFY2(e.err.contains(QStringLiteral("none/a.png")), qPrintable(e.err));
  }

  void sigint_and_sigterm_end_it_cleanly_data() {
    QTest::addColumn<int>("signal");
    QTest::newRow("SIGINT") << SIGINT;
    QTest::newRow("SIGTERM") << SIGTERM;
  }
  void sigint_and_sigterm_end_it_cleanly() {
    QFETCH(int, signal);
    QTemporaryDir dir;
    QProcess p;
    p.start(bin(QStringLiteral("floorwheel-screen")),
            {QStringLiteral("wall"), QStringLiteral("--hub"), QStringLiteral("ws://127.0.0.1:1"),
             QStringLiteral("--state"), dir.path(), QStringLiteral("--hands"), QStringLiteral("-"),
             QStringLiteral("--stay")});
    p.write("await No hub yet\n");
    QVERIFY(p.waitForReadyRead(patience_ms));  // it is up
    ::kill(static_cast<pid_t>(p.processId()), signal);
    QVERIFY(p.waitForFinished(patience_ms));
    QCOMPARE(p.exitStatus(), QProcess::NormalExit);
    QCOMPARE(p.exitCode(), 0);
  }
};

QTEST_MAIN(TestScreenProgram)
#include "tst_screen_program.moc"
