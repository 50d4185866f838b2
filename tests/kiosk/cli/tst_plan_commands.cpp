// SPDX-License-Identifier: GPL-3.0-or-later
// plan, audit, repair and exercises as a person or a script meets them: the real program, its exit codes, its
// words on stderr. bad/ holds class files that cannot be read, clash/ classes that cannot hold; each says in
// its first lines what must be answered.
#include <QDir>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>
#include <QTest>

#include "tests/kiosk/cli/program.h"
#include "tests/kiosk/files/example.h"

namespace {

const QString cases = "tests/kiosk/cli/";

/// The text after `# key: ` in the head of a case.
QByteArray said(const QByteArray& text, const QByteArray& key) {
  const QByteArray mark = "# " + key + ": ";
  const qsizetype at = text.indexOf(mark);
  return at < 0 ? QByteArray() : text.mid(at + mark.size(), text.indexOf('\n', at) - at - mark.size());
}

void rows_for_files(const QString& folder) {
  QTest::addColumn<QString>("path");
  const QDir dir(source_path(cases + folder));
  for (const QString& name : dir.entryList({"*.class.toml"}, QDir::Files))
    QTest::newRow(qPrintable(name)) << dir.filePath(name);
}

QJsonObject json_of(const QByteArray& text) {
  QJsonParseError error;
  const auto document = QJsonDocument::fromJson(text, &error);
  if (error.error != QJsonParseError::NoError)
    qFatal("%s in %s", qPrintable(error.errorString()), text.data());
  return document.object();
}

}  // namespace

class TestPlanCommands : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() {
    QVERIFY2(QFile::exists(program_path()), qPrintable(program_path()));
    QVERIFY(folder_.isValid());
    class_ = folder_.filePath("x.class.toml");
    write_file(class_, QByteArray::fromStdString(example::class_file));
  }

  void a_file_that_cannot_be_read_ends_with_2_data() { rows_for_files("bad"); }
  void a_file_that_cannot_be_read_ends_with_2() {
    QFETCH(QString, path);
    const QByteArray says = said(file_text(path), "says");
    QVERIFY(!says.isEmpty());
    for (const QStringList& words : {QStringList{"plan", path}, QStringList{"plan", path, "--json"}}) {
      const Ran ran = run_floorwheel(words);
      QCOMPARE(ran.err, path.toUtf8() + says + "\n");
      QCOMPARE(ran.code, 2);
      QCOMPARE(ran.out, QByteArray());
    }
  }

  void a_class_that_cannot_hold_ends_with_1_data() { rows_for_files("clash"); }
  void a_class_that_cannot_hold_ends_with_1() {
    QFETCH(QString, path);
    const QByteArray text = file_text(path);
    const Ran ran = run_floorwheel({"plan", path});
    QCOMPARE(ran.code, 1);
    QCOMPARE(ran.out, QByteArray());
    QVERIFY2(ran.err.startsWith(path.toUtf8() + ": cannot be planned (rule " + said(text, "rule") + "): "),
             ran.err.data());

    const Ran json = run_floorwheel({"plan", path, "--json"});
    QCOMPARE(json.code, 1);
    const QJsonObject refusal = json_of(json.out);
    QCOMPARE(refusal["format"].toString(), QString("floorwheel-refusal"));
    QCOMPARE(refusal["version"].toInt(), 1);
    QCOMPARE(refusal["rule"].toInt(), said(text, "rule").toInt());
    const QJsonArray entries[] = {refusal["members"].toArray(), refusal["stations"].toArray()};
    for (const QByteArray& name : said(text, "names").split(' '))
      QVERIFY2(entries[0].contains(QString(name)) || entries[1].contains(QString(name)), name.data());
    QVERIFY(!refusal["reason"].toString().isEmpty());
  }

  void a_wrong_command_line_ends_with_2_data() {
    QTest::addColumn<QStringList>("words");
    QTest::addColumn<QByteArray>("says");
    QTest::newRow("command") << QStringList{"plna"}
                             << QByteArray("floorwheel: there is no command plna; did you mean plan?\n");
    QTest::newRow("option") << QStringList{"plan", "x", "--slotz", "3"}
                            << QByteArray(
                                   "floorwheel plan: there is no option --slotz; did you mean --slots?\n");
    QTest::newRow("no value") << QStringList{"plan", "x", "--slots"}
                              << QByteArray("floorwheel plan: --slots has no value; write --slots T\n");
    QTest::newRow("no number") << QStringList{"plan", "x", "--slots", "3x"}
                               << QByteArray(
                                      "floorwheel plan: --slots is \"3x\"; write a whole number from 1 to "
                                      "1000\n");
    QTest::newRow("no seconds") << QStringList{"plan", "x", "--seconds=nan"}
                                << QByteArray(
                                       "floorwheel plan: --seconds is \"nan\"; write a number above 0, such "
                                       "as 1.5\n");
    QTest::newRow("style") << QStringList{"plan", "x", "--style", "wheel"}
                           << QByteArray("floorwheel plan: there is no style wheel; did you mean free?\n");
    QTest::newRow("no file") << QStringList{"plan"}
                             << QByteArray(
                                    "floorwheel plan: CLASS is missing; write floorwheel plan CLASS "
                                    "[options]\n");
    QTest::newRow("one too many") << QStringList{"audit", "a", "b", "c"}
                                  << QByteArray(
                                         "floorwheel audit: \"c\" is one word too many; write floorwheel "
                                         "audit CLASS ROTATION [options]\n");
    QTest::newRow("twice") << QStringList{"plan", "x", "--json", "--json"}
                           << QByteArray("floorwheel plan: --json is given twice; give it once\n");
    QTest::newRow("no slot") << QStringList{"repair", "x", "y"}
                             << QByteArray(
                                    "floorwheel repair: --at-slot is missing; say from which slot on the "
                                    "rotation may change: --at-slot 5\n");
  }
  void a_wrong_command_line_ends_with_2() {
    QFETCH(QStringList, words);
    QFETCH(QByteArray, says);
    const Ran ran = run_floorwheel(words);
    QCOMPARE(ran.err, says);
    QCOMPARE(ran.code, 2);
  }

  void files_of_another_kind_are_named() {
    const Ran folder = run_floorwheel({"plan", folder_.path()});
    QCOMPARE(folder.code, 2);
    QVERIFY(folder.err.contains("is a folder; give the path of a class file"));
    const QString rotation = plan_to("r.json");
    QVERIFY(
        run_floorwheel({"plan", rotation}).err.contains(":1:1: this looks like JSON, not like a class file"));
    const Ran toml = run_floorwheel({"audit", class_, class_});
    QCOMPARE(toml.code, 2);
    QVERIFY(toml.err.contains("this is no JSON"));
    QCOMPARE(run_floorwheel({"audit", rotation, rotation}).code, 2);
    const Ran csv = run_floorwheel({"plan", class_, "--exercises", class_});
    QCOMPARE(csv.code, 2);
    QCOMPARE(csv.out, QByteArray());
  }

  void every_command_has_help_with_an_example() {
    const Ran all = run_floorwheel({"--help"});
    QCOMPARE(all.code, 0);
    QVERIFY(all.out.contains("Example"));
    int commands = 0;
    const QByteArray list = all.out.mid(all.out.indexOf("Commands\n") + 9);
    for (const QByteArray& line : list.split('\n')) {
      if (!line.startsWith("  ")) break;
      const QString name = QString::fromUtf8(line.trimmed().split(' ').first());
      const Ran help = run_floorwheel({name, "--help"});
      QCOMPARE(help.code, 0);
      QVERIFY2(help.out.contains("Example"), qPrintable(name));
      QVERIFY2(help.out.contains("\n  floorwheel " + name.toUtf8()), qPrintable(name));
      ++commands;
    }
    QVERIFY(commands >= 4);
  }

  // What the planner prints, the auditor holds to be true; the same seed gives the same bytes.
  void a_plan_is_held_true_by_the_audit() {
    const QString rotation = plan_to("r.json");
    QCOMPARE(run_floorwheel({"plan", class_, "--json"}).out, file_text(rotation));
    const Ran audit = run_floorwheel({"audit", class_, rotation, "--json"});
    QCOMPARE(audit.code, 0);
    const QJsonObject a = json_of(audit.out);
    QVERIFY(a["holds"].toBool() && a["true_cost"].toBool());
    QCOMPARE(a["cost"].toObject(), json_of(file_text(rotation))["cost"].toObject());
    QVERIFY(a["breaches"].toArray().isEmpty());
    QVERIFY(run_floorwheel({"audit", class_, rotation}).out.startsWith("The rotation keeps all rules.\n"));
  }

  void what_if_has_a_row_for_each_change() {
    const QJsonObject what_if = json_of(run_floorwheel({"plan", class_, "--what-if", "--json"}).out);
    QCOMPARE(what_if["format"].toString(), QString("floorwheel-what-if"));
    QCOMPARE(what_if["version"].toInt(), 1);
    QStringList changes;
    for (const auto row : what_if["rows"].toArray()) {
      const QJsonObject r = row.toObject();
      changes << r["change"].toString() + " " + r["id"].toString();
      QVERIFY(r.contains("refused") || (r["slots"].toInt() == 3 && r["cost"].toObject().contains("idle")));
    }
    // Three people, three places: no way out is needed.
    QCOMPARE(changes, QStringList({"as-it-is ", "one-more-place A", "one-more-place B",
                                   "one-more-unit kettlebell", "left-out A", "left-out B"}));
    const Ran text = run_floorwheel({"plan", class_, "--what-if"});
    QCOMPARE(text.code, 0);
    QVERIFY(text.out.contains("one more kettlebell"));
  }

  void a_rotation_that_was_changed_is_caught() {
    const QByteArray text = file_text(plan_to("r.json"));
    QByteArray lie = text;
    const qsizetype at = lie.indexOf("\"walk_cm\": ") + 11;
    lie[at] = lie[at] == '9' ? '8' : '9';
    write_file(folder_.filePath("lie.json"), lie);
    const Ran cost = run_floorwheel({"audit", class_, folder_.filePath("lie.json"), "--json"});
    QCOMPARE(cost.code, 1);
    QVERIFY(json_of(cost.out)["holds"].toBool());
    QVERIFY(!json_of(cost.out)["true_cost"].toBool(true));

    QByteArray closed = text;  // m01 works at A in slot 3, in which A is closed
    const qsizetype row = closed.indexOf("\"m01\", \"stations\": [") + 20;
    closed.replace(row, closed.indexOf(']', row) - row, "null, null, \"A\"");
    write_file(folder_.filePath("closed.json"), closed);
    const Ran rule = run_floorwheel({"audit", class_, folder_.filePath("closed.json"), "--json"});
    QCOMPARE(rule.code, 1);
    bool found = false;
    for (const auto breach : json_of(rule.out)["breaches"].toArray())
      found = found || (breach.toObject()["rule"].toInt() == 2 && breach.toObject()["station"] == "A" &&
                        breach.toObject()["slot"].toInt() == 3);
    QVERIFY(found);

    QByteArray header = text;
    header.replace("\"work_s\": 40", "\"work_s\": 41");
    write_file(folder_.filePath("header.json"), header);
    const Ran wrong = run_floorwheel({"audit", class_, folder_.filePath("header.json"), "--json"});
    QCOMPARE(wrong.code, 1);
    QCOMPARE(json_of(wrong.out)["breaches"].toArray()[0].toObject()["rule"].toInt(-1), 0);
  }

  void options_win_over_the_file() {
    const QJsonObject four =
        json_of(run_floorwheel({"plan", class_, "--json", "--slots", "4", "--style=free"}).out);
    QCOMPARE(four["slots"].toInt(), 4);
    QCOMPARE(four["style"].toString(), QString("free"));
    const QJsonObject timed =
        json_of(run_floorwheel({"plan", class_, "--json", "--timing", "--seed", "7"}).out);
    QVERIFY(timed.contains("elapsed_ms"));
    QCOMPARE(timed["seed"].toInt(), 7);
    QVERIFY(!four.contains("elapsed_ms"));
  }

  void without_slots_a_row_for_each_number_of_them() {
    const QString open = folder_.filePath("open.class.toml");
    write_file(open, QByteArray::fromStdString(example::with("slots = 3\n", "")));
    const Ran ran = run_floorwheel({"plan", open, "--json"});
    QCOMPARE(ran.code, 0);
    const QJsonObject table = json_of(ran.out);
    QCOMPARE(table["format"].toString(), QString("floorwheel-slots"));
    const QJsonArray rows = table["rows"].toArray();
    QVERIFY(rows.size() >= 4);
    for (qsizetype i = 0; i < rows.size(); ++i) {
      const QJsonObject row = rows[i].toObject();
      if (i > 0) QCOMPARE(row["slots"].toInt(), rows[i - 1].toObject()["slots"].toInt() + 1);
      // show 60 + warm-up 360 + lead-in 30 + T (40 + 20) + break 90 after slot 2 + cool-down 300
      const int slots = row["slots"].toInt();
      QCOMPARE(row["class_s"].toInt(), 60 + 360 + 30 + slots * 60 + (slots > 2 ? 90 : 0) + 300);
      QCOMPARE(row["fits"].toBool(), row["class_s"].toInt() <= 3600);
      QVERIFY(row["cost"].isObject() && row["bound"].isObject() && row["proven"].isArray());
    }
    QCOMPARE(table["chosen"].toObject()["format"].toString(), QString("floorwheel-rotation"));
    QVERIFY(run_floorwheel({"plan", open}).out.startsWith("What one more slot buys (< is chosen)\n"));
  }

  void a_repair_keeps_history_and_is_held_true() {
    const QString old = plan_to("r.json");
    const QString changed = folder_.filePath("changed.class.toml");
    write_file(changed,
               QByteArray::fromStdString(example::with("[[pair]]",
                                                       "[[member]]\nid = \"m03\"\nshown_as = \"Late\"\n"
                                                       "level = \"novice\"\npresent = [2]\n[[pair]]")));
    const Ran ran = run_floorwheel({"repair", changed, old, "--at-slot", "2", "--json"});
    QCOMPARE(ran.code, 0);
    const QJsonObject mended = json_of(ran.out);
    QCOMPARE(mended["at_slot"].toInt(), 2);
    QVERIFY(mended["cost"].toObject().contains("moved"));
    const QString file = folder_.filePath("mended.json");
    write_file(file, ran.out);
    const Ran full = run_floorwheel({"audit", changed, file, "--before", old, "--at-slot", "2", "--json"});
    QVERIFY2(full.code == 0, full.out.data());
    QCOMPARE(json_of(full.out)["cost"].toObject(), mended["cost"].toObject());
    const Ran alone = run_floorwheel({"audit", changed, file, "--json"});
    QCOMPARE(alone.code, 0);
    QVERIFY(json_of(alone.out)["cost"].toObject()["moved"].isNull());

    write_file(changed, QByteArray::fromStdString(example::smallest));
    const Ran gone = run_floorwheel({"repair", changed, old, "--at-slot", "2"});
    QCOMPARE(gone.code, 2);
    QVERIFY2(gone.err.contains("the class has no station B; did you mean A?"), gone.err.data());
  }

  void ten_thousand_members_are_answered() {
    QByteArray text =
        "[class]\nname = \"A stadium\"\nlaps = 1\nwork_s = 40\nchange_s = 20\nslots = 3\nstyle = \"ring\"\n";
    for (const char* station : {"A", "B", "C"})
      text += "[[station]]\nid = \"" + QByteArray(station) +
              "\"\nexercise = \"seated-row\"\ncapacity = 4000\nat = [0, 0]\n";
    for (int i = 0; i < 10'000; ++i)
      text += "[[member]]\nid = \"m" + QByteArray::number(i) + "\"\nshown_as = \"M\"\nlevel = \"novice\"\n";
    const QString stadium = folder_.filePath("stadium.class.toml");
    write_file(stadium, text);
    const Ran ran = run_floorwheel({"plan", stadium, "--json"});
    QVERIFY2(ran.code == 0, ran.err.left(500).data());
    QCOMPARE(json_of(ran.out)["members"].toArray().size(), 10'000);
    write_file(folder_.filePath("stadium.json"), ran.out);
    QCOMPARE(run_floorwheel({"audit", stadium, folder_.filePath("stadium.json")}).code, 0);
  }

  void the_exercise_table_is_printed() {
    const QJsonArray all = json_of(run_floorwheel({"exercises", "--json"}).out)["exercises"].toArray();
    QVERIFY(all.size() > 50);
    const QString csv = folder_.filePath("ours.csv");
    write_file(csv,
               "id,name,primary,assisting,features,kind,loads_kg,reps,rir,hold,substitutes\n"
               "pull,\"Pull, hard\",lats,biceps,,compound,2.5;10,8;12,1;3,false,\n");
    const QJsonObject pull =
        json_of(run_floorwheel({"exercises", "--json", "--exercises", csv}).out)["exercises"]
            .toArray()[0]
            .toObject();
    QCOMPARE(pull["name"].toString(), QString("Pull, hard"));
    QCOMPARE(pull["loads_kg"].toArray(), (QJsonArray{2.5, 10}));
    QVERIFY(run_floorwheel({"exercises", "--exercises", csv}).out.contains("Pull, hard"));
  }

  void a_full_disk_is_said() {
    QProcess p;
    p.setStandardOutputFile("/dev/full");
    p.start(program_path(), {"exercises"});
    QVERIFY(p.waitForFinished());
    QCOMPARE(p.exitCode(), 2);
    QVERIFY(p.readAllStandardError().contains("standard output cannot be written"));
  }

 private:
  QString plan_to(const QString& name) {
    const Ran ran = run_floorwheel({"plan", class_, "--json"});
    if (ran.code != 0) qFatal("%s", ran.err.data());
    write_file(folder_.filePath(name), ran.out);
    return folder_.filePath(name);
  }

  QTemporaryDir folder_;
  QString class_;
};

QTEST_GUILESS_MAIN(TestPlanCommands)
#include "tst_plan_commands.moc"
