// SPDX-License-Identifier: GPL-3.0-or-later
// The desk's figures worked by hand, and the model that changes by rows under Qt's own watcher.
#include <QAbstractItemModelTester>
#include <QJsonObject>
#include <QSignalSpy>
#include <QtTest>

#include "kiosk/screens/desk_tables.h"
#include "kiosk/screens/row_model.h"

using namespace floorwheel;
using namespace floorwheel::screens;

namespace {

QString s(const char* text) { return QString::fromLatin1(text); }

QJsonObject visits(const char* member, const char* week, int n) {
  return {{s("member"), s(member)},
          {s("shown_as"), s(member).toUpper()},
          {s("iso_week"), s(week)},
          {s("visits"), n}};
}

QList<QVariantMap> rows(const QStringList& keys) {
  QList<QVariantMap> all;
  for (const QString& key : keys) all.append({{s("key"), key.left(1)}, {s("alias"), key}});
  return all;
}

QStringList values(const QList<QVariantMap>& rows, const char* name) {
  QStringList all;
  for (const QVariantMap& row : rows) all.append(row.value(s(name)).toString());
  return all;
}

wire::MemberView member(const char* id, bool expected, bool here, qint64 at_ms = 0) {
  wire::MemberView m;
  m.id = id;
  m.shown_as = std::string("Alias ") + id;
  m.expected = expected;
  m.here = here;
  m.here_at_ms = at_ms;
  return m;
}

}  // namespace

class TestDeskTables : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  // ISO 8601: 1 January 2021 lies in week 53 of 2020; 2026 has 53 weeks.
  void weeks_are_iso_weeks_across_the_year() {
    QCOMPARE(iso_week_of(QDate(2021, 1, 3)), s("2020-W53"));
    QCOMPARE(weeks_until(QDate(2027, 1, 5), 3), (QStringList{s("2026-W52"), s("2026-W53"), s("2027-W01")}));
  }

  void bars_add_all_members_and_leave_empty_weeks_in() {
    const QJsonArray answer{visits("a", "2026-W10", 2), visits("b", "2026-W10", 1),
                            visits("a", "2026-W12", 1), visits("a", "2026-W01", 9)};
    const auto bars = week_bars(answer, {s("2026-W10"), s("2026-W11"), s("2026-W12")});
    QCOMPARE(values(bars, "visits"), (QStringList{s("3"), s("0"), s("1")}));
    QCOMPARE(values(bars, "week"), (QStringList{s("10"), s("11"), s("12")}));
    QCOMPARE(bars[0].value(s("part")).toDouble(), 1.0);
    QCOMPARE(values(bars, "running"), (QStringList{s("false"), s("false"), s("true")}));
  }

  void members_are_listed_by_their_visits_then_by_alias() {
    const QJsonArray answer{visits("c", "2026-W10", 1), visits("a", "2026-W11", 1),
                            visits("b", "2026-W10", 1), visits("b", "2026-W11", 3),
                            visits("d", "2026-W01", 5)};
    const auto list = member_weeks(answer, {s("2026-W10"), s("2026-W11")});
    QCOMPARE(values(list, "key"), (QStringList{s("b"), s("a"), s("c")}));
    QCOMPARE(list[0].value(s("cells")).toStringList(), (QStringList{s("1"), s("3")}));
    QCOMPARE(list[1].value(s("cells")).toStringList(), (QStringList{s(""), s("1")}));
    QCOMPARE(list[0].value(s("total")).toInt(), 4);
  }

  // Two weeks: 1 visit is under one a week, 2 is one, 4 is two, 6 is three; two of the six never came.
  void how_often_counts_each_member_once() {
    const QJsonArray answer{visits("a", "2026-W10", 1), visits("b", "2026-W10", 1),
                            visits("b", "2026-W11", 1), visits("c", "2026-W10", 4),
                            visits("d", "2026-W11", 6)};
    const auto bands = how_often(answer, {s("2026-W10"), s("2026-W11")}, 6);
    QCOMPARE(values(bands, "members"), (QStringList{s("2"), s("1"), s("1"), s("1"), s("1")}));
    QCOMPARE(values(bands, "often"), (QStringList{s("false"), s("false"), s("false"), s("true"), s("true")}));
  }

  void attendance_shows_the_latest_first() {
    const QJsonArray answer{QJsonObject{{s("class"), s("x")},
                                        {s("name"), s("Old")},
                                        {s("date"), s("2026-03-01")},
                                        {s("expected"), 4},
                                        {s("here"), 3}},
                            QJsonObject{{s("class"), s("y")},
                                        {s("name"), s("New")},
                                        {s("date"), s("2026-03-05")},
                                        {s("expected"), 2},
                                        {s("here"), 5}}};
    const auto list = attendance_rows(answer);
    QCOMPARE(values(list, "name"), (QStringList{s("New"), s("Old")}));
    QCOMPARE(values(list, "here"), (QStringList{s("5"), s("3")}));
  }

  void a_class_shows_who_is_here_and_who_is_still_expected() {
    wire::ClassView c;
    c.id = "k";
    c.name = "Ring";
    c.start = "2026-03-05T18:30:00+01:00";
    c.open = true;
    const qint64 six = 1772730240000;  // 2026-03-05 17:04 UTC
    c.members = {member("b", true, true, six), member("a", true, false),
                 member("c", false, true, six + 60'000), member("d", false, false)};
    wire::MemberView guest = member("G1", true, false);
    guest.guest = true;
    guest.shown_as.clear();
    c.members.push_back(guest);
    QCOMPARE(values(people_here(c, 3600), "alias"), (QStringList{s("Alias b"), s("Alias c")}));
    QCOMPARE(values(people_here(c, 3600), "time"), (QStringList{s("18:04"), s("18:05")}));
    QCOMPARE(values(people_here(c, 3600), "note"), (QStringList{s(""), s("walk-in")}));
    QCOMPARE(values(people_expected(c), "alias"), (QStringList{s("Alias a"), s("G1")}));
    QCOMPARE(values(last_check_ins(c, 3600, 5), "key"), (QStringList{s("c"), s("b")}));
    wire::Hall hall;
    hall.classes.emplace("k", c);
    const auto cards = class_cards(hall);
    QCOMPARE(values(cards, "time"), QStringList{s("18:30")});
    QCOMPARE(values(cards, "line"), QStringList{s("2 here, 2 expected")});
    QCOMPARE(cards[0].value(s("beads")).toStringList(),
             (QStringList{s("here"), s("here"), s("expected"), s("expected")}));
    hall.classes.at("k").clock.state = wire::Running::over;
    QCOMPARE(values(class_cards(hall), "line"), QStringList{s("2 of 4 came")});
  }

  void a_model_changes_by_rows_and_never_resets_data() {
    QTest::addColumn<QStringList>("before");
    QTest::addColumn<QStringList>("after");
    const auto list = [](const char* words) { return s(words).split(QLatin1Char(' '), Qt::SkipEmptyParts); };
    QTest::newRow("fill") << list("") << list("a b c");
    QTest::newRow("empty") << list("a b c") << list("");
    QTest::newRow("insert") << list("a c") << list("a b c d");
    QTest::newRow("remove") << list("a b c d") << list("b d");
    QTest::newRow("move") << list("a b c d") << list("d a c b");
    QTest::newRow("change") << list("a b c") << list("a b2 c");
    QTest::newRow("all at once") << list("a b c d e") << list("f e2 b a g");
  }
  void a_model_changes_by_rows_and_never_resets() {
    QFETCH(QStringList, before);
    QFETCH(QStringList, after);
    RowModel model({"alias"}, nullptr);
    QAbstractItemModelTester watcher(&model, QAbstractItemModelTester::FailureReportingMode::QtTest);
    model.set_rows(rows(before));
    QSignalSpy resets(&model, &QAbstractItemModel::modelReset);
    model.set_rows(rows(after));
    QCOMPARE(resets.count(), 0);
    QCOMPARE(model.rowCount(), static_cast<int>(after.size()));
    for (int i = 0; i < model.rowCount(); ++i)
      QCOMPARE(model.data(model.index(i), model.roleNames().key("alias")).toString(), after[i]);
  }
  void an_unchanged_row_says_nothing() {
    RowModel model({"alias"}, nullptr);
    model.set_rows(rows({s("a"), s("b")}));
    QSignalSpy data(&model, &QAbstractItemModel::dataChanged);
    QSignalSpy counts(&model, &RowModel::countChanged);
    model.set_rows(rows({s("a"), s("b2")}));
    QCOMPARE(data.count(), 1);
    QCOMPARE(data.first().first().toModelIndex().row(), 1);
    QCOMPARE(counts.count(), 0);
  }
};

QTEST_GUILESS_MAIN(TestDeskTables)
#include "tst_desk_tables.moc"
