// SPDX-License-Identifier: GPL-3.0-or-later
// Rows of the figures, here without their clock: a hundredth of the cases in the short run, all of them in
// the long one; bench_peers does the same with the clock.
#include <QTest>

#include "tests/support/planner_rows.h"
#include "tests/support/tiny_cases.h"

using namespace floorwheel;

namespace {

void say_seeds(int cases) {
  qInfo("%d cases from seed %llu on", cases, static_cast<unsigned long long>(tiny::first_seed()));
}

}  // namespace

class TestPlannerRows : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void hall_like_classes_are_proven_in_what_comes_first() {
    const int cases = tiny::cases_wanted(2);
    say_seeds(cases);
    const rows::HallLike row = rows::hall_like(tiny::first_seed(), cases, 0);
    QCOMPARE(row.fault, std::string());
    qInfo("%d of %d proven up to back_to_back", row.proven, row.cases);
    QCOMPARE(row.cases, cases);
    QVERIFY(row.proven * 100 >= cases * 90);
  }

  void repairs_move_the_least() {
    const int cases = tiny::cases_wanted(10);
    say_seeds(cases);
    const rows::Repairs row = rows::repairs({}, tiny::first_seed(), cases);
    QCOMPARE(row.fault, std::string());
    qInfo("moved proven least in %d of %d repairs, worst gap %lld", row.proven, row.cases,
          static_cast<long long>(row.worst_gap));
    QCOMPARE(row.cases, cases);
    QCOMPARE(row.altered, 0);
    QVERIFY(row.moved > 0);
    QVERIFY(row.proven * 100 >= cases * 95);
    QVERIFY(row.worst_gap <= 2);
  }

  void repairs_of_a_large_floor_hold() {
    const int cases = tiny::cases_wanted(10);
    say_seeds(cases);
    const rows::RepairFloor large{40, 20, 20, 2, 2, 50};
    const rows::Repairs row = rows::repairs(large, tiny::first_seed(), cases);
    QCOMPARE(row.fault, std::string());
    QCOMPARE(row.cases, cases);
    QCOMPARE(row.altered, 0);
    QVERIFY(row.moved > 0);
  }
};

QTEST_APPLESS_MAIN(TestPlannerRows)
#include "tst_planner_rows.moc"
