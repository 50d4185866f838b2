// SPDX-License-Identifier: GPL-3.0-or-later
// The rules of the touch screen on plain values: which set is due, what was planned, where one goes next.
#include <QTest>
#include <algorithm>

#include "kiosk/screens/touch_rules.h"
#include "tests/kiosk/screens/touch_class.h"

using namespace floorwheel;
using namespace floorwheel::screens::touch;
using namespace floorwheel::test;

namespace {
wire::Moment at(const wire::Hall& hall, std::int64_t now_ms) {
  return wire::moment_at(the_class(hall).clock, now_ms);
}
std::optional<int> due(const wire::Hall& hall, std::int64_t now_ms, const char* member,
                       std::vector<int> kept = {}) {
  return slot_to_record(the_class(hall), at(hall, now_ms), member,
                        [&](int slot) { return std::ranges::find(kept, slot) != kept.end(); });
}
}  // namespace

class TouchRules : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void before_the_first_slot_people_check_in() {
    wire::Hall hall = touch_hall();
    QCOMPARE(stage_of(nullptr, {}), Stage::none);
    QCOMPARE(stage_of(&the_class(hall), at(hall, 0)), Stage::check_in);
    start(hall);
    QCOMPARE(stage_of(&the_class(hall), at(hall, 10'000)), Stage::check_in);  // lead-in
    QCOMPARE(stage_of(&the_class(hall), at(hall, work_at(1))), Stage::record);
  }

  void stop_and_help_asks_nothing_else() {
    wire::Hall hall = touch_hall();
    start(hall);
    QVERIFY(wire::apply_stop(the_class(hall).clock, work_at(2, 5000)));
    QCOMPARE(stage_of(&the_class(hall), at(hall, work_at(2, 9000))), Stage::stopped);
    QVERIFY(wire::apply_over(the_class(hall).clock, work_at(2, 9500)));
    QCOMPARE(stage_of(&the_class(hall), at(hall, work_at(2, 9900))), Stage::record);  // held
  }

  void in_a_changeover_the_set_just_ended_is_due() {
    wire::Hall hall = touch_hall();
    start(hall);
    QCOMPARE(due(hall, change_at(1), "m1"), 1);
    QCOMPARE(due(hall, change_at(2, 19'000), "m1"), 2);
    QCOMPARE(due(hall, change_at(2), "m1", {2}), 2);  // kept: to be mended
  }

  void it_stays_due_through_the_whole_next_slot() {
    wire::Hall hall = touch_hall();
    start(hall);
    QCOMPARE(due(hall, work_at(2, 39'999), "m1"), 1);
    QCOMPARE(due(hall, work_at(2, 39'999), "m1", {1}), 2);  // finished early
    QCOMPARE(due(hall, work_at(1), "m1"), 1);               // nothing has ended yet
  }

  void who_waited_records_the_last_set_worked() {
    wire::Hall hall = touch_hall();
    start(hall);
    QCOMPARE(due(hall, change_at(3), "m1"), 2);
    QCOMPARE(due(hall, work_at(4), "m1"), 2);
  }

  void after_the_last_slot_and_after_the_end_all_stays_open() {
    wire::Hall hall = touch_hall();
    start(hall);
    const std::int64_t late = change_at(6, change_ms + 3'600'000);
    QVERIFY(at(hall, late).past_end);
    QCOMPARE(due(hall, late, "m1"), 6);
    QCOMPARE(due(hall, late, "G1"), 5);
    QVERIFY(wire::apply_end(the_class(hall).clock, late));
    QCOMPARE(stage_of(&the_class(hall), at(hall, late + 1)), Stage::record);
    QCOMPARE(due(hall, late + 1, "m2"), 6);
    QCOMPARE(worked_slots(the_class(hall), "m1", 6), (std::vector<int>{1, 2, 4, 5, 6}));
  }

  void a_class_closed_early_asks_for_no_slot_that_never_came() {
    wire::Hall hall = touch_hall();
    start(hall);
    QVERIFY(wire::apply_end(the_class(hall).clock, change_at(2, 5000)));
    const std::int64_t later = change_at(6);
    QCOMPARE(stage_of(&the_class(hall), at(hall, later)), Stage::record);
    QCOMPARE(slot_begun(the_class(hall), at(hall, later)), 2);
    QCOMPARE(due(hall, later, "m1"), 2);
    QCOMPARE(next_place(hall, the_class(hall), at(hall, later), "m1").what, NextPlace::What::nothing_more);
  }

  void a_class_closed_before_its_first_slot_records_nothing() {
    wire::Hall hall = touch_hall();
    start(hall);
    QVERIFY(wire::apply_end(the_class(hall).clock, 5000));  // in the lead-in
    QCOMPARE(stage_of(&the_class(hall), at(hall, work_at(3))), Stage::none);
  }

  void who_is_not_in_the_run_sheet_has_nothing_to_record() {
    wire::Hall hall = touch_hall();
    start(hall);
    QVERIFY(!due(hall, change_at(4), "m3"));
    QCOMPARE(next_place(hall, the_class(hall), at(hall, change_at(4)), "m3").what, NextPlace::What::unknown);
  }

  void a_set_is_planned_with_the_members_own_load_and_number() {
    const wire::Hall hall = touch_hall();
    const auto p = planned_set(hall, the_class(hall), "m1", 4);
    QVERIFY(p);
    QCOMPARE(p->letter, std::string("A"));
    QCOMPARE(p->exercise_name, std::string("Goblet squat"));
    QCOMPARE(p->load_hg, 160);
    QCOMPARE(p->set, 2);
    QCOMPARE(p->sets, 2);
    QCOMPARE(p->reps, 12);
    QCOMPARE(p->rir, 2);
    QVERIFY(!planned_set(hall, the_class(hall), "m1", 3));  // waits
    QVERIFY(!planned_set(hall, the_class(hall), "m1", 7));
  }

  void a_substitute_takes_no_load_planned_for_the_stations_exercise() {
    wire::Hall hall = touch_hall();
    the_class(hall).members[1].loads_hg = {{"C", 150}};
    const auto p = planned_set(hall, the_class(hall), "m2", 2);
    QCOMPARE(p->exercise, std::string("inverted-row"));
    QCOMPARE(p->exercise_name, std::string("Inverted row"));
    QVERIFY(!p->load_hg);
    QVERIFY(p->may_go_without);
  }

  void the_next_place_is_that_of_the_slot_after() {
    wire::Hall hall = touch_hall();
    const auto next = [&](std::int64_t now, const char* m) {
      return next_place(hall, the_class(hall), at(hall, now), m);
    };
    QCOMPARE(next(0, "m1").letter, std::string("A"));  // not started: the first place
    start(hall);
    QCOMPARE(next(work_at(1, 1), "m1").letter, std::string("B"));
    QCOMPARE(next(change_at(1), "m1").exercise_name, std::string("Plank"));
    QCOMPARE(next(change_at(2), "m1").what, NextPlace::What::waits);
    QCOMPARE(next(work_at(3), "m1").slot, 4);
    QCOMPARE(next(work_at(6), "m1").what, NextPlace::What::nothing_more);
    QCOMPARE(next(change_at(5), "G1").what, NextPlace::What::nothing_more);
  }

  void loads_step_through_what_stands_there() {
    const std::vector<int> offers{80, 120, 160};
    QCOMPARE(step_load(offers, 120, 1), 160);
    QCOMPARE(step_load(offers, 160, 1), 160);
    QCOMPARE(step_load(offers, 80, -1), 80);
    QCOMPARE(step_load(offers, 130, -1), 120);  // a planned load that does not stand there
    QCOMPARE(step_load(offers, 130, 1), 160);
  }

  void after_the_end_the_class_stays_at_hand_until_midnight() {
    wire::Hall hall = touch_hall();
    start(hall);
    auto& c = the_class(hall);
    const std::int64_t evening = 1'772'733'600'000;  // 2026-03-05 18:00 UTC, 19:00 local
    c.members[0].here = true;
    c.members[0].here_at_ms = evening;
    QVERIFY(wire::apply_end(c.clock, change_at(6)));
    hall.current.clear();
    constexpr int offset_s = 3600;
    QCOMPARE(class_at_hand(hall, evening + 4 * 3'600'000, offset_s), &c);        // 23:00 local
    QVERIFY(class_at_hand(hall, evening + 5 * 3'600'000, offset_s) == nullptr);  // midnight
  }
};

QTEST_APPLESS_MAIN(TouchRules)
#include "tst_touch_rules.moc"
