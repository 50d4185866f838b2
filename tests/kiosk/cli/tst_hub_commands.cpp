// SPDX-License-Identifier: GPL-3.0-or-later
// hub, tell, ask, report and doctor with a real hub on a port of its own: receipts, refusals, a hub that is
// away, the desk's tables as CSV, and the same tables from the folder when no hub runs.
#include <QDir>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTcpServer>
#include <QTemporaryDir>
#include <QTest>

#include "tests/kiosk/cli/program.h"
#include "tests/kiosk/files/example.h"

namespace {

QJsonObject json_of(const QByteArray& text) {
  const auto document = QJsonDocument::fromJson(text);
  if (!document.isObject()) qFatal("no JSON object: %s", text.data());
  return document.object();
}

QString compact(const QJsonObject& object) {
  return QString::fromUtf8(QJsonDocument(object).toJson(QJsonDocument::Compact));
}

}  // namespace

class TestHubCommands : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() {
    QVERIFY(folder_.isValid());
    data_ = folder_.filePath("data");
    class_file_ = folder_.filePath("x.class.toml");
    write_file(class_file_, QByteArray::fromStdString(example::class_file));
    // --speed 1000: an evening class is over in seconds.
    hub_.setProcessChannelMode(QProcess::ForwardedErrorChannel);
    hub_.start(program_path(), {"hub", "--data", data_, "--listen", "127.0.0.1:0", "--speed", "1000"});
    while (!hub_.canReadLine()) QVERIFY(hub_.waitForReadyRead(30'000));
    const QByteArray first = hub_.readLine();
    const QString address = json_of(first)["listening"].toString();
    QVERIFY2(address.startsWith("127.0.0.1:"), first.data());
    QCOMPARE(first, "{\"listening\":\"" + address.toUtf8() + "\"}\n");
    url_ = "ws://" + address;
  }

  void cleanupTestCase() {
    if (hub_.state() == QProcess::NotRunning) return;
    hub_.terminate();
    QVERIFY(hub_.waitForFinished(30'000));
    QCOMPARE(hub_.exitCode(), 0);
  }

  void a_class_file_is_kept_and_answered_with_a_receipt() {
    const Ran ran = run_floorwheel({"tell", "class.add", "@" + class_file_, "--hub", url_});
    QVERIFY2(ran.code == 0, ran.err.data());
    const QJsonObject receipt = json_of(ran.out);
    QVERIFY(receipt["seq"].toInt() > 0);
    class_ = receipt["body"].toObject()["class"].toString();
    QVERIFY(!class_.isEmpty());
    const Ran asked = run_floorwheel({"ask", "classes", "--hub", url_});
    QCOMPARE(asked.code, 0);
    QCOMPARE(json_of(asked.out)["classes"].toArray()[0].toObject()["name"].toString(),
             QString("Thursday evening ring"));
  }

  void the_same_id_again_gets_the_same_receipt() {
    const QString id = "0b8f4e5c-6a1d-4e7b-9c2a-1f3e5d7c9b0a";
    const QStringList words{"tell", "class.open", compact({{"class", class_}}), "--id", id, "--hub", url_};
    const Ran once = run_floorwheel(words);
    QVERIFY2(once.code == 0, once.err.data());
    const Ran again = run_floorwheel(words);
    QCOMPARE(again.out, once.out);
    QCOMPARE(json_of(once.out)["id"].toString(), id);
  }

  void a_body_from_standard_input() {
    const Ran ran = run_floorwheel({"tell", "check_in", "-", "--hub", url_},
                                   compact({{"class", class_}, {"member", "m01"}}).toUtf8());
    QVERIFY2(ran.code == 0, ran.err.data());
  }

  void what_is_refused_ends_with_1() {
    const Ran ran =
        run_floorwheel({"tell", "class.publish", compact({{"class", class_}, {"saw", 7}, {"proposal", "x"}}),
                        "--hub", url_});
    QVERIFY2(ran.code == 1, ran.err.data());
    QVERIFY(ran.err.startsWith("floorwheel tell: "));
    const QJsonObject trouble = json_of(ran.out);
    QCOMPARE(trouble["code"].toString(), QString("stale"));
    QVERIFY(!trouble["text"].toString().isEmpty());
  }

  void what_cannot_be_read_ends_with_2_data() {
    QTest::addColumn<QStringList>("words");
    QTest::addColumn<QByteArray>("says");
    QTest::newRow("unknown kind") << QStringList{"tell", "chek_in", "{}"}
                                  << QByteArray(
                                         "floorwheel tell: there is no kind chek_in; did you mean "
                                         "check_in?\n");
    QTest::newRow("no kind") << QStringList{"ask"}
                             << QByteArray("floorwheel ask: KIND is missing; --list prints every kind\n");
    QTest::newRow("no object") << QStringList{"tell", "check_in", "[]"}
                               << QByteArray(
                                      "floorwheel tell: the body is no JSON object; write { } with the "
                                      "fields: class, member\n");
    QTest::newRow("no url") << QStringList{"ask", "health", "--hub", "http://x"}
                            << QByteArray(
                                   "floorwheel ask: \"http://x\" is no address of a hub; write it as "
                                   "ws://127.0.0.1:7413\n");
    QTest::newRow("no report") << QStringList{"report", "atendance"}
                               << QByteArray(
                                      "floorwheel report: there is no report atendance; did you mean "
                                      "attendance?\n");
    QTest::newRow("no day") << QStringList{"report", "attendance", "--from", "March"}
                            << QByteArray(
                                   "floorwheel report: --from is \"March\"; write a day such as "
                                   "2026-03-01\n");
  }
  void what_cannot_be_read_ends_with_2() {
    QFETCH(QStringList, words);
    QFETCH(QByteArray, says);
    const Ran ran = run_floorwheel(words);
    QCOMPARE(ran.err, says);
    QCOMPARE(ran.code, 2);
  }

  void the_hub_names_the_field_it_does_not_know() {
    const Ran ran = run_floorwheel({"tell", "check_in", R"({"clas":"x","member":"m01"})", "--hub", url_});
    QCOMPARE(ran.code, 2);
    QCOMPARE(json_of(ran.out)["code"].toString(), QString("bad_body"));
  }

  void a_hub_that_is_away_is_said_with_what_to_do() {
    QTcpServer none;  // a port that is certainly ours, then given up
    QVERIFY(none.listen(QHostAddress::LocalHost));
    const QString url = "ws://127.0.0.1:" + QString::number(none.serverPort());
    none.close();
    for (const QStringList& words :
         {QStringList{"ask", "health"}, QStringList{"tell", "class.hold", "{\"class\":\"x\"}"},
          QStringList{"report", "frequency"}, QStringList{"report", "run-sheet"}}) {
      const Ran ran = run_floorwheel(words + QStringList{"--hub", url});
      QCOMPARE(ran.code, 2);
      QVERIFY2(ran.err.contains("no hub answers at " + url.toUtf8()), ran.err.data());
      QVERIFY(ran.err.contains("start one with `floorwheel hub`"));
    }
  }

  void every_kind_is_listed_with_its_fields() {
    const Ran tell = run_floorwheel({"tell", "--list"});
    QCOMPARE(tell.code, 0);
    // The kinds the hub must have at least.
    for (const char* kind : {"member.add",  "class.open",   "check_in",     "heads.count",    "class.publish",
                             "class.start", "class.hold",   "class.resume", "class.skip",     "class.late",
                             "class.leave", "class.repeat", "class.stop",   "class.over",     "station.close",
                             "station.set", "answer.today", "record.add",   "record.correct", "class.end"})
      QVERIFY2(
          tell.out.startsWith(QByteArray(kind) + "\n") || tell.out.contains("\n" + QByteArray(kind) + "\n"),
          kind);
    QVERIFY(tell.out.contains("fields: class, member"));
    QVERIFY(run_floorwheel({"ask", "--list"}).out.contains("attendance"));
  }

  // m01 and m02 are on the list with one guest; m01 came, and a guest.
  void the_desks_tables_are_csv_of_four_and_three_columns() {
    const Ran ended = run_floorwheel({"tell", "class.end", compact({{"class", class_}}), "--hub", url_});
    QVERIFY2(ended.code == 0, ended.err.data());
    const Ran attendance = run_floorwheel({"report", "attendance", "--csv", "--hub", url_});
    QVERIFY2(attendance.code == 0, attendance.err.data());
    const QList<QByteArray> lines = attendance.out.split('\n');
    QCOMPARE(lines[0], QByteArray("class,date,expected,here\r"));
    QVERIFY2(lines[1].startsWith("Thursday evening ring,2") && lines[1].endsWith(",3,1\r"), lines[1].data());
    QCOMPARE(lines.size(), 3);  // and nothing after the last line end
    const Ran frequency = run_floorwheel({"report", "frequency", "--csv", "--hub", url_});
    QVERIFY(frequency.out.startsWith("member,iso_week,visits\r\nm01,2"));
    QVERIFY(frequency.out.endsWith(",1\r\n"));

    // The same from the folder, while the hub runs.
    QCOMPARE(run_floorwheel({"report", "attendance", "--csv", "--data", data_}).out, attendance.out);
    QCOMPARE(run_floorwheel({"report", "frequency", "--csv", "--data", data_}).out, frequency.out);
    QVERIFY(run_floorwheel({"report", "frequency", "--hub", url_}).out.contains("Robin K."));
    QCOMPARE(run_floorwheel({"report", "attendance", "--csv", "--to", "2020-01-01", "--hub", url_}).out,
             QByteArray("class,date,expected,here\r\n"));
    QCOMPARE(run_floorwheel({"report", "attendance", "--data", folder_.path()}).code, 2);
  }

  void the_doctor_sees_hub_and_database() {
    const Ran ran = run_floorwheel({"doctor", "--data", data_, "--hub", url_});
    QVERIFY2(ran.out.contains("answers at " + url_.toUtf8()), ran.out.data());
    QVERIFY(ran.out.contains("floorwheel.db is sound"));
    const QString broken = folder_.filePath("broken");
    QVERIFY(QDir().mkpath(broken));
    write_file(broken + "/floorwheel.db", QByteArray(4096, 'x'));
    const Ran wrong = run_floorwheel({"doctor", "--data", broken, "--hub", url_});
    QCOMPARE(wrong.code, 1);
    QVERIFY2(wrong.out.contains("is not a database"), wrong.out.data());
    QCOMPARE(file_text(broken + "/floorwheel.db"), QByteArray(4096, 'x'));
  }

  void a_hub_file_is_read_and_an_option_wins() {
    const QString file = folder_.filePath("hub.toml");
    write_file(file, "[hub]\nlisten = \"127.0.0.1:0\"\nsped = 2\n");
    const Ran key = run_floorwheel({"hub", "--config", file});
    QCOMPARE(key.code, 2);
    QCOMPARE(key.err, file.toUtf8() + ":3:1: [hub] has no key sped; did you mean speed?\n");
    write_file(file, "[hub]\nlisten = \"127.0.0.1:0\"\nspeed = -1\n");
    QCOMPARE(run_floorwheel({"hub", "--config", file}).code, 2);
    // The folder of the running hub: taken, said, left alone.
    write_file(file, "[hub]\ndata = \"/nowhere\"\n");
    const Ran taken = run_floorwheel({"hub", "--config", file, "--data", data_, "--listen", "127.0.0.1:0"});
    QCOMPARE(taken.code, 2);
    QVERIFY2(taken.err.contains("Another hub is using the data folder"), taken.err.data());
    QCOMPARE(taken.out, QByteArray());
  }

 private:
  QTemporaryDir folder_;
  QString data_;
  QString class_file_;
  QString url_;
  QString class_;
  QProcess hub_;
};

QTEST_GUILESS_MAIN(TestHubCommands)
#include "tst_hub_commands.moc"
