// SPDX-License-Identifier: GPL-3.0-or-later
// The wall's keyed list model: new lists come in as rows that come, go or change, never as a reset.
#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <QTest>
#include <random>

#include "kiosk/screens/wall_rows.h"

using floorwheel::screens::WallRows;

class TestWallRows : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void a_changed_value_is_a_changed_row() {
    WallRows rows({"label", "px"}, nullptr);
    rows.assign({{"b", {"Bilal", 2}}, {"a", {"Ana", 1}}});
    QSignalSpy changed(&rows, &QAbstractItemModel::dataChanged);
    QSignalSpy came(&rows, &QAbstractItemModel::rowsInserted);
    rows.assign({{"a", {"Ana", 7}}, {"b", {"Bilal", 2}}});
    QCOMPARE(changed.count(), 1);
    QCOMPARE(changed[0][0].toModelIndex().row(), 0);
    QCOMPARE(changed[0][2].value<QList<int>>(), QList<int>{Qt::UserRole + 1});
    QCOMPARE(came.count(), 0);
    QCOMPARE(rows.value("a", "px").toInt(), 7);
  }
  void the_same_list_says_nothing() {
    WallRows rows({"label"}, nullptr);
    rows.assign({{"a", {"Ana"}}, {"b", {"Bilal"}}});
    QSignalSpy changed(&rows, &QAbstractItemModel::dataChanged);
    QSignalSpy came(&rows, &QAbstractItemModel::rowsInserted);
    QSignalSpy went(&rows, &QAbstractItemModel::rowsRemoved);
    rows.assign({{"b", {"Bilal"}}, {"a", {"Ana"}}});
    QCOMPARE(changed.count() + came.count() + went.count(), 0);
  }
  void any_list_after_any_other_without_a_reset() {
    WallRows rows({"label"}, nullptr);
    QAbstractItemModelTester tester(&rows, QAbstractItemModelTester::FailureReportingMode::QtTest);
    QSignalSpy reset(&rows, &QAbstractItemModel::modelReset);
    std::mt19937 chance(7);
    for (int round = 0; round < 300; ++round) {
      std::vector<WallRows::Row> fresh;
      QStringList keys;
      for (char key = 'a'; key <= 'p'; ++key)
        if (chance() % 2 == 0) {
          keys.append(QString(QLatin1Char(key)));
          fresh.push_back({keys.back(), {static_cast<int>(chance() % 3)}});
        }
      std::shuffle(fresh.begin(), fresh.end(), chance);
      const auto wanted = fresh;
      rows.assign(std::move(fresh));
      QCOMPARE(rows.rowCount(), static_cast<int>(keys.size()));
      for (int i = 0; i < rows.rowCount(); ++i)
        QCOMPARE(rows.rows()[static_cast<std::size_t>(i)].key, keys[i]);
      for (const auto& w : wanted) QCOMPARE(rows.value(w.key, "label"), w.values[0]);
    }
    QCOMPARE(reset.count(), 0);
  }
};

QTEST_GUILESS_MAIN(TestWallRows)
#include "tst_wall_rows.moc"
