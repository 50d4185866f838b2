// SPDX-License-Identifier: GPL-3.0-or-later
// Ring search and planner against results that others have proved; each has its source beside it.
#include <QTest>
#include <algorithm>
#include <numeric>

#include "scheduler/rotation/audit.h"
#include "scheduler/rotation/solve.h"
#include "scheduler/rotation/tour.h"
#include "tests/support/floors.h"

using namespace floorwheel;
using floors::Edges;

namespace {

Grid<int> joints(int n, const Edges& edges) {
  Grid<int> weight(n, n, 1);
  for (const auto& [a, b] : edges) weight(a, b) = weight(b, a) = 0;
  return weight;
}

/// Ten stations, each training two of five groups; they get on when they share none.
ClassSpec petersen_floor() {
  ClassSpec c;
  for (int a = 0; a < 5; ++a)
    for (int b = a + 1; b < 5; ++b)
      build::station(c, "S" + std::to_string(a) + std::to_string(b),
                     {static_cast<Group>(a), static_cast<Group>(b)});
  for (int m = 0; m < 10; ++m) build::member(c, "m" + std::to_string(m));
  return c;
}

Edges petersen_edges() {
  const ClassSpec c = petersen_floor();
  Edges edges;
  for (int a = 0; a < 10; ++a)
    for (int b = a + 1; b < 10; ++b)
      if (!c.exercises.at(c.stations[static_cast<std::size_t>(a)].exercise)
               .primary.meets(c.exercises.at(c.stations[static_cast<std::size_t>(b)].exercise).primary))
        edges.insert({a, b});
  return edges;
}

int degree(const Edges& edges, int v) {
  int d = 0;
  for (const auto& [a, b] : edges) d += a == v || b == v ? 1 : 0;
  return d;
}

}  // namespace

class TestKnownResults : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  // The table against all orders there are.
  void tours_are_the_lightest_of_all_orders() {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
      tiny::Draw d(seed);
      const int n = d.from(2, 7);
      Grid<int> weight(n, n);
      for (int a = 0; a < n; ++a)
        for (int b = 0; b < a; ++b) weight(a, b) = weight(b, a) = d.below(9);
      std::vector<int> order(static_cast<std::size_t>(n));
      std::iota(order.begin(), order.end(), 0);
      std::int64_t cycle = 1000;
      std::int64_t path = 1000;
      do {
        std::int64_t sum = 0;
        for (std::size_t i = 1; i < order.size(); ++i) sum += weight(order[i - 1], order[i]);
        path = std::min(path, sum);
        cycle = std::min(cycle, sum + weight(order.back(), order.front()));
      } while (std::next_permutation(order.begin(), order.end()));
      QCOMPARE(least_cycle(n, weight).weight, cycle);
      QCOMPARE(least_path(n, weight).weight, path);
    }
  }

  // Petersen 1898; Holton and Sheehan, The Petersen Graph (1993), from memory: it is cubic, has no
  // Hamiltonian cycle and has a Hamiltonian path.
  void petersen_floor_has_no_perfect_ring() {
    const Edges edges = petersen_edges();
    QCOMPARE(edges.size(), std::size_t{15});
    QCOMPARE(least_cycle(10, joints(10, edges)).weight, 1);
    QCOMPARE(least_path(10, joints(10, edges)).weight, 0);
    // Ten members on ten stations in ten slots: all walk nine of the ten joints, and only the one who starts
    // right behind the bad joint never meets it.
    ClassSpec c = petersen_floor();
    c.style = Style::ring;
    const Plan ring = std::get<Plan>(plan(c, 10));
    QVERIFY(audit(c, ring.rotation).holds());
    QCOMPARE(ring.cost[Component::missed], 0);
    QCOMPARE(ring.cost[Component::back_to_back], 9);
    QCOMPARE(ring.bound[Component::back_to_back], 9);
    // That bound is the rings' alone: a free rotation has none at all, and the planner finds it.
    c.style = Style::automatic;
    const Plan any = std::get<Plan>(plan(c, 10));
    QCOMPARE(any.rotation.style, Style::free);
    QCOMPARE(any.cost[Component::back_to_back], 0);
    QVERIFY(any.proven >= 3);
  }

  // Dirac, Some theorems on abstract graphs, Proc. London Math. Soc. 2 (1952): n >= 3 and all degrees at
  // least n/2 is enough for a Hamiltonian cycle.
  void diracs_condition_gives_a_ring_without_bad_joints() {
    int planned = 0;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
      tiny::Draw d(seed);
      const int n = d.from(3, 12);
      Edges edges;
      std::vector<std::pair<int, int>> pairs;
      for (int a = 0; a < n; ++a)
        for (int b = a + 1; b < n; ++b) pairs.emplace_back(a, b);
      for (std::size_t i = pairs.size(); i > 1; --i)
        std::swap(pairs[i - 1], pairs[static_cast<std::size_t>(d.below(static_cast<int>(i)))]);
      const auto poor = [&](int v) { return 2 * degree(edges, v) < n; };
      for (const auto& [a, b] : pairs)
        if (poor(a) || poor(b)) edges.insert({a, b});
      for (int v = 0; v < n; ++v) QVERIFY(2 * degree(edges, v) >= n);
      const Tour tour = least_cycle(n, joints(n, edges));
      QVERIFY2(tour.weight == 0, ("seed " + std::to_string(seed)).c_str());
      std::vector<int> sorted = tour.order;
      std::sort(sorted.begin(), sorted.end());
      for (int v = 0; v < n; ++v) QCOMPARE(sorted[static_cast<std::size_t>(v)], v);
      if (pairs.size() - edges.size() > std::size_t{group_count}) continue;
      ClassSpec c = floors::of_graph(n, edges, n);
      const Plan answer = std::get<Plan>(plan(c, n));
      QCOMPARE(answer.rotation.style, Style::ring);
      QCOMPARE(answer.cost[Component::back_to_back], 0);
      QVERIFY(answer.proven >= 3);
      ++planned;
    }
    QVERIFY(planned >= 10);
  }

  // A graph with a cut vertex has no Hamiltonian cycle: removing the vertex would leave a cycle's rest in one
  // piece (any text on graph theory).
  void cut_vertex_has_no_perfect_ring() {
    for (int left = 2; left <= 5; ++left)
      for (int right = 2; right <= 5; ++right) {
        const int n = left + right + 1;  // vertex 0 joins two complete parts
        Edges edges;
        for (int a = 0; a < n; ++a)
          for (int b = a + 1; b < n; ++b)
            if (a == 0 || (a <= left) == (b <= left)) edges.insert({a, b});
        QVERIFY(least_cycle(n, joints(n, edges)).weight > 0);
        QCOMPARE(least_path(n, joints(n, edges)).weight, 0);
      }
  }

  // Williams, Australian J. Scientific Research A 2 (1949) 149-168: for even n the row 0, 1, n-1, 2, n-2, ...
  // and its translates make a Latin square in which every ordered pair stands side by side once.
  void williams_squares_hold_and_are_no_better() {
    for (const int n : {4, 6, 8, 10}) {
      ClassSpec c = floors::plain(n, n, 1, static_cast<std::uint64_t>(n), 5);
      Rotation square;
      square.slots = n;
      std::set<std::pair<int, int>> neighbours;
      for (int r = 0; r < n; ++r) {
        std::vector<StationIndex> row;
        for (int i = 0; i < n; ++i) row.push_back((r + (i % 2 == 1 ? (i + 1) / 2 : n - i / 2)) % n);
        for (std::size_t i = 1; i < row.size(); ++i) neighbours.insert({row[i - 1], row[i]});
        square.at.push_back(row);
      }
      QCOMPARE(neighbours.size(), static_cast<std::size_t>(n * (n - 1)));
      const Audit a = audit(c, square);
      QVERIFY(a.holds());
      QCOMPARE(a.cost[Component::missed], 0);
      // Side by side once each, so pairs that share a group clash once in each order.
      std::int64_t clashes = 0;
      for (const auto& [s, t] : neighbours)
        clashes += c.exercises.at("do-S" + std::to_string(s))
                       .primary.meets(c.exercises.at("do-S" + std::to_string(t)).primary);
      QCOMPARE(a.cost[Component::back_to_back], clashes);
      const Plan answer = std::get<Plan>(plan(c, n));
      QVERIFY(answer.cost <= a.cost);
      QCOMPARE(answer.cost[Component::missed], 0);
    }
  }
};

QTEST_APPLESS_MAIN(TestKnownResults)
#include "tst_known_results.moc"
