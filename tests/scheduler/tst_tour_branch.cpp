// SPDX-License-Identifier: GPL-3.0-or-later
// The ring search's core beyond the table: branch and bound against the table where both can, and against
// published results where only it can.
#include <QTest>
#include <algorithm>
#include <numeric>

#include "scheduler/rotation/tour_branch.h"
#include "tests/support/tiny_cases.h"

using namespace floorwheel;

namespace {

constexpr std::int64_t enough = 200'000;

std::vector<int> in_turn(int n) {
  std::vector<int> order(static_cast<std::size_t>(n));
  std::iota(order.begin(), order.end(), 0);
  return order;
}

std::vector<int> shuffled(int n, tiny::Draw& d) {
  std::vector<int> order = in_turn(n);
  for (std::size_t i = order.size(); i > 1; --i)
    std::swap(order[i - 1], order[static_cast<std::size_t>(d.below(static_cast<int>(i)))]);
  return order;
}

std::int64_t length(const std::vector<int>& order, const Grid<int>& weight, bool closed) {
  std::int64_t sum = closed ? weight(order.back(), order.front()) : 0;
  for (std::size_t i = 1; i < order.size(); ++i) sum += weight(order[i - 1], order[i]);
  return sum;
}

/// Every vertex once, and as long as it says.
bool is_true(const Tour& tour, int n, const Grid<int>& weight, bool closed) {
  std::vector<int> sorted = tour.order;
  std::sort(sorted.begin(), sorted.end());
  return sorted == in_turn(n) && tour.weight == length(tour.order, weight, closed);
}

/// 0 for an edge of the graph, 1 for none.
Grid<int> bad_joints(int n, const std::vector<std::array<int, 2>>& edges) {
  Grid<int> weight(n, n, 1);
  for (const auto& [a, b] : edges) weight(a, b) = weight(b, a) = 0;
  return weight;
}

/// Two rings of k, the inner one in steps of two, joined by spokes.
std::vector<std::array<int, 2>> petersen_like(int k) {
  std::vector<std::array<int, 2>> edges;
  for (int i = 0; i < k; ++i) {
    edges.push_back({i, (i + 1) % k});
    edges.push_back({i, k + i});
    edges.push_back({k + i, k + (i + 2) % k});
  }
  return edges;
}

/// br17, Repetto's 17 city problem of TSPLIB, whose shortest tour is 39. Source: G. Reinelt, TSPLIB - A
/// traveling salesman problem library, ORSA J. on Computing 3 (1991) 376-384; the optimum from its list of
/// best known solutions.
constexpr std::array<std::array<int, 17>, 17> br17 = {{
    {9999, 3, 5, 48, 48, 8, 8, 5, 5, 3, 3, 0, 3, 5, 8, 8, 5},
    {3, 9999, 3, 48, 48, 8, 8, 5, 5, 0, 0, 3, 0, 3, 8, 8, 5},
    {5, 3, 9999, 72, 72, 48, 48, 24, 24, 3, 3, 5, 3, 0, 48, 48, 24},
    {48, 48, 74, 9999, 0, 6, 6, 12, 12, 48, 48, 48, 48, 74, 6, 6, 12},
    {48, 48, 74, 0, 9999, 6, 6, 12, 12, 48, 48, 48, 48, 74, 6, 6, 12},
    {8, 8, 50, 6, 6, 9999, 0, 8, 8, 8, 8, 8, 8, 50, 0, 0, 8},
    {8, 8, 50, 6, 6, 0, 9999, 8, 8, 8, 8, 8, 8, 50, 0, 0, 8},
    {5, 5, 26, 12, 12, 8, 8, 9999, 0, 5, 5, 5, 5, 26, 8, 8, 0},
    {5, 5, 26, 12, 12, 8, 8, 0, 9999, 5, 5, 5, 5, 26, 8, 8, 0},
    {3, 0, 3, 48, 48, 8, 8, 5, 5, 9999, 0, 3, 0, 3, 8, 8, 5},
    {3, 0, 3, 48, 48, 8, 8, 5, 5, 0, 9999, 3, 0, 3, 8, 8, 5},
    {0, 3, 5, 48, 48, 8, 8, 5, 5, 3, 3, 9999, 3, 5, 8, 8, 5},
    {3, 0, 3, 48, 48, 8, 8, 5, 5, 0, 0, 3, 9999, 3, 8, 8, 5},
    {5, 3, 0, 72, 72, 48, 48, 24, 24, 3, 3, 5, 3, 9999, 48, 48, 24},
    {8, 8, 50, 6, 6, 0, 0, 8, 8, 8, 8, 8, 8, 50, 9999, 0, 8},
    {8, 8, 50, 6, 6, 0, 0, 8, 8, 8, 8, 8, 8, 50, 0, 9999, 8},
    {5, 5, 26, 12, 12, 8, 8, 0, 0, 5, 5, 5, 5, 26, 8, 8, 9999},
}};

/// A directed problem as one without directions: each city twice, its two selves side by side (Jonker and
/// Volgenant, Operations Research Letters 2 (1983) 161-163, from memory). Every arc is `far` longer, each
/// pair of selves costs nothing, and what does not belong costs more than all arcs together.
template <std::size_t N>
Grid<int> both_ways(const std::array<std::array<int, N>, N>& arcs, int far) {
  constexpr int n = static_cast<int>(N);
  Grid<int> weight(2 * n, 2 * n, 4 * n * far);
  for (int a = 0; a < n; ++a)
    for (int b = 0; b < n; ++b)
      weight(a, n + b) = weight(n + b, a) =
          a == b ? 0 : far + arcs[static_cast<std::size_t>(a)][static_cast<std::size_t>(b)];
  return weight;
}

/// 0, n, 1, n + 1, ...: a tour of the cities in turn.
std::vector<int> selves_in_turn(int n) {
  std::vector<int> order;
  for (int a = 0; a < n; ++a) {
    order.push_back(n + a);
    order.push_back(a);
  }
  return order;
}

}  // namespace

class TestTourBranch : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void agrees_with_the_table() {
    for (std::uint64_t seed = 1; seed <= static_cast<std::uint64_t>(tiny::cases_wanted(200)); ++seed) {
      tiny::Draw d(seed);
      const int n = d.from(2, 11);
      const int most = d.one_in(2) ? 2 : 100;
      Grid<int> weight(n, n, 0);
      for (int a = 0; a < n; ++a)
        for (int b = 0; b < a; ++b) weight(a, b) = weight(b, a) = d.below(most);
      const auto seeded = "seed " + std::to_string(seed);
      const BranchedTour cycle = branched_cycle(n, weight, shuffled(n, d), enough);
      QVERIFY2(is_true(cycle.tour, n, weight, true), seeded.c_str());
      QVERIFY2(cycle.proven(), seeded.c_str());
      QVERIFY2(cycle.tour.weight == least_cycle(n, weight).weight, seeded.c_str());
      const BranchedTour path = branched_path(n, weight, shuffled(n, d), enough);
      QVERIFY2(is_true(path.tour, n, weight, false), seeded.c_str());
      QVERIFY2(path.proven() && path.tour.weight == least_path(n, weight).weight, seeded.c_str());
    }
  }

  // Robertson, Graphs minimal under girth, valency and connectivity constraints (thesis, 1968), from memory:
  // this graph has no Hamiltonian cycle if and only if k leaves 5 when divided by 6.
  void generalised_petersen_graphs() {
    for (int k = 8; k <= 20; ++k) {
      tiny::Draw d(static_cast<std::uint64_t>(k));
      const Grid<int> weight = bad_joints(2 * k, petersen_like(k));
      const BranchedTour found = branched_cycle(2 * k, weight, shuffled(2 * k, d), enough);
      QVERIFY2(found.proven(), ("k " + std::to_string(k)).c_str());
      QCOMPARE(found.tour.weight, k % 6 == 5 ? 1 : 0);
    }
  }

  // Ore, Note on Hamilton circuits, Amer. Math. Monthly 67 (1960) 55: enough that any two vertices without an
  // edge have n edges between them.
  void ores_condition_gives_a_ring_without_bad_joints() {
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
      tiny::Draw d(seed);
      const int n = d.from(5, 40);
      std::vector<int> degree(static_cast<std::size_t>(n), 0);
      Grid<int> weight(n, n, 1);
      const auto at = [&](int v) -> int& { return degree[static_cast<std::size_t>(v)]; };
      std::vector<std::array<int, 2>> pairs;
      for (int a = 0; a < n; ++a)
        for (int b = 0; b < a; ++b) pairs.push_back({a, b});
      for (std::size_t i = pairs.size(); i > 1; --i)
        std::swap(pairs[i - 1], pairs[static_cast<std::size_t>(d.below(static_cast<int>(i)))]);
      for (bool poor = true; poor;) {
        poor = false;
        for (const auto& [a, b] : pairs) {
          if (weight(a, b) == 0 || at(a) + at(b) >= n) continue;
          weight(a, b) = weight(b, a) = 0;
          ++at(a);
          ++at(b);
          poor = true;
        }
      }
      for (const auto& [a, b] : pairs) QVERIFY(weight(a, b) == 0 || at(a) + at(b) >= n);
      QCOMPARE(branched_cycle(n, weight, shuffled(n, d), enough).tour.weight, 0);
    }
  }

  // k of n stations with one group and 2k > n: at least 2k - n bad joints in a ring, one fewer on a path.
  void majority() {
    for (const auto& [n, k] : {std::array{25, 14}, {30, 20}, {40, 21}, {40, 33}}) {
      Grid<int> weight(n, n, 0);
      for (int a = 0; a < k; ++a)
        for (int b = 0; b < k; ++b) weight(a, b) = 1;
      std::vector<int> start;  // one of the group, one other, as long as there are others
      for (int a = 0; a < k; ++a) {
        start.push_back(a);
        if (k + a < n) start.push_back(k + a);
      }
      const BranchedTour cycle = branched_cycle(n, weight, start, enough);
      QVERIFY(cycle.proven());
      QCOMPARE(cycle.tour.weight, 2 * k - n);
      const BranchedTour path = branched_path(n, weight, start, enough);
      QVERIFY(path.proven());
      QCOMPARE(path.tour.weight, 2 * k - n - 1);
    }
  }

  void published_optimum_of_a_directed_instance() {
    constexpr int far = 1000;
    const Grid<int> weight = both_ways(br17, far);
    const BranchedTour found = branched_cycle(34, weight, selves_in_turn(17), enough);
    QVERIFY(is_true(found.tour, 34, weight, true));
    QVERIFY(found.proven());
    QCOMPARE(found.tour.weight - 17 * far, 39);
  }

  // By hand: the way round 0, 1, 2, 3 is 1 + 2 + 3 + 4 = 10, the other way round 40; 0, 2, 1, 3 is
  // 9 + 20 + 9 + 4 = 42, and so on.
  void directed_instance_worked_by_hand() {
    constexpr std::array<std::array<int, 4>, 4> arcs = {
        {{99, 1, 9, 10}, {10, 99, 2, 9}, {9, 10, 99, 3}, {4, 9, 10, 99}}};
    const Grid<int> weight = both_ways(arcs, 1000);
    const BranchedTour found = branched_cycle(8, weight, selves_in_turn(4), enough);
    QCOMPARE(found.tour.weight - 4000, 10);
    QCOMPARE(least_cycle(8, weight).weight - 4000, 10);
  }

  void stopped_early_it_says_no_more_than_it_knows() {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
      tiny::Draw d(seed);
      const int n = d.from(6, 11);
      Grid<int> weight(n, n, 0);
      for (int a = 0; a < n; ++a)
        for (int b = 0; b < a; ++b) weight(a, b) = weight(b, a) = d.below(50);
      const std::int64_t least = least_cycle(n, weight).weight;
      const BranchedTour found = branched_cycle(n, weight, shuffled(n, d), d.from(0, 60));
      QVERIFY(is_true(found.tour, n, weight, true));
      QVERIFY(found.bound <= least && least <= found.tour.weight);
    }
  }
};

QTEST_APPLESS_MAIN(TestTourBranch)
#include "tst_tour_branch.moc"
