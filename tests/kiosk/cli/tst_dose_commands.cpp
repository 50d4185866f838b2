// SPDX-License-Identifier: GPL-3.0-or-later
// Doses on the command line: `report dose` of a real hub and of its folder, `dose` and `next` from a
// programme. A programme's planned sets are held against those the programme check counts, and against the
// doses of somebody who does all of it in a week.
#include <QDir>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>
#include <QTest>

#include "kiosk/files/exercise_table.h"
#include "kiosk/files/programme_file.h"
#include "scheduler/training/check.h"
#include "scheduler/training/planned_dose.h"
#include "tests/kiosk/cli/program.h"

using namespace floorwheel;

namespace {

QJsonObject json_of(const QByteArray& text) {
  const auto document = QJsonDocument::fromJson(text);
  if (!document.isObject()) qFatal("no JSON object: %s", text.data());
  return document.object();
}
QString compact(const QJsonObject& object) {
  return QString::fromUtf8(QJsonDocument(object).toJson(QJsonDocument::Compact));
}

const QByteArray small_class = R"(
[class]
name = "Two stations"
laps = 1
work_s = 40
change_s = 20
slots = 2
[[station]]
id = "A"
exercise = "bench-press"
capacity = 1
at = [0, 0]
[[station]]
id = "B"
exercise = "squat"
capacity = 1
at = [3, 0]
[[member]]
id = "d1"
shown_as = "Dora D."
level = "novice"
)";

const QByteArray two_days = R"(
[programme]
name = "Two days"
level = "novice"
weeks = 8
[[day]]
name = "Monday"
  [[day.exercise]]
  exercise = "bench-press"
  working_sets = 4
  reps = [6, 9]
  rir = [1, 3]
  rest_s = 120
  warm_up_sets = 2
  [[day.exercise]]
  exercise = "squat"
  working_sets = 2
  reps = [8, 12]
  rir = [1, 3]
  rest_s = 120
  practice = true
[[day]]
name = "Thursday"
  [[day.exercise]]
  exercise = "bench-press"
  working_sets = 3
  reps = [8, 12]
  rir = [1, 3]
  rest_s = 120
  [[day.exercise]]
  exercise = "squat"
  working_sets = 2
  reps = [5, 8]
  rir = [1, 3]
  rest_s = 120
)";

}  // namespace

class TestDoseCommands : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() {
    QVERIFY(folder_.isValid());
    programme_ = folder_.filePath("two.programme.toml");
    write_file(programme_, two_days);
    sets_ = folder_.filePath("sets.csv");
    write_file(sets_,
               "member,exercise,performed_at,kind,load_kg,reps,rir,note\n"
               "m01,bench-press,2026-03-02T18:30:00+01:00,working,50,12,2,\n");
  }

  void the_report_of_a_week_is_csv_and_names_both_classifications() {
    const QString data = folder_.filePath("data");
    QProcess hub;
    hub.setProcessChannelMode(QProcess::ForwardedErrorChannel);
    hub.start(program_path(), {"hub", "--data", data, "--listen", "127.0.0.1:0"});
    while (!hub.canReadLine()) QVERIFY(hub.waitForReadyRead(30'000));
    const QString url = "ws://" + json_of(hub.readLine())["listening"].toString();
    const auto ran = [&](const QStringList& words) {
      const Ran r = run_floorwheel(words + QStringList{"--hub", url});
      if (r.code != 0) qWarning("%s", r.err.data());
      return r;
    };
    const auto receipt = [&](const char* kind, const QString& body) {
      return json_of(ran({"tell", kind, body}).out)["body"].toObject();
    };
    const QString file = folder_.filePath("two.class.toml");
    write_file(file, small_class);
    const QString c = receipt("class.add", "@" + file)["class"].toString();
    receipt("class.open", compact({{"class", c}}));
    receipt("check_in", compact({{"class", c}, {"member", "d1"}}));
    const QJsonObject proposal = json_of(ran({"ask", "proposal", compact({{"class", c}})}).out);
    const QJsonValue id =
        proposal.contains("proposal") ? proposal["proposal"] : proposal["body"].toObject()["proposal"];
    receipt("class.publish", compact({{"class", c}, {"saw", 0}, {"proposal", id}}));
    for (int i = 0; i < 5; ++i)
      QVERIFY(!receipt("record.add", compact({{"class", c},
                                              {"member", "d1"},
                                              {"station", "A"},
                                              {"slot", 1 + i % 2},
                                              {"done", true},
                                              {"load_hg", 400},
                                              {"reps", 10}}))
                   .isEmpty());

    const Ran csv = ran({"report", "dose", "--csv"});
    const QList<QByteArray> lines = csv.out.split('\n');
    QCOMPARE(lines[0], QByteArray("member,week,group,sets,assisting_sets,days,band\r"));
    QCOMPARE(lines.size(), 5);
    const QByteArray week = lines[1].split(',')[1];
    QCOMPARE(lines[1], "d1," + week + ",chest,5,0,1,3_to_9\r");
    QCOMPARE(lines[2], "d1," + week + ",shoulders,0,5,0,under_3\r");
    QCOMPARE(lines[3], "d1," + week + ",triceps,5,0,1,3_to_9\r");
    QCOMPARE(ran({"report", "dose", "--csv", "--week", week}).out, csv.out);
    QCOMPARE(run_floorwheel({"report", "dose", "--csv", "--week", week, "--data", data}).out, csv.out);
    QCOMPARE(ran({"report", "dose", "--csv", "--week", "2020-W53"}).out, lines[0] + "\n");
    // 5 sets: 'middle' from 5 on by the one, 'low' under 12 by the other.
    const Ran text = ran({"report", "dose"});
    QVERIFY(text.out.contains("Schoenfeld 2017") && text.out.contains("Baz-Valle 2022"));
    QCOMPARE(text.out.split('\n')[1].simplified(), "d1 Dora D. " + week + " chest 5 0 1 3 to 9 middle low");
    QVERIFY(text.out.contains("J Sports Sci 35:1073") && text.out.contains("J Hum Kinet 81:199"));
    QVERIFY(text.out.contains("not medical advice"));
    QCOMPARE(run_floorwheel({"report", "dose", "--data", data, "--week", week}).out, text.out);
    hub.terminate();
    QVERIFY(hub.waitForFinished(30'000));
  }

  void what_does_not_fit_is_said_data() {
    QTest::addColumn<QStringList>("words");
    QTest::addColumn<QByteArray>("says");
    QTest::newRow("report, no week") << QStringList{"report", "dose", "--week", "2026-W60"}
                                     << QByteArray("\"2026-W60\" is no ISO week; write it as in 2026-W10");
    QTest::newRow("report, days") << QStringList{"report", "dose", "--from", "2026-03-01"}
                                  << QByteArray("a dose is of one ISO week; write --week 2026-W10");
    QTest::newRow("report, week") << QStringList{"report", "attendance", "--week", "2026-W10"}
                                  << QByteArray("--week is for the report dose");
    QTest::newRow("programme and week")
        << QStringList{"dose", programme_, "--week", "2026-W10"}
        << QByteArray("--week with a programme; leave it out: a programme plans every week alike");
    QTest::newRow("day alone") << next({"--exercise", "squat", "--day", "Monday"})
                               << QByteArray("--day without --programme");
    QTest::newRow("no such day") << next({"--exercise", "squat", "--programme", programme_, "--day",
                                          "Thurdsay"})
                                 << QByteArray("has no day Thurdsay; did you mean Thursday?");
    QTest::newRow("not planned") << next({"--exercise", "plank", "--programme", programme_})
                                 << QByteArray(
                                        "plans no working set of plank; it plans bench-press and squat");
    QTest::newRow("practice alone")
        << next({"--exercise", "squat", "--programme", programme_, "--day", "Monday"})
        << QByteArray("plans no working set of squat on Monday; it plans bench-press");
    QTest::newRow("two ways")
        << next({"--exercise", "bench-press", "--programme", programme_})
        << QByteArray(
               "plans bench-press differently on Monday and Thursday; name the day with "
               "--day");
  }
  void what_does_not_fit_is_said() {
    QFETCH(QStringList, words);
    QFETCH(QByteArray, says);
    const Ran ran = run_floorwheel(words);
    QVERIFY2(ran.err.contains(says), ran.err.data());
    QCOMPARE(ran.code, 2);
  }

  void a_programme_plans_a_dose_with_bands() {
    const QJsonObject answer = json_of(run_floorwheel({"dose", programme_, "--json"}).out);
    QStringList rows;
    for (const auto& v : answer["rows"].toArray()) {
      const QJsonObject r = v.toObject();
      QCOMPARE(r["member"].toString(), QString("-"));
      QVERIFY(r["week"].isNull());
      rows << QString("%1 %2 %3 %4 %5")
                  .arg(r["group"].toString())
                  .arg(r["sets"].toInt())
                  .arg(r["assisting_sets"].toInt())
                  .arg(r["days"].toInt())
                  .arg(r["band"].toString());
    }
    // By hand: bench press 4 + 3 sets on two days; squat 2 on Thursday, its practice not counted.
    QVERIFY2(rows.contains("chest 7 0 2 3_to_9"), qPrintable(rows.join("; ")));
    QVERIFY(rows.contains("triceps 7 0 2 3_to_9"));
    QVERIFY(rows.contains("shoulders 0 7 0 under_3"));
    QVERIFY(rows.contains("quadriceps 2 0 1 under_3"));
    QVERIFY(rows.contains("hamstrings 0 2 0 under_3"));
    const Ran text = run_floorwheel({"dose", programme_});
    QVERIFY(text.out.startsWith("Two days, planned a week\n"));
    QVERIFY(text.out.contains("Schoenfeld 2017 (") && text.out.contains("Baz-Valle 2022 ("));
    const QJsonObject half =
        json_of(run_floorwheel({"dose", programme_, "--assisting", "0.5", "--json"}).out);
    bool found = false;
    for (const auto& v : half["rows"].toArray())
      found = found || (v.toObject()["group"] == "shoulders" && v.toObject()["sets"].toDouble() == 3.5);
    QVERIFY(found);
  }

  void an_exercise_the_table_lacks_is_said_with_its_line() {
    const QString path = folder_.filePath("typo.programme.toml");
    write_file(path, QByteArray(two_days).replace("\"squat\"", "\"sqat\""));
    const Ran ran = run_floorwheel({"dose", path});
    QCOMPARE(ran.code, 2);
    QVERIFY2(ran.err.contains(path.toUtf8() + ":16") && ran.err.contains("did you mean squat?"),
             ran.err.data());
  }

  // Every programme of the check's tests that the table knows.
  void planned_sets_are_what_the_check_counts_and_what_doing_it_gives() {
    const ExerciseTable& table = files::shipped_exercises();
    const QDir folder(source_path("tests/kiosk/files/programmes"));
    int programmes = 0;
    for (const QString& name : folder.entryList({"*.programme.toml"})) {
      const auto read = files::read_programme(folder.filePath(name).toStdString(), table);
      const auto* p = std::get_if<Programme>(&read);
      QVERIFY2(p, qPrintable(name));
      bool known = true;
      for (const PlannedDay& day : p->days)
        for (const PlannedExercise& e : day.exercises) known = known && table.contains(e.exercise);
      if (!known) continue;
      ++programmes;
      const auto rows = training::planned_dose(*p, table);
      std::array<int, group_count> sets{};
      for (const auto& r : rows) sets[static_cast<std::size_t>(r.group)] = r.primary_sets;
      QVERIFY2(sets == weekly_sets(*p, table), qPrintable(name));
      bool placed = true;
      for (const PlannedDay& day : p->days) placed = placed && weekday_of(day.name);
      if (placed) QVERIFY2(same(rows, training::dose(done(*p), table)), qPrintable(name));
    }
    QVERIFY(programmes >= 15);
  }

  void next_takes_range_and_sets_from_a_programme() {
    const auto asked = [&](const QStringList& more) {
      return json_of(run_floorwheel(next(QStringList{"--exercise", "bench-press", "--json"} + more)).out);
    };
    const QJsonObject monday = asked({"--programme", programme_, "--day", "Monday"});
    QCOMPARE(monday["reps"].toArray(), (QJsonArray{6, 9}));
    QCOMPARE(monday["sets"].toInt(), 4);
    const QJsonObject thursday = asked({"--programme", programme_, "--day", "Thursday"});
    QCOMPARE(thursday["reps"].toArray(), (QJsonArray{8, 12}));
    QCOMPARE(thursday["sets"].toInt(), 3);
    const QJsonObject own = asked({"--programme", programme_, "--day", "Monday", "--sets", "1"});
    QCOMPARE(own["sets"].toInt(), 1);  // an option wins
    QCOMPARE(own["reps"].toArray(), (QJsonArray{6, 9}));
    // One set of twelve: all that was planned, so the load rises; of three sets it does not.
    QCOMPARE(own["change"].toString(), QString("up"));
    QCOMPARE(monday["change"].toString(), QString("same"));
    const Ran squat = run_floorwheel(next({"--exercise", "squat", "--programme", programme_, "--json"}));
    QCOMPARE(json_of(squat.out)["reps"].toArray(), (QJsonArray{5, 8}));  // practice on Monday does not count
  }

 private:
  [[nodiscard]] QStringList next(const QStringList& more) const {
    return QStringList{"next", sets_, "--member", "m01", "--today", "2026-03-05"} + more;
  }
  /// Somebody who does the whole programme in one week, warm-up and practice too.
  static std::vector<training::SetRecord> done(const Programme& p) {
    std::vector<training::SetRecord> sets;
    const auto add = [&](const PlannedExercise& e, int day, int count, training::SetKind kind) {
      for (int i = 0; i < count; ++i) {
        training::SetRecord r;
        r.exercise = e.exercise;
        r.day = training::Day{training::monday_of({2026, 10}).number + day};
        r.kind = kind;
        sets.push_back(r);
      }
    };
    for (const PlannedDay& day : p.days)
      for (const PlannedExercise& e : day.exercises) {
        add(e, *weekday_of(day.name), e.warm_up_sets, training::SetKind::warm_up);
        add(e, *weekday_of(day.name), e.working_sets,
            e.practice ? training::SetKind::practice : training::SetKind::working);
      }
    return sets;
  }
  static bool same(const std::vector<training::DoseRow>& a, const std::vector<training::DoseRow>& b) {
    return std::ranges::equal(a, b, [](const auto& x, const auto& y) {
      return x.group == y.group && x.primary_sets == y.primary_sets && x.assisting_sets == y.assisting_sets &&
             x.days == y.days && x.counted == y.counted;
    });
  }
  QTemporaryDir folder_;
  QString programme_, sets_;
};

QTEST_GUILESS_MAIN(TestDoseCommands)
#include "tst_dose_commands.moc"
