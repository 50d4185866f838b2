// SPDX-License-Identifier: GPL-3.0-or-later
// The hub's clock as a screen estimates it, with readings made up: the shortest way there and back counts.
#include <QtTest>

#include "kiosk/screens/link_clock.h"

using floorwheel::screens::LinkClock;
using floorwheel::wire::Welcome;

namespace {
Welcome welcome(qint64 boot_ms, double speed = 1) {
  Welcome w;
  w.hub_boot_ms = boot_ms;
  w.civil_ms = 1'000'000;
  w.speed = speed;
  return w;
}
}  // namespace

class TestLinkClock : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void before_the_first_welcome_it_says_zero() { QCOMPARE(LinkClock().class_ms(5000), 0); }

  void the_probe_with_the_shortest_delay_counts() {
    LinkClock clock;
    clock.welcome(welcome(10'300), 500);  // 200 ms late: the true offset is 10 000
    QCOMPARE(clock.offset_ms(), 9'800);
    clock.probe_back(1000, 11'150, 1200);  // delay 200
    clock.probe_back(2000, 12'002, 2004);  // delay 4: offset exactly 10 000
    clock.probe_back(3000, 13'250, 3300);  // delay 300
    QCOMPARE(clock.offset_ms(), 10'000);
    QCOMPARE(clock.class_ms(4000), 14'000);
  }

  void a_probe_older_than_eight_no_longer_counts() {
    LinkClock clock;
    clock.welcome(welcome(10'000), 0);
    clock.probe_back(0, 10'000, 0);  // perfect, but once the clocks have drifted it must go
    for (int i = 1; i <= 8; ++i) clock.probe_back(i * 100, i * 100 + 10'055, i * 100 + 10);
    QCOMPARE(clock.offset_ms(), 10'050);
  }

  void a_reconnection_to_the_same_hub_moves_nothing() {
    LinkClock clock;
    clock.welcome(welcome(10'000), 0);
    clock.probe_back(100, 10'102, 104);
    QCOMPARE(clock.offset_ms(), 10'000);
    clock.welcome(welcome(20'000), 10'400);  // a slow welcome says 9 600
    QCOMPARE(clock.offset_ms(), 10'000);
  }

  void a_restarted_machine_brings_a_new_offset() {
    LinkClock clock;
    clock.welcome(welcome(10'000), 0);
    clock.welcome(welcome(7), 60'000);
    QCOMPARE(clock.offset_ms(), -59'993);
  }

  void the_class_clock_runs_at_its_speed_and_the_time_of_day_with_it() {
    LinkClock clock;
    clock.welcome(welcome(1000, 30), 0);
    QCOMPARE(clock.class_ms(0), 30'000);
    QCOMPARE(clock.class_ms(1000), 60'000);
    QCOMPARE(clock.civil_ms(0), 1'000'000);
    QCOMPARE(clock.civil_ms(1000), 1'030'000);
  }
};

QTEST_GUILESS_MAIN(TestLinkClock)
#include "tst_link_clock.moc"
