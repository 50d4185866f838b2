// SPDX-License-Identifier: GPL-3.0-or-later
// The plait's geometry against figures worked by hand from the look: columns, rows, wraps, pages, changes.
#include <QtTest>
#include <algorithm>
#include <cmath>

#include "kiosk/screens/plait_layout.h"

using namespace floorwheel::screens;

namespace {

/// n stations, one member starting at each, everybody one row on each slot: a plain ring.
PlaitAsk ring(int n, int slots, int laps = 1) {
  PlaitAsk ask;
  ask.slots = slots;
  ask.laps = laps;
  ask.ring = true;
  for (int s = 0; s < n; ++s) ask.letters.emplace_back(1, static_cast<char>('a' + s));
  for (int m = 0; m < n; ++m) {
    std::vector<int> row;
    for (int t = 0; t < slots; ++t) row.push_back((m + t) % n);
    ask.at.push_back(row);
  }
  return ask;
}

bool near(double a, double b) { return std::abs(a - b) < 0.01; }

bool inside(const PlaitStrands& strands) {
  const auto in = [](PlaitPoint p) {
    return p.x >= plait_left - 0.01 && p.x <= plait_left + plait_width + 0.01 && p.y >= plait_top - 0.01 &&
           p.y <= plait_top + plait_height + 0.01;
  };
  return std::ranges::all_of(strands.dots, in) &&
         std::ranges::all_of(strands.lines, [&](const PlaitLine& l) { return std::ranges::all_of(l, in); });
}

}  // namespace

class TestPlaitLayout : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void columns_and_rows_are_those_of_the_look() {
    const Plait p = lay_plait(ring(12, 24, 2));
    QVERIFY(near(p.column, 605.0 / 24));
    QVERIFY(near(p.row, 500.0 / 12));
    QVERIFY(near(p.letters.front().y, 132 + 0.5 * 500 / 12));
    QVERIFY(near(p.grey.dots.front().x, 366 + 0.5 * 605 / 24));
    QCOMPARE(p.grey.dots.size(), std::size_t{12 * 24});
    QCOMPARE(p.lap_lines.size(), std::size_t{1});
    QVERIFY(near(p.lap_lines.front(), 366 + 12 * 605.0 / 24));
  }

  void few_slots_get_columns_of_52() {
    const Plait p = lay_plait(ring(4, 4));
    QVERIFY(near(p.column, 52));
    QCOMPARE(p.numbers.size(), std::size_t{4});
  }

  void narrow_columns_number_even_slots_and_the_present_one() {
    PlaitAsk ask = ring(12, 24);
    ask.present = 7;
    std::vector<int> shown;
    for (const PlaitNumber& n : lay_plait(ask).numbers) shown.push_back(n.slot);
    QCOMPARE(shown, (std::vector<int>{2, 4, 6, 7, 8, 10, 12, 14, 16, 18, 20, 22, 24}));
  }

  void a_strand_past_the_last_row_leaves_below_and_comes_in_above() {
    PlaitAsk ask = ring(4, 4);
    ask.chosen = 3;  // starts at the last row
    const Plait p = lay_plait(ask);
    QCOMPARE(p.yellow.dots.size(), std::size_t{4});
    QCOMPARE(p.yellow.lines.size(), std::size_t{4});  // three steps, the first in two parts
    QVERIFY(near(p.yellow.lines[0].back().y, 632));
    QVERIFY(near(p.yellow.lines[1].front().y, 132));
    QVERIFY(near(p.yellow.lines[0].back().x, p.yellow.lines[1].front().x));  // at the same moment
  }

  void without_a_ring_the_way_back_is_one_line() {
    PlaitAsk ask = ring(4, 4);
    ask.ring = false;
    ask.chosen = 3;
    QCOMPARE(lay_plait(ask).yellow.lines.size(), std::size_t{3});
  }

  void a_hole_breaks_the_strand() {
    PlaitAsk ask = ring(4, 4);
    ask.chosen = 0;
    ask.at[0][1] = no_row;
    const Plait p = lay_plait(ask);
    QCOMPARE(p.yellow.dots.size(), std::size_t{3});
    QCOMPARE(p.yellow.lines.size(), std::size_t{1});
  }

  void members_of_one_station_lie_ten_apart_round_the_line() {
    PlaitAsk ask = ring(4, 4);
    ask.at = {{0, 1, 2, 3}, {0, 1, 2, 3}, {0, 1, 2, 3}};
    const Plait p = lay_plait(ask);
    std::vector<double> ys;
    for (const PlaitPoint& d : p.grey.dots)
      if (near(d.x, 366 + 26)) ys.push_back(d.y);
    QCOMPARE(ys.size(), std::size_t{3});
    QVERIFY(near(ys[0], p.letters[0].y - 10));
    QVERIFY(near(ys[1], p.letters[0].y));
    QVERIFY(near(ys[2], p.letters[0].y + 10));
  }

  void the_waiting_place_is_a_last_row() {
    PlaitAsk ask = ring(4, 4);
    ask.ring = false;
    ask.waiting = true;
    ask.at[0][1] = 4;
    const Plait p = lay_plait(ask);
    QCOMPARE(p.letters.size(), std::size_t{5});
    QVERIFY(p.letters.back().waiting);
    QCOMPARE(QString::fromStdString(p.letters.back().letter), QStringLiteral("W"));
    QVERIFY(near(p.row, 100));
  }

  void slots_gone_and_the_present_one_are_framed() {
    PlaitAsk ask = ring(12, 24);
    ask.gone = 15;
    ask.present = 16;
    const Plait p = lay_plait(ask);
    QVERIFY(near(p.gone.x + p.gone.width, p.present.x));
    QVERIFY(near(p.present.x, 366 + 15 * 605.0 / 24));
    QVERIFY(near(p.present.width, 605.0 / 24));
  }

  void a_closed_station_covers_its_stretch() {
    PlaitAsk ask = ring(12, 24);
    ask.closed = {{5, 17, 24}};
    const Plait p = lay_plait(ask);
    QCOMPARE(p.closed.size(), std::size_t{1});
    QVERIFY(near(p.closed[0].y + p.closed[0].height / 2, p.letters[5].y));
    QVERIFY(near(p.closed[0].x + p.closed[0].width, 366 + 605));
  }

  void a_change_is_sky_for_those_it_touches_and_nobody_else() {
    PlaitAsk ask = ring(6, 6);
    ask.before = ask.at;
    ask.from_slot = 3;
    ask.at[2][3] = no_row;  // rests in slot 4
    const Plait p = lay_plait(ask);
    QCOMPARE(p.sky.dots.size(), std::size_t{4});  // slots 2, 3, 5, 6
    QCOMPARE(p.grey.dots.size(), std::size_t{5 * 6 + 1});
    QVERIFY(!p.skipped.empty());
    // The small dots lie between the two slots round the hole.
    for (const PlaitPoint& d : p.skipped) QVERIFY(d.x > 366 + 2.5 * 52 && d.x < 366 + 4.5 * 52);
  }

  void a_preview_that_changes_nothing_shows_no_sky() {
    PlaitAsk ask = ring(6, 6);
    ask.before = ask.at;
    ask.from_slot = 2;
    const Plait p = lay_plait(ask);
    QVERIFY(p.sky.lines.empty() && p.sky.dots.empty() && p.skipped.empty());
  }

  void beyond_24_slots_and_16_rows_a_page_round_the_present() {
    PlaitAsk ask = ring(20, 40);
    ask.present = 30;
    ask.gone = 29;
    ask.chosen = 0;  // in slot 30 at row 9
    const Plait p = lay_plait(ask);
    QCOMPARE(p.slots, 24);
    QCOMPARE(p.rows, 16);
    QVERIFY(p.first_slot <= 30 && 30 < p.first_slot + 24);
    QVERIFY(p.first_row <= 9 && 9 < p.first_row + 16);
    QCOMPARE(p.first_slot, 17);  // the last page begins at 40 - 24 + 1
  }

  void nothing_leaves_the_page_data() {
    QTest::addColumn<int>("stations");
    QTest::addColumn<int>("slots");
    QTest::addColumn<int>("present");
    for (int n : {1, 2, 4, 12, 16, 20, 30})
      for (int t : {1, 4, 24, 25, 60})
        for (int now : {0, 1, t}) QTest::addRow("%d x %d at %d", n, t, now) << n << t << now;
  }
  void nothing_leaves_the_page() {
    QFETCH(const int, stations);
    QFETCH(const int, slots);
    QFETCH(const int, present);
    PlaitAsk ask = ring(stations, slots);
    ask.present = present;
    ask.gone = std::max(0, present - 1);
    ask.chosen = stations - 1;
    const Plait p = lay_plait(ask);
    QVERIFY(inside(p.grey));
    QVERIFY(inside(p.yellow));
    QVERIFY(p.slots <= 24 && p.rows <= 16);
    if (present > 0) QVERIFY(p.present.width > 0);
    QCOMPARE(p.letters.size(), static_cast<std::size_t>(p.rows));
  }

  void nobody_and_no_slots_is_an_empty_plait() { QVERIFY(lay_plait({}).letters.empty()); }
};

QTEST_APPLESS_MAIN(TestPlaitLayout)
#include "tst_plait_layout.moc"
