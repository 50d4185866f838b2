// SPDX-License-Identifier: GPL-3.0-or-later
// A hub that is killed and comes back: on the same boot of the machine the class is where it is; after a
// restart of the machine it is held at the last pulse. Boot id and boot time come from a file.
#include <QJsonDocument>
#include <QSaveFile>
#include <QtTest>

#include "tests/kiosk/hub/hub_client.h"

using namespace floorwheel;
using namespace floorwheel::testing;
using wire::Role;
using wire::Running;

class TestPowerCut : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void init() {
    folder_ = std::make_unique<QTemporaryDir>();
    set_clock("boot-one", 1'000'000);
    start_hub();
    class_ = open_class(*teacher_);
    QVERIFY(publish(*teacher_, class_, 0).done);
    QVERIFY(teacher_->tell("class.start", {{"class", class_}, {"saw", 1}}).done);
  }

  void on_the_same_boot_the_class_is_where_it_is() {
    pulse_at(12'000);
    set_clock("boot-one", 1'014'000);
    restart();
    QCOMPARE(clock().state, Running::running);
    QVERIFY(!clock().power_cut);
    QCOMPARE(elapsed(1'014'000), std::int64_t{14'000});
    QCOMPARE(sql(data(), "SELECT count(*) FROM journal WHERE kind = 'class.hold'").toInt(), 0);
  }

  void after_a_restart_of_the_machine_it_is_held_at_the_last_pulse() {
    pulse_at(12'000);
    pulse_at(47'500);                  // the lead-in is 30 s: 17.5 s into the work of slot 1
    set_clock("boot-one", 1'049'000);  // 1.5 s after the pulse the power goes
    hub_->kill();
    set_clock("boot-two", 20'000);
    start_hub();
    QCOMPARE(clock().state, Running::held);
    QVERIFY(clock().power_cut);
    QCOMPARE(elapsed(20'000), std::int64_t{47'500});
    const auto m = wire::moment_at(clock(), 999'999'999);
    QCOMPARE(m.segment, 1);
    QCOMPARE(m.in_ms, std::int64_t{17'500});
    QCOMPARE(sql(data(), "SELECT json_extract(body, '$.elapsed_ms') FROM journal WHERE kind = 'class.hold'")
                 .toInt(),
             47'500);
    QCOMPARE(
        sql(data(), "SELECT count(*) FROM journal WHERE kind = 'class.hold' AND command IS NULL").toInt(), 1);

    // A wall that was connected before gets the same by its number.
    Screen wall(hub_->url(), Role::wall, teacher_->hall().reached - 1);
    QVERIFY(wall.reach(teacher_->hall().reached));
    QCOMPARE(wall.rows().size(), 1);

    set_clock("boot-two", 60'000);
    QVERIFY(teacher_->tell("class.resume", {{"class", class_}, {"saw", 1}}).done);
    QCOMPARE(elapsed(70'000), std::int64_t{57'500});
    QVERIFY(!clock().power_cut);
  }

  void coming_back_twice_on_the_new_boot_holds_once() {
    pulse_at(12'000);
    hub_->kill();
    set_clock("boot-two", 20'000);
    start_hub();
    restart();
    QCOMPARE(sql(data(), "SELECT count(*) FROM journal WHERE kind = 'class.hold'").toInt(), 1);
    QCOMPARE(elapsed(20'000), std::int64_t{12'000});
  }

  void the_instructor_may_repeat_the_slot_or_end_the_class() {
    pulse_at(95'000);  // lead-in 30, slot 1 to 90: 5 s into the work of slot 2
    hub_->kill();
    set_clock("boot-two", 20'000);
    start_hub();
    QVERIFY(teacher_->tell("class.repeat", {{"class", class_}, {"saw", 1}}).done);
    QCOMPARE(elapsed(20'000), std::int64_t{90'000});
    QCOMPARE(clock().state, Running::held);
    QVERIFY(teacher_->tell("class.end", {{"class", class_}}).done);
    QCOMPARE(sql(data(), "SELECT count(*) FROM pulse").toInt(), 0);
    hub_->kill();
    set_clock("boot-three", 5'000);
    start_hub();
    QVERIFY(!wire::current_class(teacher_->hall()));
  }

  void a_class_that_was_held_keeps_its_second_and_a_power_cut_before_the_first_pulse_loses_nothing() {
    set_clock("boot-one", 1'003'000);
    QVERIFY(teacher_->tell("class.hold", {{"class", class_}}).done);
    hub_->kill();
    set_clock("boot-two", 1'000);
    start_hub();
    QCOMPARE(clock().state, Running::held);
    QCOMPARE(elapsed(1'000), std::int64_t{3'000});
  }

  void another_speed_of_the_class_clock_is_like_another_boot() {
    pulse_at(12'000);
    hub_->kill();
    start_hub({"--speed", "2"});
    QCOMPARE(clock().state, Running::held);
    QCOMPARE(elapsed(0), std::int64_t{12'000});
    QCOMPARE(teacher_->welcome()->speed, 2.0);
    QVERIFY(teacher_->tell("class.resume", {{"class", class_}, {"saw", 1}}).done);
    // 10 s of the machine are 20 s of the class: the clock stands at 1,012,000 and goes to 1,022,000.
    QCOMPARE(elapsed(2 * 1'022'000), std::int64_t{32'000});
  }

 private:
  [[nodiscard]] QString data() const { return folder_->path() + "/data"; }
  [[nodiscard]] QString file() const { return folder_->path() + "/clock"; }
  [[nodiscard]] const wire::ClassClock& clock() const { return teacher_->the_class().clock; }
  [[nodiscard]] std::int64_t elapsed(std::int64_t now) const {
    return wire::moment_at(clock(), now).elapsed_ms;
  }
  void set_clock(const char* boot, qint64 ms) {
    QSaveFile f(file());
    QVERIFY(f.open(QIODevice::WriteOnly));
    f.write(QString("%1\n%2\n%3\n0\n").arg(boot).arg(ms).arg(1'772'731'800'000 + ms).toUtf8());
    QVERIFY(f.commit());
  }
  /// Goes to this place of the class and waits for the hub's pulse there.
  void pulse_at(qint64 elapsed_ms) {
    set_clock("boot-one", 1'000'000 + elapsed_ms);
    QVERIFY(
        wait_until([&] { return sql(data(), "SELECT elapsed_ms FROM pulse").toLongLong() == elapsed_ms; }));
  }
  void start_hub(const QStringList& more = {}) {
    hub_ = std::make_unique<TestHub>(data(), QStringList{"--clock", file()} + more);
    QVERIFY2(hub_->listening(), qPrintable(hub_->errors()));
    teacher_ = std::make_unique<Screen>(hub_->url(), Role::instructor);
    QVERIFY(teacher_->caught_up());
  }
  void restart() {
    hub_->kill();
    start_hub();
  }
  std::unique_ptr<QTemporaryDir> folder_;
  std::unique_ptr<TestHub> hub_;
  std::unique_ptr<Screen> teacher_;
  QString class_;
};

QTEST_GUILESS_MAIN(TestPowerCut)
#include "tst_power_cut.moc"
