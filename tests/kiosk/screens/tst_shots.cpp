// SPDX-License-Identifier: GPL-3.0-or-later
// Moments of the class timeline as the command line writes them.
#include <QtTest>

#include "kiosk/screens/options.h"
#include "kiosk/screens/shots.h"

using namespace floorwheel;
using namespace floorwheel::screens;

namespace {
// 30 s lead-in, then two slots of 40 + 20 with a break of 90 after the first, then 60 s cool-down.
std::vector<wire::Segment> segments() {
  wire::Timing t;
  t.slots = 2;
  t.work_s = 40;
  t.change_s = 20;
  t.lead_in_s = 30;
  t.cool_down_s = 60;
  t.breaks = {{1, 90}};
  return wire::lay_out(t);
}
int code_of(const QStringList& arguments) {
  const auto read = options_from(QStringList{QStringLiteral("floorwheel-screen")} + arguments);
  return std::holds_alternative<Leave>(read) ? std::get<Leave>(read).code : -1;
}
}  // namespace

class TestShots : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void a_moment_is_its_second_on_the_timeline_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<qint64>("elapsed_ms");
    QTest::newRow("lead-in") << "lead-in 5" << qint64{5'000};
    QTest::newRow("work") << "slot 1 work 0" << qint64{30'000};
    QTest::newRow("change") << "slot 1 change 5" << qint64{75'000};
    QTest::newRow("break") << "slot 1 break 89" << qint64{179'000};
    QTest::newRow("after the break") << "slot 2 work 39" << qint64{219'000};
    QTest::newRow("cool-down") << "cool-down 10" << qint64{250'000};
  }
  void a_moment_is_its_second_on_the_timeline() {
    QFETCH(QString, text);
    QFETCH(qint64, elapsed_ms);
    const auto moment = moment_from(text);
    QVERIFY(moment);
    QCOMPARE(elapsed_of(*moment, segments()), std::optional(elapsed_ms));
  }

  void what_the_class_does_not_have_is_no_moment_of_it() {
    for (const char* text : {"slot 3 work 1", "slot 1 work 40", "warm-up 1", "slot 2 break 1"})
      QVERIFY2(!elapsed_of(*moment_from(QString::fromLatin1(text)), segments()), text);
  }

  void nonsense_is_refused_data() {
    QTest::addColumn<QString>("text");
    for (const char* text : {"", "slot", "slot 0 work 1", "work 3", "slot 1 warm-up 3", "slot 1 work x",
                             "slot 1 work -1", "later"})
      QTest::newRow(text) << QString::fromLatin1(text);
  }
  void nonsense_is_refused() {
    QFETCH(QString, text);
    QVERIFY(!moment_from(text));
    QCOMPARE(code_of({QStringLiteral("wall"), QStringLiteral("--shot"), QStringLiteral("a.png"),
                      QStringLiteral("--at"), text}),
             2);
  }

  void options_that_make_no_sense_leave_with_2_data() {
    QTest::addColumn<QStringList>("arguments");
    QTest::newRow("no role") << QStringList{};
    QTest::newRow("unknown role") << QStringList{"ceiling"};
    QTest::newRow("tool is no screen") << QStringList{"tool"};
    QTest::newRow("unknown option") << QStringList{"wall", "--sise", "1x1"};
    QTest::newRow("size") << QStringList{"wall", "--size", "wide"};
    QTest::newRow("hub") << QStringList{"wall", "--hub", "somewhere"};
    QTest::newRow("shot without at") << QStringList{"wall", "--shot", "a.png"};
    QTest::newRow("patience") << QStringList{"wall", "--patience", "0"};
  }
  void options_that_make_no_sense_leave_with_2() {
    QFETCH(QStringList, arguments);
    QCOMPARE(code_of(arguments), 2);
  }

  void good_options_are_read() {
    const auto read = options_from(
        {QStringLiteral("x"), QStringLiteral("instructor"), QStringLiteral("--size"),
         QStringLiteral("1280x800"), QStringLiteral("--mm"), QStringLiteral("217.6x136"),
         QStringLiteral("--hub"), QStringLiteral("ws://127.0.0.1:9"), QStringLiteral("--shot"),
         QStringLiteral("a.png"), QStringLiteral("--at"), QStringLiteral("now"), QStringLiteral("--shot"),
         QStringLiteral("b.png"), QStringLiteral("--at"), QStringLiteral("slot 2 work 20")});
    const auto* o = std::get_if<Options>(&read);
    QVERIFY(o != nullptr);
    QCOMPARE(o->role, wire::Role::instructor);
    QCOMPARE(o->size, QSize(1280, 800));
    QCOMPARE(o->mm, QSizeF(217.6, 136));
    QCOMPARE(o->hub.port(), 9);
    QCOMPARE(o->shots.size(), 2);
    QCOMPARE(o->shots[1].moment.slot, 2);
  }
};

QTEST_GUILESS_MAIN(TestShots)
#include "tst_shots.moc"
