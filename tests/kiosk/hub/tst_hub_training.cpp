// SPDX-License-Identifier: GPL-3.0-or-later
// Training over days, against a real hub whose clock is injected: what an instructor decides instead of a
// suggestion is kept, stands until the exercise is done next, and is learnt from; a week's dose counts what
// was corrected later. What was written is read back by the test's own SQL.
#include <QJsonArray>
#include <QSaveFile>
#include <QtTest>

#include "tests/kiosk/hub/hub_client.h"

using namespace floorwheel;
using namespace floorwheel::testing;
using wire::Role;

class TestHubTraining : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void init() {
    folder_ = std::make_unique<QTemporaryDir>();
    set_day("2026-03-02");
    start();
    class_ = open_class(*teacher_);
    for (const char* m : {"m02", "m03"})
      QVERIFY(teacher_->tell("check_in", {{"class", class_}, {"member", m}}).done);
    QVERIFY(publish(*teacher_, class_, 0).done);
  }
  void cleanup() {
    teacher_.reset();
    QVERIFY(hub_->end());
  }

  void a_decision_stands_until_the_exercise_is_done_next_and_outlives_the_hub() {
    visit(50);
    QCOMPARE(next().value("rule").toString(), QString("top-of-range"));
    QCOMPARE(next().value("load_kg").toDouble(), 55.0);
    QVERIFY(!next().contains("override"));
    set_day("2026-03-02", 19);  // after the class
    const Reply kept = decide({{"load_kg", 52.5}, {"reps", QJsonArray{6, 8}}, {"sets", 3}});
    QVERIFY2(kept.done, qPrintable(kept.text));
    QCOMPARE(kept.body.value("suggested_kg").toDouble(), 55.0);
    QCOMPARE(sql(data(),
                 "SELECT load_g FROM load_decision WHERE member = 'm02' AND suggested_g = 55000"
                 " AND suggested_change = 'up' AND local_day = '2026-03-02' AND reps_top = 8")
                 .toInt(),
             52500);
    QCOMPARE(sql(data(), "SELECT l.seq = j.seq FROM load_decision l JOIN journal j ON j.kind = 'load.decide'")
                 .toInt(),
             1);
    teacher_.reset();
    hub_->kill();
    start();
    const QJsonObject stands = next();
    QCOMPARE(stands.value("load_kg").toDouble(), 50.0);  // the nearest below that the floor has
    QCOMPARE(stands.value("change").toString(), QString("same"));
    QCOMPARE(stands.value("reps").toArray(), (QJsonArray{6, 8}));
    QCOMPARE(stands.value("sets").toInt(), 3);
    QVERIFY2(stands.value("reason").toString().startsWith(
                 "The instructor decided 52.5 kg on 2026-03-02 instead of 55 kg"),
             qPrintable(stands.value("reason").toString()));
    QCOMPARE(stands.value("override").toObject().value("suggested_kg").toDouble(), 55.0);
    set_day("2026-03-04");
    visit(55);
    QVERIFY(!next().contains("override"));
    QCOMPARE(next().value("load_kg").toDouble(), 60.0);
  }

  void two_rises_decided_lower_are_learnt_from_but_a_changed_mind_is_one() {
    visit(50);
    set_day("2026-03-02", 19);
    QVERIFY(decide({{"load_kg", 45}}).done);
    QVERIFY(decide({{"load_kg", 50}}).done);
    QCOMPARE(next().value("load_kg").toDouble(), 50.0);
    set_day("2026-03-04");
    visit(55);
    QCOMPARE(next().value("rule").toString(), QString("top-of-range"));  // one decision so far
    set_day("2026-03-04", 19);
    QVERIFY(decide({{"load_kg", 55}}).done);
    set_day("2026-03-06");
    visit(50);
    // A visit like this earned a rise before; now it takes two running.
    QCOMPARE(next().value("rule").toString(), QString("in-range"));
    QCOMPARE(next().value("load_kg").toDouble(), 50.0);
    QCOMPARE(sql(data(), "SELECT count(*) FROM load_decision").toInt(), 3);
  }

  void only_the_instructor_decides_and_what_is_wrong_is_said() {
    visit(50);
    const QJsonObject body{{"member", "m02"}, {"exercise", "bench-press"}, {"load_kg", 40}};
    Screen touch(hub_->url(), Role::touch);
    Screen desk(hub_->url(), Role::desk);
    QCOMPARE(touch.tell("load.decide", body).code, QString("refused"));
    QCOMPARE(desk.tell("load.decide", body).code, QString("refused"));
    QCOMPARE(decide({{"load_kg", 12.3456}}).code, QString("bad_body"));
    QCOMPARE(decide({{"load_kg", -1}}).code, QString("bad_body"));
    QCOMPARE(decide({{"load_kg", 601}}).code, QString("bad_body"));
    QCOMPARE(decide({{"load_kg", "50"}}).code, QString("bad_body"));
    QCOMPARE(decide({{"load_kg", 50}, {"reps", QJsonArray{10, 6}}}).code, QString("bad_body"));
    QCOMPARE(decide({{"load_kg", 50}, {"sets", 0}}).code, QString("bad_body"));
    const Reply typo = decide({{"load_kg", 50}, {"exercise", "bench-pres"}});
    QVERIFY2(typo.hint.contains("bench-press"), qPrintable(typo.hint));
    QCOMPARE(decide({{"load_kg", 50}, {"member", "nobody"}}).code, QString("not_found"));
    QCOMPARE(sql(data(), "SELECT count(*) FROM load_decision").toInt(), 0);
    QVERIFY(decide({{"load_kg", 40}}).done);
    // Loads are nobody's business but the instructor's: the others get the row's number alone.
    QVERIFY(touch.reach(teacher_->hall().reached));
    for (const wire::Row& row : touch.rows()) QVERIFY(row.kind != "load.decide");
    QCOMPARE(teacher_->rows().back().kind, std::string("load.decide"));
  }

  void a_set_corrected_in_a_later_week_counts_in_its_own() {
    const QStringList sets = visit(50);
    set_day("2026-03-10");  // the week after
    const QJsonObject not_done{{"record", sets[0]}, {"done", false}};
    const Reply corrected = teacher_->tell("record.correct", not_done);
    QVERIFY(corrected.done);
    QCOMPARE(chest("2026-W10", true), 1);
    QCOMPARE(chest("2026-W10", false), 1);
    QCOMPARE(chest("2026-W11", true), 0);
    QCOMPARE(chest("2026-W11", false), 0);
    // A correction of the correction, later still.
    set_day("2026-03-17");
    const QJsonObject done{{"record", corrected.body.value("record")}, {"done", true}, {"reps", 9}};
    QVERIFY(teacher_->tell("record.correct", done).done);
    QCOMPARE(chest("2026-W10", true), 2);
    QCOMPARE(chest("2026-W10", false), 2);
    QCOMPARE(chest("2026-W12", false), 0);
  }

  void a_members_own_week_is_shown_to_the_touch_screen_only_once_asked_for() {
    visit(50);
    Screen touch(hub_->url(), Role::touch);
    Screen desk(hub_->url(), Role::desk);
    Screen wall(hub_->url(), Role::wall);
    const auto asked = [&](Screen& screen) { return screen.ask("member.page", {{"member", "m02"}}); };
    const auto tell = [](Screen& screen, bool on) {
      return screen.tell("page.show", {{"member", "m02"}, {"on", on}});
    };
    const QString kept = "SELECT coalesce(max(shown), -1) FROM own_page WHERE member = 'm02'";
    QCOMPARE(asked(touch).code, QString("refused"));
    QVERIFY(asked(*teacher_).done);
    QCOMPARE(tell(touch, true).code, QString("refused"));  // nobody switches on where everybody stands
    QCOMPARE(tell(wall, false).code, QString("refused"));
    QCOMPARE(sql(data(), kept).toInt(), -1);
    QCOMPARE(asked(touch).code, QString("refused"));
    QVERIFY(tell(desk, true).done);
    QCOMPARE(sql(data(), kept).toInt(), 1);
    const QJsonObject page = asked(touch).body;
    QCOMPARE(page.value("working_sets").toInt(), 2);
    QCOMPARE(page.value("next").toArray()[0].toObject().value("load_kg").toDouble(), 55.0);
    QCOMPARE(touch.ask("member.page", {{"member", "m03"}}).code, QString("refused"));  // another's stays off
    QVERIFY(!asked(desk).done);  // the desk has no use for it
    QVERIFY(touch.reach(desk.hall().reached));
    QVERIFY(touch.hall().pages_shown.contains("m02"));
    QVERIFY(wall.hall().pages_shown.empty());
    const qint64 rows = sql(data(), "SELECT count(*) FROM journal").toLongLong();
    QVERIFY(tell(desk, true).done);  // it is so already: no row
    QCOMPARE(sql(data(), "SELECT count(*) FROM journal").toLongLong(), rows);
    teacher_.reset();
    hub_->kill();
    start();
    Screen after(hub_->url(), Role::touch);
    QVERIFY(after.caught_up());
    QVERIFY(after.hall().pages_shown.contains("m02"));
    QVERIFY(asked(after).done);
    QVERIFY(tell(after, false).done);  // but anybody may switch it off
    QCOMPARE(sql(data(), kept).toInt(), 0);
    QCOMPARE(asked(after).code, QString("refused"));
    QVERIFY(after.hall().pages_shown.empty());
    QVERIFY(tell(*teacher_, true).done);
    QVERIFY(asked(after).done);
    QCOMPARE(teacher_->tell("page.show", {{"member", "nobody"}, {"on", true}}).code, QString("not_found"));
    QCOMPARE(teacher_->tell("page.show", {{"member", "m02"}, {"on", "yes"}}).code, QString("bad_body"));
  }

 private:
  [[nodiscard]] QString data() const { return folder_->path() + "/data"; }
  [[nodiscard]] QString clock() const { return folder_->path() + "/clock"; }
  /// The local hour of a day, an hour ahead of UTC; the machine's own clock goes on with it.
  void set_day(const char* date, int hour = 18) {
    const qint64 civil_ms =
        QDateTime(QDate::fromString(date, Qt::ISODate), QTime(hour - 1, 0), Qt::UTC).toMSecsSinceEpoch();
    QSaveFile f(clock());
    QVERIFY(f.open(QIODevice::WriteOnly));
    f.write(QString("boot-one\n%1\n%2\n3600\n").arg(civil_ms - 1'772'000'000'000).arg(civil_ms).toUtf8());
    QVERIFY(f.commit());
  }
  void start() {
    hub_ = std::make_unique<TestHub>(data(), QStringList{"--clock", clock()});
    QVERIFY2(hub_->listening(), qPrintable(hub_->errors()));
    teacher_ = std::make_unique<Screen>(hub_->url(), Role::instructor);
    QVERIFY(teacher_->caught_up());
  }
  /// Two sets of twelve with two in reserve, by m02; their records.
  QStringList visit(int load_kg) {
    QStringList records;
    for (int slot = 1; slot <= 2; ++slot)
      records << teacher_
                     ->tell("record.add", {{"class", class_},
                                           {"member", "m02"},
                                           {"station", "A"},
                                           {"exercise", "bench-press"},
                                           {"slot", slot},
                                           {"done", true},
                                           {"load_hg", 10 * load_kg},
                                           {"reps", 12},
                                           {"rir", 2}})
                     .body.value("record")
                     .toString();
    return records;
  }
  Reply decide(QJsonObject body) {
    if (!body.contains("member")) body["member"] = "m02";
    if (!body.contains("exercise")) body["exercise"] = "bench-press";
    return teacher_->tell("load.decide", body);
  }
  QJsonObject next() {
    return teacher_->ask("member.page", {{"member", "m02"}}).body.value("next").toArray()[0].toObject();
  }
  /// Sets for the chest, asked of the member or of everybody.
  int chest(const char* week, bool alone) {
    QJsonObject body{{"week", week}};
    if (alone) body["member"] = "m02";
    int sets = 0;
    for (const auto& row : teacher_->ask("dose", body).body.value("rows").toArray())
      if (row.toObject().value("group") == "chest") sets += row.toObject().value("sets").toInt();
    return sets;
  }
  std::unique_ptr<QTemporaryDir> folder_;
  std::unique_ptr<TestHub> hub_;
  std::unique_ptr<Screen> teacher_;
  QString class_;
};

QTEST_GUILESS_MAIN(TestHubTraining)
#include "tst_hub_training.moc"
