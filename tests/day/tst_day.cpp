// SPDX-License-Identifier: GPL-3.0-or-later
// Door to desk report: a hub and four screens as processes joined by sockets, people played by touch events
// on a class of another size than the demo's. What then stands in the store is read by this test's own SQL. A
// second day without the touch screen must come out otherwise: the gate's wrong twin.
#include <sqlite3.h>

#include <QFile>
#include <QProcess>
#include <QTemporaryDir>
#include <QTest>

namespace {

QString programs() { return qEnvironmentVariable("FLOORWHEEL_BIN"); }
QString here() { return qEnvironmentVariable("FLOORWHEEL_SOURCE") + QStringLiteral("/tests/day"); }

struct Day {
  int exit_code = -1;
  QString printed;
};

Day play(const QString& script, const QString& folder) {
  QProcess process;
  process.setProcessChannelMode(QProcess::MergedChannels);
  process.start(
      programs() + QStringLiteral("/floorwheel"),
      {QStringLiteral("play"), script, QStringLiteral("--class"), here() + QStringLiteral("/hall.class.toml"),
       QStringLiteral("--data"), folder + QStringLiteral("/data"), QStringLiteral("--pictures"),
       folder + QStringLiteral("/pictures"), QStringLiteral("--speed"), QStringLiteral("10")});
  process.waitForFinished(200'000);
  return {process.exitStatus() == QProcess::NormalExit ? process.exitCode() : -1,
          QString::fromUtf8(process.readAll())};
}

/// The one number this SQL gives, or -1.
int number(const QString& folder, const char* sql) {
  sqlite3* db = nullptr;
  sqlite3_open_v2((folder + QStringLiteral("/data/floorwheel.db")).toUtf8().constData(), &db,
                  SQLITE_OPEN_READONLY, nullptr);
  sqlite3_stmt* statement = nullptr;
  int result = -1;
  if (sqlite3_prepare_v2(db, sql, -1, &statement, nullptr) == SQLITE_OK &&
      sqlite3_step(statement) == SQLITE_ROW)
    result = sqlite3_column_int(statement, 0);
  sqlite3_finalize(statement);
  sqlite3_close(db);
  return result;
}

}  // namespace

class TestDay : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void a_class_goes_from_check_in_to_the_desk() {
    QTemporaryDir folder;
    const Day day = play(here() + QStringLiteral("/hall.play"), folder.path());
    QVERIFY2(day.exit_code == 0, qPrintable(day.printed));
    QCOMPARE(number(folder.path(), "SELECT count(*) FROM check_in WHERE member IN ('n1', 'n2', 'n3')"), 3);
    QCOMPARE(number(folder.path(), "SELECT count(*) FROM set_record WHERE done = 1"), 2);
    QCOMPARE(number(folder.path(), "SELECT max(version) FROM run_sheet"), 2);
    QCOMPARE(number(folder.path(), "SELECT count(*) FROM class WHERE ended_ms IS NOT NULL"), 1);
    QVERIFY(day.printed.contains(QStringLiteral("Small hall")));
    QVERIFY(QFile::exists(folder.path() + QStringLiteral("/pictures/desk.png")));
  }

  // The same day with the touch screen switched off before it: nobody checks in there and no set is kept.
  void without_the_touch_screen_the_day_is_another() {
    QTemporaryDir folder;
    QFile script(folder.path() + QStringLiteral("/hall.play"));
    QFile original(here() + QStringLiteral("/hall.play"));
    QVERIFY(original.open(QIODevice::ReadOnly) && script.open(QIODevice::WriteOnly));
    QByteArray lines = "touch end\n" + original.readAll();
    lines.replace("tap 3 are here", "tap All 4 are here");  // nobody checked in: the count is the list
    lines.replace("instructor tap Xenia C.", "instructor tap A guest");
    script.write(lines);
    script.close();
    const Day day = play(script.fileName(), folder.path());
    QVERIFY2(day.exit_code == 1, qPrintable(day.printed));
    QCOMPARE(number(folder.path(), "SELECT count(*) FROM set_record"), 0);
    QVERIFY(day.printed.contains(QStringLiteral("is gone: left out: tap Vera Q.")));
  }
};

QTEST_GUILESS_MAIN(TestDay)
#include "tst_day.moc"
