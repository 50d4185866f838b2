// SPDX-License-Identifier: GPL-3.0-or-later
// A hub that cannot start says why and what to do, ends with 2, and leaves what it found as it was: a folder
// that cannot be written, a file in its place, a port that is taken, another address, a newer database,
// another program's, and a file that is none.
#include <grp.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QTcpServer>
#include <QtTest>

#include "tests/kiosk/hub/hub_client.h"

using namespace floorwheel;
using namespace floorwheel::testing;

namespace {

struct Ended {
  int code = -1;
  QString output;
  QString errors;
};

Ended start(const QString& data, const QStringList& more = {}) {
  TestHub hub(data, more);
  if (hub.listening()) return {.code = -2, .output = "it listens", .errors = {}};
  wait_until([&hub] { return hub.process().state() == QProcess::NotRunning; });
  return {.code = hub.process().exitCode(),
          .output = QString::fromUtf8(hub.process().readAllStandardOutput()),
          .errors = hub.errors() + QString::fromUtf8(hub.process().readAllStandardError())};
}

QByteArray bytes(const QString& path) {
  QFile f(path);
  return f.open(QIODevice::ReadOnly) ? f.readAll() : QByteArray("missing");
}

void execute(const QString& path, const char* script) {
  sqlite3* db = nullptr;
  if (sqlite3_open(path.toUtf8().constData(), &db) != SQLITE_OK ||
      sqlite3_exec(db, script, nullptr, nullptr, nullptr) != SQLITE_OK)
    qFatal("%s", sqlite3_errmsg(db));
  sqlite3_close(db);
}

}  // namespace

class TestBadStart : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void init() {
    folder_ = std::make_unique<QTemporaryDir>();
    QVERIFY(QDir().mkpath(data()));
  }

  void a_file_that_is_no_database_is_left_alone() {
    QFile f(db());
    QVERIFY(f.open(QIODevice::WriteOnly));
    f.write("Dear diary, today the ring went round twice. ");
    f.write(QByteArray(5000, 'x'));
    f.close();
    refused_and_unchanged("is not a database", "--data");
  }

  void another_programs_database_is_left_alone() {
    execute(db(), "PRAGMA application_id = 7; CREATE TABLE t(x); INSERT INTO t VALUES(1);");
    refused_and_unchanged("belongs to another program", "--data");
    QFile::remove(db());
    execute(db(), "CREATE TABLE t(x); INSERT INTO t VALUES(1);");  // says nothing of whose it is
    refused_and_unchanged("belongs to another program", "--data");
  }

  void a_newer_database_is_left_alone() {
    {
      TestHub hub(data());
      QVERIFY(hub.listening());
      QVERIFY(hub.end());
    }
    execute(db(), "PRAGMA user_version = 9000;");
    refused_and_unchanged("schema 9000", "newer program");
  }

  void a_file_in_the_folders_place_is_named() {
    QFile f(folder_->path() + "/file");
    QVERIFY(f.open(QIODevice::WriteOnly));
    f.write("here");
    f.close();
    const Ended e = start(f.fileName());
    QCOMPARE(e.code, 2);
    QVERIFY2(e.errors.contains(f.fileName()) && e.errors.contains("--data"), qPrintable(e.errors));
    QCOMPARE(bytes(f.fileName()), QByteArray("here"));
  }

  void a_folder_that_cannot_be_written_is_named() {
    {
      TestHub hub(data());
      QVERIFY(hub.listening());
      QVERIFY(hub.end());
    }
    // Nobody's rights bite root, so as root the hub runs as nobody, from a place that everybody may read.
    const QString program = folder_->path() + "/hub";
    QVERIFY(QFile::copy(TestHub::program(), program));
    for (const QString& path : {folder_->path(), data()}) ::chmod(path.toUtf8().constData(), 0555);
    ::chmod(db().toUtf8().constData(), 0444);
    ::chmod((data() + "/hub.lock").toUtf8().constData(), 0444);
    ::chmod(program.toUtf8().constData(), 0555);
    const QByteArray before = bytes(db());
    QProcess hub;
    if (::geteuid() == 0)
      hub.setChildProcessModifier([] {
        if (::setgroups(0, nullptr) != 0 || ::setgid(65534) != 0 || ::setuid(65534) != 0) ::_exit(99);
      });
    hub.start(program, {"--data", data()});
    QVERIFY(wait_until([&hub] { return hub.state() == QProcess::NotRunning; }));
    const QString errors = QString::fromUtf8(hub.readAllStandardError());
    QVERIFY2(hub.exitStatus() == QProcess::NormalExit && hub.exitCode() == 2, qPrintable(errors));
    QVERIFY2(errors.contains("cannot be written") && errors.contains(data()) && errors.contains("--data"),
             qPrintable(errors));
    QCOMPARE(bytes(db()), before);
    for (const QString& path : {folder_->path(), data()}) ::chmod(path.toUtf8().constData(), 0755);
  }

  void a_port_that_is_taken_is_named() {
    QTcpServer other;
    QVERIFY(other.listen(QHostAddress::LocalHost, 0));
    const Ended e = start(data(), {"--listen", QString("127.0.0.1:%1").arg(other.serverPort())});
    QCOMPARE(e.code, 2);
    QVERIFY2(e.errors.contains(QString::number(other.serverPort())) && e.errors.contains("is taken") &&
                 e.errors.contains("--listen"),
             qPrintable(e.errors));
    QVERIFY(e.output.isEmpty());
  }

  void any_other_address_is_refused_with_the_reason() {
    for (const char* where : {"0.0.0.0:7413", "192.168.1.4:7413", "[::1]:7413", "localhost:7413", "7413"}) {
      const Ended e = start(data(), {"--listen", where});
      QCOMPARE(e.code, 2);
      QVERIFY2(e.errors.contains("cannot be joined securely yet"), qPrintable(e.errors));
    }
    const Ended e = start(data(), {"--listen", "127.0.0.1:70000"});
    QCOMPARE(e.code, 2);
    QVERIFY2(e.errors.contains("0 to 65535"), qPrintable(e.errors));
  }

  void a_second_hub_on_the_same_folder_is_refused() {
    TestHub first(data());
    QVERIFY(first.listening());
    const Ended e = start(data());
    QCOMPARE(e.code, 2);
    QVERIFY2(e.errors.contains("Another hub"), qPrintable(e.errors));
    QVERIFY(first.end());
  }

  void a_speed_that_is_no_factor_is_refused() {
    for (const char* speed : {"0", "-1", "nan", "1e9"}) {
      const Ended e = start(data(), {"--speed", speed});
      QCOMPARE(e.code, 2);
      QVERIFY(e.errors.contains("speed"));
    }
  }

 private:
  [[nodiscard]] QString data() const { return folder_->path() + "/data"; }
  [[nodiscard]] QString db() const { return data() + "/floorwheel.db"; }
  void refused_and_unchanged(const char* what, const char* right) {
    const QByteArray before = bytes(db());
    const Ended e = start(data());
    QCOMPARE(e.code, 2);
    QVERIFY2(e.errors.contains(what) && e.errors.contains(right) && e.errors.contains(db()),
             qPrintable(e.errors));
    QCOMPARE(bytes(db()), before);
  }
  std::unique_ptr<QTemporaryDir> folder_;
};

QTEST_GUILESS_MAIN(TestBadStart)
#include "tst_bad_start.moc"
