// SPDX-License-Identifier: GPL-3.0-or-later
// What the instructor asks the hub before a talk: who stands still, whose last visit notes pain, the talk
// sheet with done against planned, goal and what was agreed. Weeks are played through the hub itself; counts
// are read again from the store by this test's own SQL.
#include <QJsonArray>
#include <QtTest>

#include "kiosk/store/people.h"
#include "kiosk/store/store.h"
#include "tests/kiosk/hub/hub_client.h"
#include "tests/kiosk/hub/past_classes.h"

using namespace floorwheel;
using namespace floorwheel::testing;
using wire::Role;

namespace {

/// Four visits of m02 with one load and no more repetitions, then m03 hurts at the last of them.
QList<PastClass> four_visits() {
  QList<PastClass> all;
  int reps = 12;
  for (const char* day : {"2026-03-03", "2026-03-09", "2026-03-16", "2026-03-18"}) {
    PastClass p{.day = QDate::fromString(day, Qt::ISODate), .here = {"m02", "m03"}};
    p.sets = {{"m02", "A", 1, 160, reps}, {"m02", "B", 2, 200, reps}, {"m03", "A", 2, 80, reps}};
    reps = 11;
    all << p;
  }
  all.last().hurts = "m03";
  all.last().spot = "quadriceps";
  return all;
}

QJsonObject row_of(const QJsonArray& rows, const char* key, const QString& value) {
  for (const auto& r : rows)
    if (r.toObject().value(key).toString() == value) return r.toObject();
  return {};
}

const QJsonObject on_the_19th{{"today", "2026-03-19"}};
QJsonObject about(const char* member) { return {{"member", member}, {"today", "2026-03-19"}}; }

}  // namespace

class TestHubTalk : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void init() {
    folder_ = std::make_unique<QTemporaryDir>();
    classes_ = play_past_classes(data(), small_class(), four_visits());
    hub_ = std::make_unique<TestHub>(data());
    QVERIFY2(hub_->listening(), qPrintable(hub_->errors()));
    teacher_ = std::make_unique<Screen>(hub_->url(), Role::instructor);
  }
  void cleanup() {
    teacher_.reset();
    QVERIFY(hub_->end());
    hub_.reset();
  }

  void who_stands_still_and_where_pain_was_noted_say_since_when() {
    const QJsonObject floor = teacher_->ask("floor.stalls", on_the_19th).body;
    const QJsonArray stalls = floor.value("stalls").toArray();
    QCOMPARE(stalls.size(), 2);  // m02 at both exercises; m03's pain comes before
    const QJsonObject squat = row_of(stalls, "exercise", "goblet-squat");
    QCOMPARE(squat.value("shown_as").toString(), QString("Teal B."));
    QCOMPARE(squat.value("load_kg").toDouble(), 16.0);
    QCOMPARE(squat.value("visits_without_progress").toInt(), 3);
    QCOMPARE(squat.value("last_day").toString(), QString("2026-03-18"));
    const QJsonArray pain = floor.value("pain").toArray();
    QCOMPARE(pain.size(), 1);
    QCOMPARE(pain[0].toObject().value("member").toString(), QString("m03"));
    QCOMPARE(pain[0].toObject().value("last_day").toString(), QString("2026-03-18"));
    // The day before, the fourth visit was still to come.
    QCOMPARE(teacher_->ask("floor.stalls", {{"today", "2026-03-17"}}).body.value("stalls").toArray().size(),
             0);
  }

  void the_sheet_says_what_was_done_and_what_the_run_sheets_planned() {
    const QJsonObject sheet = teacher_->ask("talk.sheet", about("m02")).body;
    QCOMPARE(sheet.value("shown_as").toString(), QString("Teal B."));
    QCOMPARE(sheet.value("week").toString(), QString("2026-W12"));
    QCOMPARE(sheet.value("visits").toObject(), (QJsonObject{{"week", 2}, {"four_weeks", 4}}));
    const QJsonObject sets = sheet.value("sets").toObject();
    QCOMPARE(sets.value("week").toInt(), 4);
    QCOMPARE(sets.value("four_weeks").toInt(), 8);
    // What the run sheets place, read from the journal: every slot of m02 at a station in this week's
    // classes.
    const QString slots_of_the_week =
        " FROM journal j JOIN check_in i ON i.class = j.class AND i.member = 'm02',"
        " json_each(j.body, '$.sheet.rows') r, json_each(r.value, '$.stations') s"
        " WHERE j.kind = 'class.publish' AND i.iso_week = '2026-W12'"
        " AND json_extract(r.value, '$.member') = 'm02' AND s.value IS NOT NULL";
    QCOMPARE(sets.value("planned").toInt(), sql(data(), "SELECT count(*)" + slots_of_the_week).toInt());
    QVERIFY(sets.value("planned").toInt() > 4);
    // At the goblet squat (A) and nowhere else in this class the quadriceps are the aim.
    const QJsonObject quadriceps = row_of(sheet.value("groups").toArray(), "group", "quadriceps");
    QCOMPARE(quadriceps.value("done").toInt(), 2);
    QCOMPARE(quadriceps.value("planned").toInt(),
             sql(data(), "SELECT count(*)" + slots_of_the_week + " AND s.value = 'A'").toInt());
    QCOMPARE(quadriceps.value("band").toString(), QString("under_3"));

    // On the Monday of that week its second class is still to come.
    const QJsonObject monday = teacher_->ask("talk.sheet", {{"member", "m02"}, {"today", "2026-03-16"}}).body;
    QCOMPARE(row_of(monday.value("groups").toArray(), "group", "quadriceps").value("done").toInt(), 1);
    QCOMPARE(monday.value("sets").toObject().value("planned").toInt(),
             sql(data(), "SELECT count(*)" + slots_of_the_week + " AND i.local_day = '2026-03-16'").toInt());

    const QJsonObject squat = row_of(sheet.value("loads").toArray(), "exercise", "goblet-squat");
    const QJsonArray points = squat.value("points").toArray();
    QCOMPARE(points.size(), 4);
    QCOMPARE(points[0].toObject(), (QJsonObject{{"day", "2026-03-03"}, {"load_kg", 16.0}, {"reps", 12}}));
    QCOMPARE(points[3].toObject(), (QJsonObject{{"day", "2026-03-18"}, {"load_kg", 16.0}, {"reps", 11}}));
  }

  void the_last_four_weeks_are_28_days_and_this_one_begins_on_monday() {
    const auto visits = [&](const char* today) {
      return teacher_->ask("talk.sheet", {{"member", "m02"}, {"today", today}})
          .body.value("visits")
          .toObject();
    };
    QCOMPARE(visits("2026-03-30"), (QJsonObject{{"week", 0}, {"four_weeks", 4}}));  // the 28th day is the 3rd
    QCOMPARE(visits("2026-03-31"), (QJsonObject{{"week", 0}, {"four_weeks", 3}}));
    QCOMPARE(visits("2026-03-16"), (QJsonObject{{"week", 1}, {"four_weeks", 3}}));
    QCOMPARE(visits("2026-03-15"), (QJsonObject{{"week", 1}, {"four_weeks", 2}}));
  }

  void new_members_are_on_one_of_their_first_four_visits() {
    const auto rows = [&] { return teacher_->ask("members.new").body.value("rows").toArray(); };
    const auto visits = [&](const char* member) {
      return sql(data(), QString("SELECT count(*) FROM check_in WHERE member = '%1'").arg(member)).toInt();
    };
    // m01 never came; m02 and m03 have had their four.
    QCOMPARE(visits("m02"), 4);
    QCOMPARE(rows().size(), 0);
    const QString c = open_class(*teacher_);
    QCOMPARE(rows().size(), 1);
    QJsonObject first = rows()[0].toObject();
    QCOMPARE(first.value("member").toString(), QString("m01"));
    QCOMPARE(first.value("shown_as").toString(), QString("Wren A."));
    QCOMPARE(first.value("visits").toInt(), 0);
    QCOMPARE(first.value("visit").toInt(), 1);
    QVERIFY(!first.value("here").toBool() && first.value("expected").toBool());
    QVERIFY(first.value("last_day").isNull());
    QCOMPARE(first.value("look_at").toArray().size(), 3);
    QVERIFY(first.value("look_at").toArray()[0].toString().contains("light loads"));
    // Checked in, this is the visit that was the next; a walk-in who is here comes before who is expected.
    QVERIFY(teacher_->tell("member.add", {{"id", "n1"}, {"shown_as", "Rook W."}, {"level", "novice"}}).done);
    QVERIFY(teacher_->tell("check_in", {{"class", c}, {"member", "n1"}}).done);
    QCOMPARE(rows().size(), 2);
    QCOMPARE(rows()[0].toObject().value("member").toString(), QString("n1"));
    QVERIFY(teacher_->tell("check_in", {{"class", c}, {"member", "m01"}}).done);
    first = row_of(rows(), "member", "m01");
    QCOMPARE(first.value("visits").toInt(), visits("m01"));
    QCOMPARE(first.value("visit").toInt(), 1);
    QVERIFY(first.value("here").toBool());
    // When the class is over the next visit is meant.
    QVERIFY(teacher_->tell("class.end", {{"class", c}}).done);
    first = row_of(rows(), "member", "m01");
    QCOMPARE(first.value("visit").toInt(), 2);
    QVERIFY(!first.value("here").toBool());
    QCOMPARE(first.value("last_day").toString(),
             sql(data(), "SELECT max(local_day) FROM check_in WHERE member = 'm01'").toString());
    Screen desk(hub_->url(), Role::desk);
    QCOMPARE(desk.ask("members.new").code, QString("refused"));
    QCOMPARE(desk.ask("programmes").code, QString("refused"));
  }

  void a_note_stands_until_the_next_and_stays_in_the_journal() {
    QVERIFY(teacher_->tell("talk.note", {{"member", "m02"}, {"goal", "Climb the tower stairs"}}).done);
    QVERIFY(teacher_->tell("talk.note", {{"member", "m02"}, {"agreed", "Three rows a week"}}).done);
    const auto sheet = [&] { return teacher_->ask("talk.sheet", {{"member", "m02"}}).body; };
    QCOMPARE(sheet().value("goal").toString(), QString("Climb the tower stairs"));
    QCOMPARE(sheet().value("agreed").toString(), QString("Three rows a week"));
    QVERIFY(
        teacher_->tell("talk.note", {{"member", "m02"}, {"goal", "Carry the shopping, Größe egal"}}).done);
    QCOMPARE(sheet().value("goal").toString(), QString("Carry the shopping, Größe egal"));
    QCOMPARE(sheet().value("agreed").toString(), QString("Three rows a week"));
    QCOMPARE(sheet().value("goal_day").toString(),
             QDateTime::currentDateTimeUtc().date().toString(Qt::ISODate));
    // The same words again change nothing; an empty text takes them off.
    QVERIFY(teacher_->tell("talk.note", {{"member", "m02"}, {"agreed", "Three rows a week"}}).done);
    QCOMPARE(sql(data(), "SELECT count(*) FROM journal WHERE kind = 'talk.note'").toInt(), 3);
    QVERIFY(teacher_->tell("talk.note", {{"member", "m02"}, {"agreed", ""}}).done);
    QCOMPARE(sheet().value("agreed").toString(), QString());
    QVERIFY(sheet().value("agreed_day").isNull());
    // The row holds an id alone; every word lies beside it, and earlier ones are still there.
    QCOMPARE(sql(data(), "SELECT count(DISTINCT body) FROM journal WHERE kind = 'talk.note'").toInt(), 1);
    QCOMPARE(sql(data(), "SELECT body FROM journal WHERE kind = 'talk.note'").toString(),
             QString(R"({"member":"m02"})"));
    QCOMPARE(sql(data(),
                 "SELECT count(*) FROM journal_words w JOIN journal j ON j.seq = w.seq"
                 " WHERE j.kind = 'talk.note' AND w.member = 'm02'"
                 " AND w.json LIKE '%tower stairs%'")
                 .toInt(),
             1);
  }

  void notes_are_for_the_instructor_alone_and_erased_with_the_member() {
    QVERIFY(teacher_->tell("talk.note", {{"member", "m03"}, {"goal", "A handstand"}}).done);
    for (const Role role : {Role::wall, Role::touch, Role::desk}) {
      Screen other(hub_->url(), role);
      QVERIFY(other.reach(teacher_->hall().reached));
      QVERIFY(!other.frames().join('\n').contains("handstand"));
      QCOMPARE(other.ask("talk.sheet", {{"member", "m03"}}).code, QString("refused"));
    }
    QVERIFY(teacher_->frames().join('\n').contains("handstand"));  // else the scan proves nothing
    teacher_.reset();
    QVERIFY(hub_->end());
    {
      auto opened = store::Store::open(data().toStdString());
      auto& store = std::get<std::unique_ptr<store::Store>>(opened);
      store::erase_words_of(store->database(), "m03");
    }
    hub_ = std::make_unique<TestHub>(data());
    teacher_ = std::make_unique<Screen>(hub_->url(), Role::instructor);
    const QJsonObject sheet = teacher_->ask("talk.sheet", {{"member", "m03"}}).body;
    QCOMPARE(sheet.value("goal").toString(), QString());
    QCOMPARE(sql(data(), "SELECT count(*) FROM journal_words WHERE json LIKE '%handstand%'").toInt(), 0);
    QCOMPARE(sql(data(), "SELECT count(*) FROM journal WHERE kind = 'talk.note'").toInt(), 1);
  }

  void what_is_no_note_is_refused_and_writes_nothing() {
    const auto code = [&](const QJsonObject& body) { return teacher_->tell("talk.note", body).code; };
    QCOMPARE(code({{"member", "m02"}}), QString("bad_body"));
    QCOMPARE(code({{"member", "nobody"}, {"goal", "x"}}), QString("not_found"));
    QCOMPARE(code({{"member", "m02"}, {"goal", 7}}), QString("bad_body"));
    QCOMPARE(code({{"member", "m02"}, {"goal", "two\nlines"}}), QString("bad_body"));
    QCOMPARE(code({{"member", "m02"}, {"goal", QString(201, QChar(0xF6))}}), QString("bad_body"));
    QCOMPARE(sql(data(), "SELECT count(*) FROM journal WHERE kind = 'talk.note'").toInt(), 0);
    QCOMPARE(code({{"member", "m02"}, {"goal", QString(200, QChar(0xF6))}}), QString());
    QCOMPARE(teacher_->ask("talk.sheet", {{"member", "nobody"}}).code, QString("not_found"));
  }

 private:
  [[nodiscard]] QString data() const { return folder_->path() + "/data"; }
  std::unique_ptr<QTemporaryDir> folder_;
  QStringList classes_;
  std::unique_ptr<TestHub> hub_;
  std::unique_ptr<Screen> teacher_;
};

QTEST_GUILESS_MAIN(TestHubTalk)
#include "tst_hub_talk.moc"
