// SPDX-License-Identifier: GPL-3.0-or-later
// The dose ring by its own geometry: all round it once, in the fixed order, regions farther apart than
// groups, words in rows that do not touch and leaders that do not cross each other or the ring, for every
// number of groups from the fourteen that always stand there to all of them.
#include <QtTest>
#include <cmath>

#include "kiosk/screens/touch_ring.h"

using namespace floorwheel;
using namespace floorwheel::screens;

namespace {

constexpr double near = 1e-9;

double turn(double ax, double ay, double bx, double by, double cx, double cy) {
  return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
}
bool crosses(const RingSector& s, const RingSector& t) {
  const auto side = [](const RingSector& l, double x, double y) {
    return turn(l.leader_x1, l.leader_y1, l.leader_x2, l.leader_y2, x, y);
  };
  return side(s, t.leader_x1, t.leader_y1) * side(s, t.leader_x2, t.leader_y2) < 0 &&
         side(t, s.leader_x1, s.leader_y1) * side(t, s.leader_x2, s.leader_y2) < 0;
}
/// The least distance of the leader from the ring's centre, sampled.
double nearest(const RingSector& s) {
  double least = 1e9;
  for (int i = 0; i <= 200; ++i) {
    const double x = s.leader_x1 + (s.leader_x2 - s.leader_x1) * i / 200;
    const double y = s.leader_y1 + (s.leader_y2 - s.leader_y1) * i / 200;
    least = std::min(least, std::hypot(x - ring_x, y - ring_y));
  }
  return least;
}
/// Those not always there, in any order, all with sets.
std::vector<GroupDose> others() {
  std::vector<GroupDose> out;
  for (const Group g : {Group::adductors, Group::abductors, Group::hip_flexors, Group::serratus,
                        Group::rotator_cuff, Group::shin, Group::neck})
    out.push_back({g, 3, 2});
  return out;
}

}  // namespace

class TestTouchRing : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void nobody_trained_has_fourteen_empty_sectors() {
    const DoseRing ring = ring_of({});
    QCOMPARE(ring.sectors.size(), std::size_t{14});
    QCOMPARE(ring.sectors.front().dose.group, Group::chest);
    QCOMPARE(ring.sectors.back().dose.group, Group::calves);
    for (const RingSector& s : ring.sectors) QCOMPARE(s.dose.band, 0);
    // The figures of the look: (360 - 5 * 8 - 9 * 2) / 14 each, from 4 degrees on.
    QVERIFY(std::abs(ring.sectors.front().from_deg - 4) < near);
    QVERIFY(std::abs(ring.sectors.front().sweep_deg - 302.0 / 14) < near);
  }

  void sets_and_bands_come_through_and_what_only_assists_does_not() {
    const DoseRing ring = ring_of({{Group::lats, 12, 3}, {Group::neck, 0, 0}, {Group::shin, 1, 1}});
    QCOMPARE(ring.sectors.size(), std::size_t{15});
    QCOMPARE(ring.sectors.back().dose.group, Group::shin);
    QCOMPARE(ring.sectors[3].dose.group, Group::lats);
    QCOMPARE(ring.sectors[3].dose.sets, 12);
    QCOMPARE(ring.sectors[3].dose.band, 3);
  }

  void any_number_of_groups_goes_round_once_and_nothing_meets() {
    for (std::size_t more = 0; more <= others().size(); ++more) {
      std::vector<GroupDose> trained = others();
      trained.resize(more);
      const DoseRing ring = ring_of(trained);
      QCOMPARE(ring.sectors.size(), 14 + more);
      double covered = 0;
      int wide = 0;
      for (std::size_t i = 0; i < ring.sectors.size(); ++i) {
        const RingSector& s = ring.sectors[i];
        const RingSector& next = ring.sectors[(i + 1) % ring.sectors.size()];
        const double gap =
            next.from_deg + (i + 1 == ring.sectors.size() ? 360 : 0) - s.from_deg - s.sweep_deg;
        QVERIFY(std::abs(gap - 2) < 1e-6 || std::abs(gap - 8) < 1e-6);
        wide += gap > 5 ? 1 : 0;
        covered += gap + s.sweep_deg;
        QVERIFY(s.row_y - ring.row_height / 2 >= rows_top - near);
        QVERIFY(s.row_y + ring.row_height / 2 <= rows_bottom + near);
        QVERIFY2(nearest(s) >= ring_outer + 7, "a leader lies on the ring");
        for (std::size_t j = 0; j < i; ++j) {
          const RingSector& t = ring.sectors[j];
          QVERIFY(!crosses(s, t));
          if (s.at_right == t.at_right) QVERIFY(std::abs(s.row_y - t.row_y) >= ring.row_height - near);
        }
      }
      QVERIFY(std::abs(covered - 360) < 1e-6);
      QCOMPARE(wide, 5);               // regions
      QVERIFY(ring.row_height >= 58);  // two lines of 5 mm letters
    }
  }

  void a_band_is_known_by_its_id() {
    QCOMPARE(band_number("under_3", 2), 1);
    QCOMPARE(band_number("3_to_9", 3), 2);
    QCOMPARE(band_number("10_to_15", 15), 3);
    QCOMPARE(band_number("over_15", 16), 4);
    QCOMPARE(band_number("under_3", 0), 0);  // a group that was only assisting
    QCOMPARE(band_number("many", 5), 0);
  }
};

QTEST_APPLESS_MAIN(TestTouchRing)
#include "tst_touch_ring.moc"
