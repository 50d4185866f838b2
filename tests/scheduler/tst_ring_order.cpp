// SPDX-License-Identifier: GPL-3.0-or-later
// The order of a ring's stations: the descent against weighing whole orders, its answers against every order
// of small floors, and a floor of a hundred stations whose shortest ring is known.
#include <QTest>
#include <algorithm>
#include <numeric>

#include "scheduler/rotation/ring_descent.h"
#include "tests/support/regular.h"

using namespace floorwheel;

namespace {

std::vector<int> in_turn(int n) {
  std::vector<int> order(static_cast<std::size_t>(n));
  std::iota(order.begin(), order.end(), 0);
  return order;
}

/// A regular class in which rests can be too short.
ClassSpec floor_of(int stations, std::uint64_t seed) {
  ClassSpec c = floors::regular(2, stations, 1, seed);
  for (MemberSpec& m : c.members) m.level = Level::advanced;
  return c;
}

Problem problem_of(const ClassSpec& c) {
  return std::get<Problem>(make_problem(c, std::max(3, static_cast<int>(c.stations.size()))));
}

/// Whether no part turned round and no station moved makes it lighter, each weighed whole.
bool at_its_end(const Joints& joints, const std::vector<int>& order, bool closed) {
  const OrderWeight now = weigh(joints, order, closed);
  const auto n = static_cast<std::ptrdiff_t>(order.size());
  for (std::ptrdiff_t i = 0; i < n; ++i)
    for (std::ptrdiff_t b = 0; b < n; ++b) {
      std::vector<int> turned = order;
      if (i < b) std::reverse(turned.begin() + i, turned.begin() + b + 1);
      std::vector<int> moved = order;
      moved.erase(moved.begin() + i);
      moved.insert(moved.begin() + b, order[static_cast<std::size_t>(i)]);
      if (weigh(joints, turned, closed) < now || weigh(joints, moved, closed) < now) return false;
    }
  return true;
}

}  // namespace

class TestRingOrder : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  /// What the ends of a move say is what the whole order says, after any number of moves.
  void descent_weighs_as_a_whole() {
    tiny::Draw d(tiny::first_seed());
    const int cases = tiny::cases_wanted(300);
    for (int i = 0; i < cases; ++i) {
      const ClassSpec c = floor_of(d.from(2, 14), d.word() % 1000);
      const Problem p = problem_of(c);
      const Joints joints(p);
      const bool closed = d.one_in(2);
      std::vector<int> order = in_turn(p.stations);
      for (int k = p.stations - 1; k > 0; --k)
        std::swap(order[static_cast<std::size_t>(k)], order[static_cast<std::size_t>(d.below(k + 1))]);
      Random random(d.word());
      const bool to_its_end = d.one_in(3);
      std::int64_t left = to_its_end ? 1'000'000 : d.from(1, 60);
      const OrderWeight w = descend(joints, order, closed, random, left);
      QCOMPARE(w, weigh(joints, order, closed));
      if (to_its_end) QVERIFY(at_its_end(joints, order, closed));
      std::sort(order.begin(), order.end());
      QCOMPARE(order, in_turn(p.stations));
    }
  }

  /// Every order of up to seven stations looked at.
  void none_is_lighter_on_small_floors() {
    tiny::Draw d(tiny::first_seed());
    const int cases = tiny::cases_wanted(30);
    for (int i = 0; i < cases; ++i) {
      const ClassSpec c = floor_of(d.from(2, 7), d.word() % 1000);
      const Problem p = problem_of(c);
      const Joints joints(p);
      std::vector<int> order = in_turn(p.stations);
      OrderWeight least = weigh(joints, order, true);
      while (std::next_permutation(order.begin() + 1, order.end()))
        least = std::min(least, weigh(joints, order, true));
      Random random(d.word());
      QCOMPARE(weigh(joints, find_ring_orders(p, random).list.front().order, true), least);
    }
  }

  /// Ten by ten stations a metre apart, two groups as on a chessboard: a ring of 100 metres without a bad
  /// joint exists, since the grid has a Hamiltonian cycle (an even number of rows: up the first column, to
  /// and fro through the others), and none is shorter.
  void a_hundred_stations_on_a_grid() {
    ClassSpec c;
    for (int i = 0; i < 100; ++i)
      build::station(c, "s" + std::to_string(i), {(i / 10 + i) % 2 == 0 ? Group::chest : Group::quadriceps},
                     i % 10 * 100, i / 10 * 100);
    build::member(c, "m", Level::novice);
    const Problem p = problem_of(c);
    const Joints joints(p);
    Random random(1);
    const OrderWeight w = weigh(joints, find_ring_orders(p, random).list.front().order, true);
    QCOMPARE(w[0], 0);
    QVERIFY2(w[3] <= 11'000, qPrintable(QString::number(w[3])));
  }
};

QTEST_APPLESS_MAIN(TestRingOrder)
#include "tst_ring_order.moc"
