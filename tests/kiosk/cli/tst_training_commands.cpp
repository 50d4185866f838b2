// SPDX-License-Identifier: GPL-3.0-or-later
// dose, next, strength, plates and fit as a person or a script meets them: the real program, its JSON, its
// exit codes, and its words about bad input, which name the entry.
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>
#include <QTest>

#include "tests/kiosk/cli/program.h"

namespace {

const QByteArray header = "member,exercise,performed_at,kind,load_kg,reps,rir,note\n";

QJsonObject json_of(const Ran& ran) {
  QJsonParseError error;
  const auto document = QJsonDocument::fromJson(ran.out, &error);
  if (error.error != QJsonParseError::NoError)
    qFatal("%s in %s%s", qPrintable(error.errorString()), ran.out.data(), ran.err.data());
  return document.object();
}

QByteArray row(const char* day, const char* load, int reps, const char* rir = "2", const char* note = "") {
  return QByteArray("m01,goblet-squat,") + day + "T18:30:00+01:00,working," + load + "," +
         QByteArray::number(reps) + "," + rir + "," + note + "\n";
}

}  // namespace

class TestTrainingCommands : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() {
    QVERIFY2(QFile::exists(program_path()), qPrintable(program_path()));
    QVERIFY(folder_.isValid());
    sets_ = folder_.filePath("sets.csv");
    write_file(sets_,
               header + row("2026-03-02", "8", 10) + row("2026-03-02", "8", 10) + row("2026-03-02", "8", 11));
  }

  void dose_has_the_columns_of_the_format() {
    const Ran ran = run_floorwheel({"dose", sets_, "--week", "2026-W10", "--json"});
    QCOMPARE(ran.code, 0);
    const QJsonArray rows = json_of(ran)["rows"].toArray();
    bool quadriceps = false;
    for (const auto& r : rows) {
      const QJsonObject o = r.toObject();
      QCOMPARE(o.keys(), (QStringList{"assisting_sets", "band", "days", "group", "member", "sets", "week"}));
      if (o["group"] != "quadriceps") continue;
      quadriceps = true;
      QCOMPARE(o["sets"].toInt(), 3);
      QCOMPARE(o["days"].toInt(), 1);
      QCOMPARE(o["band"].toString(), QString("3_to_9"));
      QCOMPARE(o["week"].toString(), QString("2026-W10"));
    }
    QVERIFY(quadriceps);
    QCOMPARE(
        json_of(run_floorwheel({"dose", sets_, "--week", "2026-W11", "--json"}))["rows"].toArray().size(), 0);
    const Ran text = run_floorwheel({"dose", sets_});
    for (const char* word :
         {"quadriceps", "3 to 9", "Schoenfeld 2017", "Baz-Valle 2022", "not medical advice"})
      QVERIFY2(text.out.contains(word), word);
  }

  void a_header_without_rows_is_an_empty_answer() {
    const QString empty = folder_.filePath("empty.csv");
    write_file(empty, header);
    const Ran ran = run_floorwheel({"dose", empty, "--json"});
    QCOMPARE(ran.code, 0);
    QVERIFY(json_of(ran)["rows"].toArray().isEmpty());
    const Ran next =
        run_floorwheel({"next", empty, "--member", "m01", "--exercise", "goblet-squat", "--json"});
    QCOMPARE(json_of(next)["rule"].toString(), QString("first"));
  }

  void next_answers_in_the_format() {
    const QStringList words{"next",         sets_,       "--member", "m01",       "--exercise",
                            "goblet-squat", "--reps",    "6-10",     "--sets",    "3",
                            "--loads",      "4,6,8,8.5", "--today",  "2026-03-05"};
    const QJsonObject a = json_of(run_floorwheel(words + QStringList{"--json"}));
    QCOMPARE(a.keys(), (QStringList{"ask_instructor", "change", "load_kg", "reason", "reps", "rule", "sets",
                                    "substitute"}));
    QCOMPARE(a["load_kg"].toDouble(), 8.5);
    QCOMPARE(a["rule"].toString(), QString("top-of-range"));
    QCOMPARE(a["change"].toString(), QString("up"));
    QCOMPARE(a["reps"].toArray(), (QJsonArray{6, 10}));
    QVERIFY(a["substitute"].isNull());
    const Ran text = run_floorwheel(words);
    QVERIFY(text.out.startsWith("m01, Goblet squat: 8.5 kg, 3 x 6-10"));
  }

  void pain_offers_a_substitute() {
    const QString path = folder_.filePath("pain.csv");
    write_file(path, header + row("2026-03-02", "8", 10, "2", "pain"));
    const QJsonObject a = json_of(run_floorwheel(
        {"next", path, "--member", "m01", "--exercise", "goblet-squat", "--today", "2026-03-03", "--json"}));
    QCOMPARE(a["rule"].toString(), QString("pain"));
    QVERIFY(!a["substitute"].toString().isEmpty());
    QVERIFY(a["ask_instructor"].toBool());
  }

  void an_override_is_kept_and_said() {
    const QString path = folder_.filePath("overrides.csv");
    const QByteArray columns =
        "member,exercise,decided_on,decided_by,load_kg,suggested_kg,suggested_change\n";
    write_file(path, columns + "m01,goblet-squat,2026-03-03,Kim,6,8.5,up\n");
    const QStringList words{"next",    sets_,       "--member", "m01",        "--exercise",  "goblet-squat",
                            "--loads", "4,6,8,8.5", "--today",  "2026-03-05", "--overrides", path};
    const QJsonObject a = json_of(run_floorwheel(words + QStringList{"--json"}));
    QCOMPARE(a["load_kg"].toInt(), 6);
    QCOMPARE(a["change"].toString(), QString("down"));
    QCOMPARE(a["override"].toObject()["decided_by"].toString(), QString("Kim"));
    write_file(path, columns + "m01,goblet-squat,2026-03-03,Kim,6,8.5,upp\n");
    const Ran bad = run_floorwheel(words);
    QCOMPARE(bad.code, 2);
    QVERIFY2(bad.err.contains(":2:39: suggested_change: \"upp\" is not known; write up, same or down"),
             bad.err.data());
  }

  void strength_and_plates_answer_in_the_format() {
    const QJsonObject s = json_of(run_floorwheel({"strength", "--load", "100", "--reps", "10", "--json"}));
    QCOMPARE(s["estimates"].toArray().size(), 7);
    QCOMPARE(s["percent_table"].toArray().size(), 11);
    const QJsonObject first = s["estimates"].toArray()[0].toObject();
    QCOMPARE(first["equation"].toString(), QString("epley"));
    QVERIFY(qAbs(first["one_rm_kg"].toDouble() - 133.333333) < 0.000001);
    const QJsonObject p =
        json_of(run_floorwheel({"plates", "--bar", "20", "--collars", "0", "--plates",
                                "25x2,20x2,10x2,5x2,2.5x2,1.25x2", "--target", "61", "--json"}));
    QCOMPARE(p["load_kg"].toInt(), 60);
    QCOMPARE(p["per_side"].toArray(), QJsonArray{20});
    QCOMPARE(p["exact"].toBool(), false);
    QCOMPARE(p["below_kg"].toInt(), 60);
    QCOMPARE(p["above_kg"].toDouble(), 62.5);
  }

  void fit_says_what_a_slot_holds() {
    const Ran good = run_floorwheel({"fit", "--work", "40", "--reps", "8-13", "--json"});
    QCOMPARE(good.code, 0);
    QCOMPARE(json_of(good)["holds_reps"].toInt(), 13);
    QCOMPARE(run_floorwheel({"fit", "--work", "40", "--reps", "8-14"}).code, 1);
    QCOMPARE(run_floorwheel({"fit", "--work", "30", "--change", "10", "--stations", "1", "--level", "novice"})
                 .code,
             1);
  }

  void a_bad_record_is_named_data() {
    QTest::addColumn<QByteArray>("line");
    QTest::addColumn<QByteArray>("says");
    QTest::newRow("negative load") << row("2026-03-02", "-4", 8)
                                   << QByteArray(":2:52: load_kg: \"-4\" is negative");
    QTest::newRow("heavy load") << row("2026-03-02", "601", 8)
                                << QByteArray(":2:52: load_kg: \"601\" is more than 600 kg");
    QTest::newRow("not a number") << row("2026-03-02", "NaN", 8)
                                  << QByteArray(":2:52: load_kg: \"NaN\" is no mass");
    QTest::newRow("decimal comma") << row("2026-03-02", "\"2,5\"", 8)
                                   << QByteArray(
                                          ":2:52: load_kg: \"2,5\" has a decimal comma; write a point: 2.5");
    QTest::newRow("bare comma") << row("2026-03-02", "2,5", 8) << QByteArray(":2:1: the line has 9 fields");
    QTest::newRow("no repetitions") << row("2026-03-02", "4", 0)
                                    << QByteArray(":2:54: reps: \"0\" is too few");
    QTest::newRow("negative repetitions")
        << row("2026-03-02", "4", -3) << QByteArray("reps: \"-3\" is negative");
    QTest::newRow("many repetitions")
        << row("2026-03-02", "4", 101) << QByteArray("reps: \"101\" is too many");
    QTest::newRow("reserve") << row("2026-03-02", "4", 8, "-1") << QByteArray("rir: \"-1\" is negative");
    QTest::newRow("note") << row("2026-03-02", "4", 8, "1", "pian")
                          << QByteArray("note: \"pian\" is not known");
    QTest::newRow("date") << row("2026-02-30", "4", 8)
                          << QByteArray(":2:18: performed_at: \"2026-02-30T18:30:00+01:00\" is no moment");
    QTest::newRow("exercise")
        << QByteArray("m01,goblet-sqat,2026-03-02T18:30:00Z,working,4,8,,\n")
        << QByteArray(
               ":2:5: exercise: \"goblet-sqat\" is no exercise of the table; did you mean goblet-squat?");
    QTest::newRow("kind") << QByteArray("m01,goblet-squat,2026-03-02T18:30:00Z,warmup,4,8,,\n")
                          << QByteArray("kind: \"warmup\" is not known; did you mean warm_up?");
    QTest::newRow("held too long") << QByteArray("m01,side-plank,2026-03-02T18:30:00Z,working,,601,,\n")
                                   << QByteArray(
                                          "reps: \"601\" is too many; write a whole number from 1 to 600");
  }
  void a_bad_record_is_named() {
    QFETCH(QByteArray, line);
    QFETCH(QByteArray, says);
    const QString path = folder_.filePath("bad.csv");
    write_file(path, header + line);
    for (const QStringList& words :
         {QStringList{"dose", path, "--json"},
          QStringList{"next", path, "--member", "m01", "--exercise", "goblet-squat", "--json"}}) {
      const Ran ran = run_floorwheel(words);
      QCOMPARE(ran.code, 2);
      QVERIFY2(ran.err.startsWith(path.toUtf8() + ":"), ran.err.data());
      QVERIFY2(ran.err.contains(says), ran.err.data());
      QVERIFY(ran.err.contains("; "));
      QCOMPARE(ran.out, QByteArray());
    }
  }

  void a_file_without_a_header_is_refused() {
    const QString path = folder_.filePath("bare.csv");
    for (const QByteArray& text :
         {QByteArray(), row("2026-03-02", "4", 8), QByteArray("member,exercise\n")}) {
      write_file(path, text);
      const Ran ran = run_floorwheel({"dose", path});
      QCOMPARE(ran.code, 2);
      QVERIFY2(ran.err.contains("column") || ran.err.contains("empty"), ran.err.data());
    }
  }

  void a_bad_option_is_named_data() {
    QTest::addColumn<QStringList>("words");
    QTest::addColumn<QByteArray>("says");
    const QStringList next{"next", sets_, "--member", "m01", "--exercise", "goblet-squat"};
    const QStringList bar{"plates", "--bar", "20", "--plates"};
    QTest::newRow("no weights") << next + QStringList{"--loads", ""}
                                << QByteArray("--loads: a rack of no weights");
    QTest::newRow("load NaN") << next + QStringList{"--loads", "4,nan"}
                              << QByteArray("--loads: \"nan\" is no mass");
    QTest::newRow("load negative") << next + QStringList{"--loads", "4,-6"}
                                   << QByteArray("--loads: \"-6\" is negative");
    QTest::newRow("range") << next + QStringList{"--reps", "10-6"}
                           << QByteArray("--reps: \"10-6\" is no range");
    QTest::newRow("range of none") << next + QStringList{"--reps", "0-6"}
                                   << QByteArray("--reps: \"0-6\" is no range");
    QTest::newRow("range absurd") << next + QStringList{"--reps", "6-101"} << QByteArray("--reps: \"6-101\"");
    QTest::newRow("no sets") << next + QStringList{"--sets", "0"} << QByteArray("--sets is \"0\"");
    QTest::newRow("today") << next + QStringList{"--today", "5.3.2026"}
                           << QByteArray("--today: \"5.3.2026\" is no date");
    QTest::newRow("exercise") << QStringList{"next", sets_, "--member", "m01", "--exercise", "x"}
                              << QByteArray("--exercise: there is no exercise \"x\"");
    QTest::newRow("week") << QStringList{"dose", sets_, "--week", "2025-W53"}
                          << QByteArray("--week: \"2025-W53\"");
    QTest::newRow("no discs") << bar + QStringList{"", "--target", "60"}
                              << QByteArray("--plates: a rack of no weights");
    QTest::newRow("no pieces") << bar + QStringList{"20x0", "--target", "60"}
                               << QByteArray("--plates: \"20x0\"");
    QTest::newRow("heavy bar") << bar + QStringList{"20x2", "--target", "18"}
                               << QByteArray("--target: bar and collars weigh 20 kg, more than 18 kg");
    QTest::newRow("comma") << bar + QStringList{"20x2", "--target", "61,5"}
                           << QByteArray("--target: \"61,5\" has a decimal comma; write a point: 61.5");
    QTest::newRow("no load") << QStringList{"strength", "--load", "0", "--reps", "5"}
                             << QByteArray("--load is 0");
    QTest::newRow("absurd load") << QStringList{"strength", "--load", "601", "--reps", "5"}
                                 << QByteArray("--load: \"601\" is more than 600 kg");
    QTest::newRow("no equation") << QStringList{"strength", "--load", "60", "--reps", "20"}
                                 << QByteArray("--reps: no equation holds for 20 repetitions; write 1 to 15");
    QTest::newRow("effort") << QStringList{"strength", "--effort", "6.5"}
                            << QByteArray("--effort is \"6.5\"");
  }
  void a_bad_option_is_named() {
    QFETCH(QStringList, words);
    QFETCH(QByteArray, says);
    const Ran ran = run_floorwheel(words);
    QVERIFY2(ran.err.contains(says), ran.err.data());
    QVERIFY(ran.err.contains("; "));
    QCOMPARE(ran.code, 2);
    QCOMPARE(ran.out, QByteArray());
  }

 private:
  QTemporaryDir folder_;
  QString sets_;
};

QTEST_APPLESS_MAIN(TestTrainingCommands)
#include "tst_training_commands.moc"
