// SPDX-License-Identifier: GPL-3.0-or-later
// Changes while a class runs: late arrivals, leavers, closed stations, the floor as laid out. Each makes a
// new run sheet that keeps history, does what its preview said, and passes the auditor. The class clock is
// injected, so that every moment is exact.
#include <QJsonArray>
#include <QSaveFile>
#include <QtTest>

#include "tests/kiosk/hub/hub_client.h"

using namespace floorwheel;
using namespace floorwheel::testing;
using wire::Role;

class TestHubFloor : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void init() {
    folder_ = std::make_unique<QTemporaryDir>();
    set_clock(1'000'000);
    hub_ = std::make_unique<TestHub>(data(), QStringList{"--clock", clock()});
    QVERIFY2(hub_->listening(), qPrintable(hub_->errors()));
    teacher_ = std::make_unique<Screen>(hub_->url(), Role::instructor);
    QVERIFY(teacher_->caught_up());
    class_ = open_class(*teacher_);
  }
  void cleanup() {
    teacher_.reset();
    QVERIFY(hub_->end());
  }

  void a_late_arrival_keeps_what_is_announced_and_what_is_done() {
    start_at_slot_1();
    QVERIFY(
        teacher_->tell("member.add", {{"id", "late"}, {"shown_as", "Plover L."}, {"level", "novice"}}).done);
    const auto before = view().sheet;
    const Reply previewed = preview({{"kind", "class.late"}, {"member", "late"}});
    QVERIFY2(previewed.done, qPrintable(previewed.text + previewed.hint));
    QCOMPARE(previewed.body.value("from_slot").toInt(), 2);
    QVERIFY(
        previewed.body.value("sentences").toArray()[0].toString().contains("Plover L. joins from slot 2"));
    QCOMPARE(view().sheet.version, 1);  // nothing was done yet
    const Reply done = teacher_->tell("class.late", {{"class", class_}, {"saw", 1}, {"member", "late"}});
    QVERIFY2(done.done, qPrintable(done.text));
    QCOMPARE(done.body.value("version").toInt(), 2);
    QCOMPARE(station_of(view(), "late", 1), std::string());
    bool works = false;
    for (int slot = 2; slot <= 4; ++slot) works = works || !station_of(view(), "late", slot).empty();
    QVERIFY(works);
    for (const RunSheetRow& r : before.rows) QCOMPARE(station_of(view(), r.member, 1), r.stations[0]);
    QCOMPARE(QJsonDocument::fromJson(last_body()).object().value("sheet").toObject(),
             previewed.body.value("sheet").toObject());
    QCOMPARE(sql(data(), "SELECT count(*) FROM run_sheet").toInt(), 2);
    QCOMPARE(sql(data(), "SELECT at_slot FROM run_sheet WHERE version = 2").toInt(), 2);
    QCOMPARE(teacher_->tell("class.late", {{"class", class_}, {"saw", 2}, {"member", "late"}}).code,
             QString("refused"));
  }

  void a_guest_can_come_late_without_a_name() {
    start_at_slot_1();
    const Reply done = teacher_->tell("class.late", {{"class", class_}, {"saw", 1}});
    QVERIFY2(done.done, qPrintable(done.text));
    QCOMPARE(done.body.value("member").toString(), QString("G1"));
    QVERIFY(find_member(view(), "G1")->guest);
    QCOMPARE(find_member(view(), "G1")->present, (SlotRange{.first = 2}));
  }

  void in_the_changeover_the_announced_slot_stays_too() {
    start_at_slot_1();
    set_clock(started_ + 30'000 + 45'000);  // 5 s into the change of slot 1
    const auto before = view().sheet;
    const Reply previewed = preview({{"kind", "class.leave"}, {"member", "m03"}});
    QCOMPARE(previewed.body.value("from_slot").toInt(), 3);
    QVERIFY(teacher_->tell("class.leave", {{"class", class_}, {"saw", 1}, {"member", "m03"}}).done);
    for (const RunSheetRow& r : before.rows)
      if (r.member != "m03")
        for (int slot = 1; slot <= 2; ++slot)
          QCOMPARE(station_of(view(), r.member, slot), r.stations[static_cast<std::size_t>(slot) - 1]);
    for (int slot = 2; slot <= 4; ++slot) QCOMPARE(station_of(view(), "m03", slot), std::string());
    QCOMPARE(station_of(view(), "m03", 1), station_in(before, "m03", 1));
    QCOMPARE(find_member(view(), "m03")->present, (SlotRange{.first = 1, .last = 1}));
  }

  void somebody_who_left_can_come_back_with_what_was_done() {
    start_at_slot_1();
    const std::string first = station_of(view(), "m03", 1);
    QVERIFY(teacher_->tell("class.leave", {{"class", class_}, {"saw", 1}, {"member", "m03"}}).done);
    set_clock(started_ + 30'000 + 60'000 + 5'000);  // slot 2
    const Reply back = teacher_->tell("class.late", {{"class", class_}, {"saw", 2}, {"member", "m03"}});
    QVERIFY2(back.done, qPrintable(back.text));
    QCOMPARE(station_of(view(), "m03", 1), first);
    QCOMPARE(station_of(view(), "m03", 2), std::string());
    QVERIFY(!station_of(view(), "m03", 3).empty() || !station_of(view(), "m03", 4).empty());
  }

  void a_closed_station_is_used_by_nobody_until_it_opens() {
    start_at_slot_1();
    QVERIFY(teacher_->tell("station.close", {{"class", class_}, {"saw", 1}, {"station", "B"}}).done);
    QVERIFY(find_station(view(), "B")->closed_now);
    for (const RunSheetRow& r : view().sheet.rows)
      for (int slot = 2; slot <= 4; ++slot) QVERIFY(station_of(view(), r.member, slot) != "B");
    QCOMPARE(teacher_->tell("station.close", {{"class", class_}, {"saw", 2}, {"station", "B"}}).code,
             QString("refused"));
    const Reply opened = teacher_->tell("station.open", {{"class", class_}, {"saw", 2}, {"station", "B"}});
    QVERIFY2(opened.done, qPrintable(opened.text));
    QCOMPARE(view().sheet.version, 3);
    QVERIFY(!find_station(view(), "B")->closed_now);
    const Reply range =
        teacher_->tell("station.close", {{"class", class_}, {"saw", 3}, {"station", "C"}, {"until_slot", 2}});
    QVERIFY2(range.done, qPrintable(range.text));
    for (const RunSheetRow& r : view().sheet.rows) QVERIFY(station_of(view(), r.member, 2) != "C");
    QCOMPARE(
        teacher_->tell("station.close", {{"class", class_}, {"saw", 4}, {"station", "D"}, {"until_slot", 1}})
            .code,
        QString("refused"));
  }

  void the_floor_as_laid_out_before_a_sheet_and_during_the_class() {
    const auto change = [this](const char* kind, QJsonObject body) {
      body["class"] = class_;
      body["saw"] = view().sheet.version;
      const Reply r = teacher_->tell(kind, body);
      if (!r.done) qWarning("%s: %s", kind, qPrintable(r.text));
      return r;
    };
    QVERIFY(change("station.set", {{"station", "B"}, {"exercise", "plank"}}).done);
    QCOMPARE(find_station(view(), "B")->exercise, std::string("plank"));
    QVERIFY(find_station(view(), "B")->hold);
    QVERIFY(change("station.swap", {{"station", "A"}, {"with", "C"}}).done);
    QCOMPARE(find_station(view(), "A")->exercise, std::string("press-up"));
    QCOMPARE(find_station(view(), "C")->exercise, std::string("goblet-squat"));
    QCOMPARE(find_station(view(), "C")->x_cm, 400);
    const Reply added = change("station.add", {{"exercise", "calf-raise"}, {"after", "B"}, {"capacity", 2}});
    QVERIFY(added.done);
    QCOMPARE(added.body.value("station").toString(), QString("E"));
    QCOMPARE(view().stations[2].id, std::string("E"));
    QCOMPARE(view().stations[2].y_cm, 150);
    QCOMPARE(view().sheet.version, 0);  // no run sheet yet: nothing to mend
    QVERIFY(change("floor.as_in_file", {}).done);
    QCOMPARE(view().stations.size(), std::size_t{4});
    QCOMPARE(find_station(view(), "B")->exercise, std::string("seated-row"));
    QCOMPARE(change("station.set", {{"station", "B"}, {"exercise", "plnak"}}).hint.contains("plank"), true);

    start_at_slot_1();
    QVERIFY(change("station.swap", {{"station", "A"}, {"with", "C"}}).done);
    QCOMPARE(view().sheet.version, 2);
    QVERIFY(change("station.add", {{"exercise", "calf-raise"}}).done);
    QCOMPARE(view().sheet.version, 3);
    QVERIFY(change("station.set", {{"station", "E"}, {"exercise", "plank"}}).done);
    QCOMPARE(change("floor.as_in_file", {}).code, QString("refused"));
  }

  void a_change_whose_preview_is_out_of_date_is_planned_anew() {
    start_at_slot_1();
    const QJsonObject close{{"kind", "station.close"}, {"station", "B"}};
    QCOMPARE(preview(close).body.value("from_slot").toInt(), 2);
    set_clock(started_ + 30'000 + 60'000 + 5'000);  // slot 2 has begun meanwhile
    const Reply done = teacher_->tell("station.close", {{"class", class_}, {"saw", 1}, {"station", "B"}});
    QVERIFY(done.done);
    QCOMPARE(view().sheet.at_slot, 3);
    QCOMPARE(teacher_->tell("station.open", {{"class", class_}, {"saw", 1}, {"station", "B"}}).code,
             QString("stale"));
  }

  void in_the_last_slot_nothing_is_left_to_change() {
    start_at_slot_1();
    set_clock(started_ + 30'000 + 3 * 60'000 + 5'000);
    const Reply late = teacher_->tell("class.late", {{"class", class_}, {"saw", 1}});
    QCOMPARE(late.code, QString("refused"));
    QVERIFY(late.text.contains("last slot"));
  }

  void a_preview_of_something_else_says_what_can_be_previewed() {
    start_at_slot_1();
    const Reply r = preview({{"kind", "class.hold"}});
    QCOMPARE(r.code, QString("bad_body"));
    QVERIFY(r.hint.contains("station.swap"));
  }

 private:
  [[nodiscard]] QString data() const { return folder_->path() + "/data"; }
  [[nodiscard]] QString clock() const { return folder_->path() + "/clock"; }
  [[nodiscard]] const wire::ClassView& view() const { return teacher_->the_class(); }
  void set_clock(qint64 boot_ms) {
    QSaveFile f(clock());
    QVERIFY(f.open(QIODevice::WriteOnly));
    f.write(QString("boot-one\n%1\n%2\n3600\n").arg(boot_ms).arg(1'772'731'800'000 + boot_ms).toUtf8());
    QVERIFY(f.commit());
    now_ = boot_ms;
  }
  /// Publishes, starts, and goes 5 s into the work of slot 1 (the lead-in is 30 s).
  void start_at_slot_1() {
    const Reply published = publish(*teacher_, class_, view().sheet.version);
    QVERIFY2(published.done, qPrintable(published.text));
    QVERIFY(teacher_->tell("class.start", {{"class", class_}, {"saw", view().sheet.version}}).done);
    started_ = now_;
    set_clock(started_ + 35'000);
  }
  Reply preview(const QJsonObject& change) {
    return teacher_->ask("preview", {{"class", class_}, {"saw", view().sheet.version}, {"change", change}});
  }
  [[nodiscard]] QByteArray last_body() const {
    return QByteArray::fromStdString(teacher_->rows().back().body);
  }
  static std::string station_in(const wire::RunSheet& s, const std::string& member, std::size_t slot) {
    for (const RunSheetRow& r : s.rows)
      if (r.member == member) return r.stations[slot - 1];
    return {};
  }
  std::unique_ptr<QTemporaryDir> folder_;
  std::unique_ptr<TestHub> hub_;
  std::unique_ptr<Screen> teacher_;
  QString class_;
  qint64 now_ = 0;
  qint64 started_ = 0;
};

QTEST_GUILESS_MAIN(TestHubFloor)
#include "tst_hub_floor.moc"
