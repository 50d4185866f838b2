// SPDX-License-Identifier: GPL-3.0-or-later
// History never moves: chains of changes of any kind on floors with every feature, each repaired, and every
// entry before the repair's slot compared with the run sheet it started from, apart from the auditor, who
// judges each answer too. The short run does 1,000 repairs, the long one a million.
#include <QTest>

#include "tests/support/builders.h"
#include "tests/support/events.h"
#include "tests/support/planner_rows.h"
#include "tests/support/tiny_cases.h"

using namespace floorwheel;

class TestRepairHistory : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void no_entry_of_history_moves() {
    const int cases = qEnvironmentVariableIsSet("FLOORWHEEL_LONG") ? 1'000'000 : tiny::cases_wanted(1000);
    qInfo("%d repairs from seed %llu on", cases, static_cast<unsigned long long>(tiny::first_seed()));
    const rows::History row = rows::history(tiny::first_seed(), cases);
    QCOMPARE(row.fault, std::string());
    qInfo("%lld entries of history, %d repairs refused", static_cast<long long>(row.entries), row.refused);
    QCOMPARE(row.cases, cases);
    QVERIFY(row.entries > cases);
    QVERIFY(row.refused * 4 < cases);
    QCOMPARE(row.altered, 0);
  }

  // What counts them sees each entry that is not as it was, a newcomer's included, and no later one.
  void one_entry_altered_is_counted() {
    ClassSpec c;
    build::station(c, "A", {Group::chest});
    build::station(c, "B", {Group::quadriceps});
    build::member(c, "m1");
    build::member(c, "m2");
    const Rotation was = build::rotation(c, {"A B -", "- A B"});
    const EarlierSheet sheet = build::sheet(c, was);
    QCOMPARE(events::history_kept(c, sheet, was, 3).entries, 4);
    QCOMPARE(events::history_kept(c, sheet, was, 3).altered, 0);
    Rotation twin = was;
    twin.at[0][2] = 0;
    QCOMPARE(events::history_kept(c, sheet, twin, 3).altered, 0);
    twin.at[0][1] = nowhere;
    QCOMPARE(events::history_kept(c, sheet, twin, 3).altered, 1);
    QCOMPARE(events::history_kept(c, sheet, twin, 2).altered, 0);
    build::member(c, "new");
    twin = build::rotation(c, {"A B -", "- A B", "B - -"});
    QCOMPARE(events::history_kept(c, sheet, twin, 3).entries, 4);
    QCOMPARE(events::history_kept(c, sheet, twin, 3).altered, 1);
  }
};

QTEST_APPLESS_MAIN(TestRepairHistory)
#include "tst_repair_history.moc"
