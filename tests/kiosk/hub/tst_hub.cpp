// SPDX-License-Identifier: GPL-3.0-or-later
// A whole class over the socket against a real hub and a real file: every command has its row, a repeat
// changes nothing, an older run sheet is refused, hold and stop always work, the desk's tables come out of
// it. What was written is read back by the test's own SQL.
#include <QJsonArray>
#include <QtTest>

#include "tests/kiosk/hub/hub_client.h"

using namespace floorwheel;
using namespace floorwheel::testing;
using wire::Role;
using wire::Running;

class TestHubCommands : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void init() {
    folder_ = std::make_unique<QTemporaryDir>();
    hub_ = std::make_unique<TestHub>(data());
    QVERIFY2(hub_->listening(), qPrintable(hub_->errors()));
    teacher_ = std::make_unique<Screen>(hub_->url(), Role::instructor);
    QVERIFY(teacher_->caught_up());
  }
  void cleanup() {
    teacher_.reset();
    QVERIFY(hub_->end());  // a signal ends it cleanly, each time
    hub_.reset();
  }

  void a_class_goes_from_check_in_to_the_desk() {
    const QString c = open_class(*teacher_);
    Screen touch(hub_->url(), Role::touch);
    for (const char* m : {"m01", "m02", "m03"})
      QVERIFY(touch.tell("check_in", {{"class", c}, {"member", m}}).done);
    const Reply published = publish(*teacher_, c, 0);
    QVERIFY2(published.done, qPrintable(published.text));
    QCOMPARE(published.body.value("version").toInt(), 1);
    const Reply started = teacher_->tell("class.start", {{"class", c}, {"saw", 1}});
    QVERIFY2(started.done, qPrintable(started.text));
    QCOMPARE(teacher_->the_class().clock.state, Running::running);
    const QString station = QString::fromStdString(station_of(teacher_->the_class(), "m02", 1));
    QVERIFY(!station.isEmpty());
    const Reply kept = touch.tell("record.add", {{"class", c},
                                                 {"member", "m02"},
                                                 {"station", station},
                                                 {"slot", 1},
                                                 {"done", true},
                                                 {"load_hg", 160},
                                                 {"reps", 12},
                                                 {"rir", 2}});
    QVERIFY2(kept.done, qPrintable(kept.text));
    const QString record = kept.body.value("record").toString();
    QCOMPARE(sql(data(), "SELECT load_hg FROM set_record WHERE member = 'm02' AND slot = 1").toInt(), 160);
    const Reply corrected =
        touch.tell("record.correct", {{"record", record}, {"done", true}, {"load_hg", 120}, {"reps", 10}});
    QVERIFY2(corrected.done, qPrintable(corrected.text));
    QCOMPARE(sql(data(), "SELECT count(*) FROM set_record").toInt(), 2);  // both are kept
    QCOMPARE(sql(data(), "SELECT a.load_hg FROM set_record a JOIN set_record b ON b.corrects = a.id").toInt(),
             160);
    QCOMPARE(*touch.the_class().records.at({"m02", 1}).load_hg, 120);
    QCOMPARE(touch.tell("record.correct", {{"record", record}, {"done", true}, {"reps", 9}}).code,
             QString("stale"));
    QVERIFY(teacher_->tell("class.end", {{"class", c}}).done);
    QCOMPARE(teacher_->the_class().clock.state, Running::over);
    // A set remembered after the class still counts.
    QVERIFY(touch
                .tell("record.add",
                      {{"class", c}, {"member", "m02"}, {"station", station}, {"slot", 2}, {"done", false}})
                .done);

    Screen desk(hub_->url(), Role::desk);
    const QJsonArray attendance = desk.ask("attendance").body.value("rows").toArray();
    QCOMPARE(attendance.size(), 1);
    QCOMPARE(attendance[0].toObject().value("expected").toInt(), 3);
    QCOMPARE(attendance[0].toObject().value("here").toInt(), 3);
    QCOMPARE(attendance[0].toObject().value("name").toString(), QString("Ring at the mill"));
    QCOMPARE(attendance[0].toObject().value("date").toString(),
             QDateTime::currentDateTimeUtc().date().toString(Qt::ISODate));
    const QJsonArray frequency = desk.ask("frequency").body.value("rows").toArray();
    QCOMPARE(frequency.size(), 3);
    int year = 0;
    const int week = QDateTime::currentDateTimeUtc().date().weekNumber(&year);
    QCOMPARE(frequency[0].toObject().value("iso_week").toString(),
             QString("%1-W%2").arg(year).arg(week, 2, 10, QChar('0')));
    QCOMPARE(frequency[0].toObject().value("visits").toInt(), 1);
    QCOMPARE(desk.ask("attendance", {{"to", "2001-01-01"}}).body.value("rows").toArray().size(), 0);
    QCOMPARE(desk.ask("attendance", {{"to", "yesterday"}}).code, QString("bad_body"));
  }

  void training_is_answered_from_the_records_to_the_instructor() {
    const QString c = open_class(*teacher_);
    Screen touch(hub_->url(), Role::touch);
    for (const char* m : {"m02", "m03"}) QVERIFY(touch.tell("check_in", {{"class", c}, {"member", m}}).done);
    const QJsonObject hurts{{"class", c}, {"member", "m03"}, {"answer", "hurts"}, {"spot", "quadriceps"}};
    QVERIFY(touch.tell("answer.today", hurts).done);
    QVERIFY(publish(*teacher_, c, 0).done);
    const auto squat = [&](const char* member, int slot) {
      const QJsonObject set{
          {"class", c},   {"member", member}, {"station", "A"}, {"exercise", "goblet-squat"},
          {"slot", slot}, {"done", true},     {"load_hg", 160}, {"reps", 12}};
      return touch.tell("record.add", set).body.value("record").toString();
    };
    const QString first = squat("m02", 1);
    squat("m02", 2);
    squat("m03", 1);
    // A correction takes the place of its record: two sets stay two, and one that was not done is none.
    QVERIFY(touch.tell("record.correct", {{"record", first}, {"done", true}, {"load_hg", 120}, {"reps", 9}})
                .done);

    Screen desk(hub_->url(), Role::desk);
    int quadriceps = 0;
    for (const auto& row : desk.ask("dose", {{"member", "m02"}}).body.value("rows").toArray())
      if (row.toObject().value("group") == "quadriceps") quadriceps = row.toObject().value("sets").toInt();
    QCOMPARE(quadriceps, 2);
    QVERIFY(desk.ask("dose").body.value("rows").toArray().size() > 2);
    QCOMPARE(desk.ask("dose", {{"week", "2025-W53"}}).code, QString("bad_body"));

    const QJsonObject page = teacher_->ask("member.page", {{"member", "m02"}}).body;
    const QJsonArray next = page.value("next").toArray();
    QCOMPARE(next.size(), 1);
    QCOMPARE(next[0].toObject().value("exercise").toString(), QString("goblet-squat"));
    QCOMPARE(next[0].toObject().value("load_kg").toDouble(), 16.0);
    QVERIFY(!next[0].toObject().value("reason").toString().isEmpty());
    const QJsonObject floor = teacher_->ask("floor.stalls").body;
    QCOMPARE(floor.value("stalls").toArray().size(), 0);
    QCOMPARE(floor.value("pain").toArray().size(), 1);
    QCOMPARE(floor.value("pain").toArray()[0].toObject().value("member").toString(), QString("m03"));
    // A member's history is the instructor's alone: the tablet is open to whoever stands before it.
    QVERIFY(!touch.ask("member.page", {{"member", "m02"}}).done);
    QVERIFY(!desk.ask("floor.stalls").done);
    QCOMPARE(teacher_->ask("member.page", {{"member", "nobody"}}).code, QString("not_found"));
  }

  void every_command_is_one_row_with_its_own_number() {
    const QString c = open_class(*teacher_);
    const qint64 rows = sql(data(), "SELECT count(*) FROM journal").toLongLong();
    const Reply in = teacher_->tell("check_in", {{"class", c}, {"member", "m01"}});
    QCOMPARE(in.seq, rows + 1);
    QCOMPARE(sql(data(), QString("SELECT kind FROM journal WHERE seq = %1").arg(in.seq)).toString(),
             QString("check_in"));
    QCOMPARE(sql(data(), "SELECT count(*) FROM check_in").toInt(), 1);
    QCOMPARE(sql(data(), "SELECT max(seq) = count(*) FROM journal").toInt(), 1);  // no gaps
  }

  void the_same_command_twice_changes_nothing_and_gets_the_same_receipt() {
    const QString c = open_class(*teacher_);
    const QString id = Screen::new_id();
    const QJsonObject body{{"class", c}, {"member", "m01"}};
    const Reply once = teacher_->tell("check_in", body, id);
    QVERIFY(once.done);
    const qint64 rows = sql(data(), "SELECT count(*) FROM journal").toLongLong();
    QVERIFY(teacher_->tell("check_in", body, id) == once);
    QVERIFY(teacher_->tell("check_in", body, "{" + id.toUpper() + "}").seq == once.seq);
    QCOMPARE(sql(data(), "SELECT count(*) FROM journal").toLongLong(), rows);
    const Reply other = teacher_->tell("check_in", {{"class", c}, {"member", "m02"}}, id);
    QCOMPARE(other.code, QString("refused"));
    QVERIFY(other.hint.contains("new id"));
    QCOMPARE(sql(data(), "SELECT count(*) FROM check_in").toInt(), 1);
    // Checking in again under another id changes nothing either.
    QVERIFY(teacher_->tell("check_in", body).done);
    QCOMPARE(sql(data(), "SELECT count(*) FROM journal").toLongLong(), rows);
  }

  void a_repeat_after_a_restart_of_the_hub_still_gets_the_same_receipt() {
    const QString c = open_class(*teacher_);
    const QString id = Screen::new_id();
    const Reply once = teacher_->tell("check_in", {{"class", c}, {"member", "m03"}}, id);
    hub_->kill();
    hub_ = std::make_unique<TestHub>(data());
    teacher_ = std::make_unique<Screen>(hub_->url(), Role::instructor);
    QVERIFY(teacher_->caught_up());
    QVERIFY(teacher_->tell("check_in", {{"class", c}, {"member", "m03"}}, id) == once);
  }

  void a_command_that_saw_an_older_run_sheet_is_refused_with_both_numbers() {
    const QString c = open_class(*teacher_);
    QVERIFY(publish(*teacher_, c, 0).done);
    const Reply stale = teacher_->tell("class.start", {{"class", c}, {"saw", 0}});
    QCOMPARE(stale.code, QString("stale"));
    QCOMPARE(stale.body.value("saw").toInt(), 0);
    QCOMPARE(stale.body.value("version").toInt(), 1);
  }

  void hold_and_stop_work_whatever_the_screen_saw_and_twice() {
    const QString c = open_class(*teacher_);
    QCOMPARE(teacher_->tell("class.hold", {{"class", c}}).code, QString("refused"));  // nothing runs yet
    QVERIFY(publish(*teacher_, c, 0).done);
    QVERIFY(teacher_->tell("class.start", {{"class", c}, {"saw", 1}}).done);
    Screen wall(hub_->url(), Role::wall);
    QVERIFY(wall.tell("class.hold", {{"class", c}, {"saw", 99}}).done);
    QVERIFY(wall.tell("class.hold", {{"class", c}}).done);
    QVERIFY(wall.tell("class.stop", {{"class", c}}).done);
    QVERIFY(wall.tell("class.stop", {{"class", c}}).done);
    QVERIFY(teacher_->reach(wall.hall().reached));
    QCOMPARE(teacher_->the_class().clock.state, Running::stopped);
    QCOMPARE(teacher_->tell("class.resume", {{"class", c}, {"saw", 1}}).code, QString("refused"));
    QVERIFY(teacher_->tell("class.over", {{"class", c}}).done);
    QCOMPARE(teacher_->the_class().clock.state, Running::held);
    QVERIFY(teacher_->tell("class.resume", {{"class", c}, {"saw", 1}}).done);
    QCOMPARE(teacher_->the_class().clock.state, Running::running);
  }

  void a_second_tap_on_skip_does_not_skip_the_next_segment() {
    const QString c = open_class(*teacher_);
    QVERIFY(publish(*teacher_, c, 0).done);
    QVERIFY(teacher_->tell("class.start", {{"class", c}, {"saw", 1}}).done);
    QVERIFY(teacher_->tell("class.hold", {{"class", c}}).done);
    const QJsonObject skip{{"class", c}, {"saw", 1}, {"segment", 0}};  // the lead-in
    QVERIFY(teacher_->tell("class.skip", skip).done);
    QVERIFY(teacher_->tell("class.skip", skip).done);
    const auto m = wire::moment_at(teacher_->the_class().clock, 0);
    QCOMPARE(m.segment, 1);
    QCOMPARE(m.elapsed_ms, std::int64_t{30'000});
    QVERIFY(teacher_->tell("class.more_time", {{"class", c}, {"saw", 1}, {"s", 15}}).done);
    QCOMPARE(wire::moment_at(teacher_->the_class().clock, 0).left_ms, std::int64_t{55'000});
    QVERIFY(teacher_->tell("class.repeat", {{"class", c}, {"saw", 1}}).done);
    QCOMPARE(teacher_->tell("class.more_time", {{"class", c}, {"saw", 1}, {"s", 0}}).code,
             QString("bad_body"));
  }

  void only_one_class_runs_and_one_that_runs_can_be_ended_at_any_time() {
    const QString first = open_class(*teacher_);
    const Reply second = teacher_->tell("class.add", {{"toml", small_class()}});
    QVERIFY(second.done);
    const QString other = second.body.value("class").toString();
    QVERIFY(publish(*teacher_, first, 0).done);
    QVERIFY(teacher_->tell("class.start", {{"class", first}, {"saw", 1}}).done);
    const Reply refused = teacher_->tell("class.open", {{"class", other}});
    QCOMPARE(refused.code, QString("refused"));
    QVERIFY(refused.text.contains("Ring at the mill"));
    QVERIFY(teacher_->tell("class.end", {{"class", first}}).done);
    QVERIFY(teacher_->tell("class.open", {{"class", other}}).done);
    QCOMPARE(teacher_->tell("class.open", {{"class", first}}).code, QString("refused"));
    const QJsonArray classes = teacher_->ask("classes").body.value("classes").toArray();
    QCOMPARE(classes.size(), 2);
    QCOMPARE(classes[0].toObject().value("state").toString(), QString("open"));
    QCOMPARE(classes[1].toObject().value("state").toString(), QString("ended"));
  }

  void heads_are_counted_with_guests_and_a_walk_in_takes_a_seat() {
    const QString c = open_class(*teacher_);
    QVERIFY(teacher_->tell("member.add", {{"id", "w1"}, {"shown_as", "Rook W."}, {"level", "novice"}}).done);
    QVERIFY(teacher_->tell("check_in", {{"class", c}, {"member", "w1"}}).done);
    QVERIFY(!find_member(teacher_->the_class(), "w1")->expected);
    QVERIFY(
        teacher_->tell("heads.count", {{"class", c}, {"here", QJsonArray{"m01", "w1"}}, {"guests", 2}}).done);
    QCOMPARE(sql(data(), "SELECT count(*) FROM check_in").toInt(), 4);
    const Reply sheet = publish(*teacher_, c, 0);
    QVERIFY2(sheet.done, qPrintable(sheet.text));
    std::vector<std::string> on;
    for (const RunSheetRow& r : teacher_->the_class().sheet.rows) on.push_back(r.member);
    QCOMPARE(on, (std::vector<std::string>{"m01", "w1", "G1", "G2"}));
    QVERIFY(teacher_->tell("check_in.undo", {{"class", c}, {"member", "m01"}}).done);
    QCOMPARE(sql(data(), "SELECT count(*) FROM check_in").toInt(), 3);
    QCOMPARE(teacher_->tell("check_in", {{"class", c}, {"member", "nobody"}}).code, QString("not_found"));
  }

  void a_proposal_made_before_somebody_came_is_not_published() {
    const QString c = open_class(*teacher_);
    QVERIFY(teacher_->tell("check_in", {{"class", c}, {"member", "m01"}}).done);
    const Reply proposal = teacher_->ask("proposal", {{"class", c}});
    QVERIFY(teacher_->tell("check_in", {{"class", c}, {"member", "m02"}}).done);
    const QJsonObject body{{"class", c}, {"saw", 0}, {"proposal", proposal.body.value("proposal")}};
    QCOMPARE(teacher_->tell("class.publish", body).code, QString("stale"));
    QVERIFY(publish(*teacher_, c, 0).done);
    const QJsonObject unknown{{"class", c}, {"saw", 1}, {"proposal", Screen::new_id()}};
    QCOMPARE(teacher_->tell("class.publish", unknown).code, QString("not_found"));
  }

  void where_it_hurts_is_left_out_but_what_was_agreed_stays() {
    const QString c = open_class(*teacher_);
    QVERIFY(
        teacher_
            ->tell("answer.today", {{"class", c}, {"member", "m02"}, {"answer", "hurts"}, {"spot", "chest"}})
            .done);
    QVERIFY(publish(*teacher_, c, 0).done);
    const auto& view = teacher_->the_class();
    for (int slot = 1; slot <= view.sheet.timing.slots; ++slot) QVERIFY(station_of(view, "m02", slot) != "C");
    // m01 must not bend the knees deeply: the agreed substitute stands in at A.
    QCOMPARE(find_member(view, "m01")->exercises.at("A"), std::string("box-squat"));
    QCOMPARE(
        teacher_
            ->tell("answer.today", {{"class", c}, {"member", "m02"}, {"answer", "hurts"}, {"spot", "ghost"}})
            .code,
        QString("bad_body"));
  }

  void a_run_sheet_that_no_longer_fits_the_class_is_not_started() {
    const QString c = open_class(*teacher_);
    QVERIFY(publish(*teacher_, c, 0).done);
    QVERIFY(
        teacher_
            ->tell("answer.today", {{"class", c}, {"member", "m02"}, {"answer", "hurts"}, {"spot", "chest"}})
            .done);
    const Reply refused = teacher_->tell("class.start", {{"class", c}, {"saw", 1}});
    QCOMPARE(refused.code, QString("stale"));
    QVERIFY(refused.hint.contains("new proposal"));
    QVERIFY(publish(*teacher_, c, 1).done);
    QVERIFY(teacher_->tell("class.start", {{"class", c}, {"saw", 2}}).done);
  }

  void what_cannot_hold_comes_back_as_the_planners_sentence() {
    QString toml = small_class();
    toml.replace("rule = \"apart\"", "rule = \"together\"");  // every station has one place
    const QString c = open_class(*teacher_, toml);
    const Reply answer = teacher_->ask("proposal", {{"class", c}});
    QVERIFY(answer.done);
    const QJsonObject refusal = answer.body.value("refusal").toObject();
    QCOMPARE(refusal.value("rule").toInt(), 5);
    QVERIFY(!refusal.value("reason").toString().isEmpty());
  }

  void a_class_file_that_cannot_be_read_says_where_and_keeps_nothing() {
    QString toml = small_class();
    toml.replace("capacity", "capacity");
    toml.replace("exercise = \"seated-row\"", "exercise = \"seated-rov\"");
    const Reply bad = teacher_->tell("class.add", {{"toml", toml}});
    QCOMPARE(bad.code, QString("bad_body"));
    QVERIFY2(bad.text.contains("seated-rov"), qPrintable(bad.text));
    QVERIFY(bad.body.value("line").toInt() > 1);
    QCOMPARE(sql(data(), "SELECT count(*) FROM class").toInt(), 0);
    QCOMPARE(sql(data(), "SELECT count(*) FROM member").toInt(), 0);
  }

  void an_alias_belongs_to_one_member() {
    open_class(*teacher_);
    const Reply taken = teacher_->tell("member.add", {{"shown_as", "Wren A."}, {"level", "novice"}});
    QCOMPARE(taken.code, QString("refused"));
    QCOMPARE(taken.body.value("member").toString(), QString("m01"));
    QString toml = small_class();
    toml.replace("Wren A.", "Wren Z.");
    QCOMPARE(teacher_->tell("class.add", {{"toml", toml}}).code, QString("refused"));
    QVERIFY(teacher_->tell("class.add", {{"toml", small_class()}}).done);
  }

  void many_commands_at_once_share_commits_and_all_are_kept() {
    const QString c = open_class(*teacher_);
    QVERIFY(publish(*teacher_, c, 0).done);
    Screen touch(hub_->url(), Role::touch);
    QVERIFY(touch.caught_up());
    QStringList ids;
    for (int i = 0; i < 200; ++i) {
      ids << Screen::new_id();
      const QByteArray body = QJsonDocument(QJsonObject{{"class", c},
                                                        {"member", "m02"},
                                                        {"station", "B"},
                                                        {"slot", 1 + i % 4},
                                                        {"done", true},
                                                        {"reps", i}})
                                  .toJson(QJsonDocument::Compact);
      touch.send(wire::Message(
          wire::Tell{.id = ids.back().toStdString(), .kind = "record.add", .body = body.toStdString()}));
    }
    QVERIFY(wait_until([&] {
      return std::all_of(ids.begin(), ids.end(),
                         [&](const QString& id) { return touch.reply(id).has_value(); });
    }));
    qint64 last = 0;
    for (const QString& id : ids) {
      QVERIFY2(touch.reply(id)->done, qPrintable(touch.reply(id)->text));
      QVERIFY(touch.reply(id)->seq > last);  // in the order they were told
      last = touch.reply(id)->seq;
    }
    QCOMPARE(sql(data(), "SELECT count(*) FROM set_record").toInt(), 200);
    QCOMPARE(touch.the_class().records.at({"m02", 4}).reps, 199);
  }

  void health_says_how_the_hub_is() {
    const QJsonObject h = teacher_->ask("health").body;
    QCOMPARE(h.value("schema").toInt(), sql(data(), "PRAGMA user_version").toInt());
    QCOMPARE(h.value("database").toString(), data() + "/floorwheel.db");
    QCOMPARE(h.value("speed").toDouble(), 1.0);
    QCOMPARE(h.value("screens").toArray().size(), 1);
    QCOMPARE(h.value("screens").toArray()[0].toObject().value("role").toString(), QString("instructor"));
  }

 private:
  [[nodiscard]] QString data() const { return folder_->path() + "/data"; }
  std::unique_ptr<QTemporaryDir> folder_;
  std::unique_ptr<TestHub> hub_;
  std::unique_ptr<Screen> teacher_;
};

QTEST_GUILESS_MAIN(TestHubCommands)
#include "tst_hub.moc"
