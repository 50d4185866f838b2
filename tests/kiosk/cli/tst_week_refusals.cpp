// SPDX-License-Identifier: GPL-3.0-or-later
// What `floorwheel week` says of files it cannot read (2) and of weeks that cannot hold (1): each by its own
// entry, with what would be right.
#include <QTemporaryDir>
#include <QTest>

#include "tests/kiosk/cli/program.h"
#include "tests/kiosk/cli/small_week.h"

class TestWeekRefusals : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() {
    QVERIFY2(QFile::exists(program_path()), qPrintable(program_path()));
    QVERIFY(folder_.isValid());
  }

  void bad_input_names_the_entry_data() {
    QTest::addColumn<QByteArray>("from");
    QTest::addColumn<QByteArray>("to");
    QTest::addColumn<QByteArray>("says");
    const auto row = [](const char* name, const char* from, const char* to, const char* says) {
      QTest::newRow(name) << QByteArray(from) << QByteArray(to) << QByteArray(says);
    };
    row("exercise", "goblet-squat", "goblet-squad",
        ":14:9: keep of a [[class]]: there is no exercise goblet-squad; did you mean goblet-squat?");
    row("kept twice", "keep = [", "keep = [\"goblet-squat\", ", "names goblet-squat twice");
    row("group", "neck =", "nekc =", "3:35: target_sets has no key nekc; did you mean neck?");
    row("kind",
        "kettlebell =", "kettlebel =", ":13:15: equipment has no key kettlebel; did you mean kettlebell?");
    row("key", "laps =", "lapps =", "has no key lapps; did you mean laps?");
    row("week key", "name =", "nam =", "[week] has no key nam; did you mean name?");
    row("table", "[[class]]", "[[clas]]", "has no key clas; did you mean class?");
    row("day", "Tuesday", "Tusday",
        ":6:7: day of a [[class]]: there is no day of the week Tusday; did you mean Tuesday?");
    row("level", "novice", "novise", "there is no level novise; did you mean novice?");
    row("no stations", "stations = 4", "stations = 0",
        ":9:12: stations of a [[class]] is 0; write a number from 1 to 100");
    row("target down", "[2, 8]", "[9, 3]",
        "default of target_sets ends below its beginning; write default = [6, 12]");
    row("target below 0", "[2, 8]", "[-1, 3]", "default of target_sets is -1; write a number from 0");
    row("target alone", "[2, 8]", "2", "default of target_sets is no list in [ ]; write default = [6, 12]");
    row("negative units", "mat = 2", "mat = -2", "mat of equipment is -2");
    row("no laps", "laps = 2", "laps = 0", "laps of a [[class]] is 0");
    row("no work", "work_s = 40\n", "", "a [[class]] has no work_s; write work_s = 40");
    row("text for number", "stations = 4", "stations = \"4\"", "stations of a [[class]] is no whole number");
    row("no name", "name = \"W\"\n", "", "[week] has no name");
    row("no targets", "target_sets = { default = [2, 8], neck = [0, 6] }\n", "", "[week] has no target_sets");
    row("no week", "[week]\nname = \"W\"\ntarget_sets = { default = [2, 8], neck = [0, 6] }\n", "",
        ":1:1: the file has no [week]");
    row("class alone", "[[class]]", "[class]", "class is no list of tables; write [[class]]");
  }
  void bad_input_names_the_entry() {
    QFETCH(QByteArray, from);
    QFETCH(QByteArray, to);
    QFETCH(QByteArray, says);
    const QString path = folder_.filePath("bad.week.toml");
    write_file(path, small_week(from, to));
    const Ran ran = run_floorwheel({"week", path});
    QCOMPARE(ran.code, 2);
    QVERIFY2(ran.err.contains(says), ran.err.data());
    QVERIFY2(ran.err.startsWith(path.toUtf8() + ":"), ran.err.data());
    QVERIFY(ran.out.isEmpty());
  }

  void a_week_of_no_classes_cannot_be_read() {
    const QString path = folder_.filePath("none.week.toml");
    write_file(path, "[week]\nname = \"W\"\ntarget_sets = { default = [2, 8] }\n");
    const Ran ran = run_floorwheel({"week", path});
    QCOMPARE(ran.code, 2);
    QVERIFY2(ran.err.contains(":1:1: the week has no classes; write [[class]]"), ran.err.data());
    QCOMPARE(run_floorwheel({"week", folder_.filePath("not-there.week.toml")}).code, 2);
  }

  void what_cannot_hold_is_refused_with_its_reason_data() {
    QTest::addColumn<QByteArray>("from");
    QTest::addColumn<QByteArray>("to");
    QTest::addColumn<QByteArray>("says");
    const auto row = [](const char* name, const char* from, const char* to, const char* says) {
      QTest::newRow(name) << QByteArray(from) << QByteArray(to) << QByteArray(says);
    };
    row("time", "length_min = 60", "length_min = 7",
        "take 8 slots of 60 s, 480 s in all, and length_min gives 420 s");
    row("kept without equipment", "kettlebell = 2, ", "",
        "goblet-squat is to be kept and needs a kettlebell; the class has 0");
    row("too many kept", "keep = [", "keep = [\"plank\", \"crunch\", \"wall-slide\", \"toe-raise\", ",
        "5 exercises are to be kept at 4 stations; keep fewer");
    row("one station", "stations = 4", "stations = 1", "its one station follows itself in every lap");
    // Four exercises need nothing, two take kettlebells, two mats.
    row("too many stations", "stations = 4", "stations = 9",
        "its equipment allows 8 different exercises at once, and it has 9 stations");
    row("no ring", "keep = [\"goblet-squat\"]", "keep = [\"goblet-squat\", \"wall-sit\", \"squat-jump\"]",
        "have an order without neighbours that share a primary group");
  }
  void what_cannot_hold_is_refused_with_its_reason() {
    QFETCH(QByteArray, from);
    QFETCH(QByteArray, to);
    QFETCH(QByteArray, says);
    const QString path = folder_.filePath("refused.week.toml");
    write_file(path, small_week(from, to));
    const QString out = folder_.filePath("refused");
    const Ran ran = run_floorwheel({"week", path, "--out", out});
    QCOMPARE(ran.code, 1);
    QVERIFY2(ran.err.contains("class 1, Tuesday: ") && ran.err.contains(says), ran.err.data());
    QVERIFY(ran.out.isEmpty() && !QFile::exists(out));
    const QJsonObject json = json_of(run_floorwheel({"week", path, "--json"}));
    QCOMPARE(json["format"].toString(), QString("floorwheel-refusal"));
    QVERIFY(json["reason"].toString().toUtf8().contains(says));
  }

 private:
  QTemporaryDir folder_;
};

QTEST_APPLESS_MAIN(TestWeekRefusals)
#include "tst_week_refusals.moc"
