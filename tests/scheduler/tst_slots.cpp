// SPDX-License-Identifier: GPL-3.0-or-later
// What each number of slots buys: the rows and which one is chosen. Whether the first row is the right one is
// for tst_planner_truth and tst_planner_outside to say.
#include <QTest>

#include "scheduler/rotation/audit.h"
#include "scheduler/rotation/solve.h"
#include "tests/support/floors.h"
#include "tests/support/tiny_cases.h"

using namespace floorwheel;

class TestSlots : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void best_row_that_fits_is_chosen() {
    ClassSpec c = floors::plain(6, 6, 1, 3);
    c.length_s = 60 * 8;
    const SlotTable table = std::get<SlotTable>(plan_slots(c));
    QCOMPARE(table.rows.front().slots, 6);
    QCOMPARE(table.rows.front().class_s, 360);
    QVERIFY(table.rows[2].fits && !table.rows[3].fits);
    QCOMPARE(table.chosen.rotation.slots, 6);
    QVERIFY(audit(c, table.chosen.rotation).holds());
  }

  void none_fits_so_the_largest_that_does_is_chosen_and_says_what_it_misses() {
    ClassSpec c = floors::plain(6, 6, 1, 3);
    c.length_s = 60 * 4 + 30;
    const SlotTable table = std::get<SlotTable>(plan_slots(c));
    QCOMPARE(table.rows.size(), std::size_t{5});
    QCOMPARE(table.rows.front().slots, 4);
    QVERIFY(table.rows.front().fits && !table.rows[1].fits);
    QCOMPARE(table.chosen.rotation.slots, 4);
    QCOMPARE(table.chosen.cost[Component::missed], 12);
    QVERIFY(table.chosen.reasons.back().find("12 visits are missed") != std::string::npos);
  }

  void the_chosen_plan_alone_is_the_same() {
    const std::uint64_t first = tiny::first_seed();
    const int cases = tiny::cases_wanted(12);
    for (int i = 0; i < cases; ++i) {
      tiny::Draw d(first + static_cast<std::uint64_t>(i));
      const int stations = d.from(2, 6);
      ClassSpec c = tiny::make_class(d.word(), stations, d.from(1, 8), 12);
      c.slots.reset();
      if (d.one_in(2)) c.length_s = 60 * d.from(3, 14);
      PlanOptions options;
      options.effort = 200;
      const auto table = plan_slots(c, options);
      const auto chosen = plan_chosen(c, options);
      QCOMPARE(std::holds_alternative<Refusal>(chosen), std::holds_alternative<Refusal>(table));
      if (std::holds_alternative<Refusal>(table)) continue;
      const Plan& of_table = std::get<SlotTable>(table).chosen;
      const Plan& alone = std::get<Plan>(chosen);
      QCOMPARE(alone.rotation.at, of_table.rotation.at);
      QCOMPARE(alone.cost, of_table.cost);
      QCOMPARE(alone.bound, of_table.bound);
      QCOMPARE(alone.reasons, of_table.reasons);
    }
  }

  void what_is_refused_for_any_slots_is_refused_here() {
    ClassSpec c = floors::plain(2, 2, 1, 1);
    c.pairs = {{"m0", "m1"}};
    QCOMPARE(std::get<Refusal>(plan_slots(c)).rule, 5);
  }
};

QTEST_APPLESS_MAIN(TestSlots)
#include "tst_slots.moc"
