// SPDX-License-Identifier: GPL-3.0-or-later
// The page of keys changes by rows only, watched by Qt's own model tester on random lists.
#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <QTest>
#include <algorithm>
#include <random>

#include "kiosk/screens/touch_keys.h"

using namespace floorwheel::screens;

namespace {
QStringList labels(const TouchKeys& m) {
  QStringList out;
  for (int i = 0; i < m.rowCount(); ++i) out << m.index(i).data().toString();
  return out;
}
std::vector<TouchKey> keys(const QString& letters) {
  std::vector<TouchKey> out;
  for (const QChar c : letters) out.push_back({c, c, {}, {}});
  return out;
}
}  // namespace

class TouchKeysTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void a_tick_changes_one_row_and_moves_none() {
    TouchKeys m(10);
    const QAbstractItemModelTester watch(&m, QAbstractItemModelTester::FailureReportingMode::QtTest);
    m.show(keys("abc"));
    QSignalSpy changed(&m, &QAbstractItemModel::dataChanged);
    QSignalSpy moved(&m, &QAbstractItemModel::rowsMoved);
    QSignalSpy reset(&m, &QAbstractItemModel::modelReset);
    auto marked = keys("abc");
    marked[1].mark = TouchMark::kept;
    m.show(marked);
    QCOMPARE(changed.size(), 1);
    QCOMPARE(changed[0][0].toModelIndex().row(), 1);
    QCOMPARE(m.index(1).data(TouchKeys::mark).toString(), QString("kept"));
    QCOMPARE(moved.size() + reset.size(), 0);
  }

  void pages_turn_round() {
    TouchKeys m(4);
    const QAbstractItemModelTester watch(&m, QAbstractItemModelTester::FailureReportingMode::QtTest);
    m.show(keys("abcdefghi"));
    QCOMPARE(m.pages(), 3);
    m.turn();
    QCOMPARE(labels(m), QStringList({"e", "f", "g", "h"}));
    m.turn();
    QCOMPARE(labels(m), QStringList({"i"}));
    m.show(keys("abcd"));  // its page is gone
    QCOMPARE(m.page(), 0);
    m.show(keys("abcdefghi"));
    m.turn_to("h");
    QCOMPARE(m.page(), 1);
    m.first();
    QCOMPARE(labels(m), QStringList({"a", "b", "c", "d"}));
  }

  void any_list_to_any_list_by_single_rows() {
    std::mt19937 random(7);
    TouchKeys m(6);
    const QAbstractItemModelTester watch(&m, QAbstractItemModelTester::FailureReportingMode::QtTest);
    QSignalSpy reset(&m, &QAbstractItemModel::modelReset);
    for (int round = 0; round < 500; ++round) {
      QString all = "abcdefghijklmn";
      std::shuffle(all.begin(), all.end(), random);
      all.truncate(static_cast<int>(random() % 15));
      m.show(keys(all));
      m.first();
      QCOMPARE(labels(m).join(""), all.left(6));
    }
    QCOMPARE(reset.size(), 0);
  }
};

QTEST_APPLESS_MAIN(TouchKeysTest)
#include "tst_touch_keys.moc"
