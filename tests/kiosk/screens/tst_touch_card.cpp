// SPDX-License-Identifier: GPL-3.0-or-later
// The hand card: what the steppers show and what each key would record.
#include <QTest>

#include "kiosk/screens/touch_card.h"
#include "tests/kiosk/screens/touch_class.h"

using namespace floorwheel;
using namespace floorwheel::screens;
using namespace floorwheel::test;

namespace {
std::optional<touch::PlannedSet> planned(const char* member, int slot) {
  static const wire::Hall hall = touch_hall();
  return touch::planned_set(hall, the_class(hall), member, slot);
}
}  // namespace

class TouchCardTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void as_planned_records_the_plan_whatever_the_steppers_show() {
    TouchCard card;
    card.open("Ana P.", planned("m1", 1));
    card.stepLoad(1);
    card.stepReps(-1);
    card.setRir(0);
    const wire::SetRecord plan = card.as_planned();
    QCOMPARE(plan.load_hg, 160);
    QCOMPARE(plan.reps, 12);
    QCOMPARE(plan.rir, 2);
    const wire::SetRecord shown = card.as_shown();
    QCOMPARE(shown.load_hg, 200);
    QCOMPARE(shown.reps, 11);
    QCOMPARE(shown.rir, 0);
    QCOMPARE(card.load(), QString("20"));
    QCOMPARE(card.plannedLoad(), QString("16"));
    QVERIFY(!card.heavier());
    QVERIFY(card.lighter());
  }

  void without_a_planned_load_one_is_chosen_first_the_lightest_leads() {
    TouchCard card;
    card.open("G1", planned("G1", 1));
    QVERIFY(card.loadAsked());
    QCOMPARE(card.loads()->rowCount(), 3);
    QCOMPARE(card.loads()->index(0).data().toString(), QString("10 kg"));
    QCOMPARE(card.loads()->index(2).data().toString(), QString("22.5 kg"));
    card.chooseLoad(card.loads()->index(1).data(TouchKeys::key).toString());
    QVERIFY(!card.loadAsked());
    QCOMPARE(card.as_planned().load_hg, 150);
    QCOMPARE(card.as_planned().reps, 10);
    QCOMPARE(card.plannedLoad(), QString("15"));
    card.stepLoad(1);
    QCOMPARE(card.as_shown().load_hg, 225);
    QCOMPARE(card.as_planned().load_hg, 150);
  }

  void a_substitute_may_need_no_load() {
    TouchCard card;
    card.open("Zoë T.", planned("m2", 2));
    QVERIFY(card.loadAsked());
    QCOMPARE(card.loads()->index(0).data(TouchKeys::key).toString(), QString());
    card.chooseLoad({});
    QVERIFY(!card.loadAsked());
    QVERIFY(!card.loadLine());
    QVERIFY(!card.as_planned().load_hg);
    QCOMPARE(card.as_planned().exercise, std::string("inverted-row"));
  }

  void body_weight_has_no_load_and_a_hold_no_reserve() {
    TouchCard card;
    card.open("Ana P.", planned("m1", 2));
    QVERIFY(!card.loadAsked());
    QVERIFY(!card.loadLine());
    QVERIFY(card.hold());
    card.stepReps(1);
    QCOMPARE(card.as_shown().reps, 35);
    QVERIFY(!card.as_shown().load_hg);
    QVERIFY(!card.as_shown().rir);
  }

  void not_done_records_no_values() {
    TouchCard card;
    card.open("Ana P.", planned("m1", 1));
    const wire::SetRecord r = card.not_done();
    QVERIFY(!r.done);
    QVERIFY(!r.load_hg);
    QVERIFY(!r.rir);
    QCOMPARE(r.slot, 1);
  }

  void rows_of_others_leave_the_steppers_alone() {
    TouchCard card;
    card.open("Ana P.", planned("m1", 1));
    card.stepReps(-1);
    card.refresh(planned("m1", 1), TouchMark::kept, {}, {});
    QCOMPARE(card.reps(), 11);
    QCOMPARE(card.mark(), QString("kept"));
    auto changed = planned("m1", 1);
    changed->exercise = "box-squat";
    card.refresh(changed, TouchMark::kept, {}, {});
    QCOMPARE(card.reps(), 12);  // another exercise stands there now
  }

  void repetitions_end_at_nought() {
    TouchCard card;
    card.open("Ana P.", planned("m1", 1));
    for (int i = 0; i < 20; ++i) card.stepReps(-1);
    QCOMPARE(card.reps(), 0);
    QVERIFY(!card.fewer());
  }
};

QTEST_GUILESS_MAIN(TouchCardTest)
#include "tst_touch_card.moc"
