// SPDX-License-Identifier: GPL-3.0-or-later
// Half of the people one way round and half the other: nobody meets, the order is the best of all orders, and
// no ring in one direction is shorter; figures where another method has proven the optimum.
#include <QTest>
#include <algorithm>
#include <numeric>

#include "scheduler/rotation/audit.h"
#include "scheduler/rotation/price.h"
#include "scheduler/rotation/solve.h"
#include "scheduler/rotation/two_ways.h"
#include "tests/support/brute_force.h"
#include "tests/support/floors.h"
#include "tests/support/regular.h"

using namespace floorwheel;

namespace {

std::vector<StationIndex> in_file_order(int stations) {
  std::vector<StationIndex> order(static_cast<std::size_t>(stations));
  std::iota(order.begin(), order.end(), 0);
  return order;
}

Rotation rotation_of(const std::vector<std::vector<StationIndex>>& rows, int slots) {
  Rotation r;
  r.style = Style::free;
  r.slots = slots;
  r.at = rows;
  return r;
}

/// Everybody round on a way of `slots` places: those at even places forward, those at odd ones back, or the
/// other way round. Written from the header's first lines alone.
Rotation both_ways(const std::vector<StationIndex>& order, int capacity, int slots, int forward) {
  std::vector<std::vector<StationIndex>> rows;
  for (int start = 0; start < slots; ++start)
    for (int i = 0; i < capacity; ++i) {
      auto& row = rows.emplace_back();
      for (int t = 0; t < slots; ++t) {
        const int at = ((start % 2 == forward ? start + t : start - t) + slots) % slots;
        row.push_back(at < static_cast<int>(order.size()) ? order[static_cast<std::size_t>(at)] : nowhere);
      }
    }
  return rotation_of(rows, slots);
}

Plan planned(ClassSpec c, Style style, int slots, std::int64_t proof_effort = 0) {
  c.style = style;
  PlanOptions options;
  options.proof_effort = proof_effort;
  return std::get<Plan>(plan(c, slots, options));
}

}  // namespace

class TestTwoWays : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  /// Visits over places, König 1916, rounded up to an even number: in so many slots a lap nobody misses
  /// anything, by the auditor's account.
  void nobody_meets_and_nothing_is_missed() {
    tiny::Draw d(tiny::first_seed());
    const int cases = tiny::cases_wanted(40);
    for (int i = 0; i < cases; ++i) {
      const int n = d.from(3, 12);
      const int q = d.from(1, 3);
      const int members = d.from(1, 2 * n * q);
      ClassSpec c = floors::regular(members, n, q, d.word() % 1000);
      c.laps = d.from(1, 2);
      int round = std::max(n, (members + q - 1) / q);
      round += round % 2;
      const int slots = round * c.laps + d.below(3);
      const Problem p = std::get<Problem>(make_problem(c, slots));
      Random random(d.word());
      const auto sheet = two_ways(p, in_file_order(n), random);
      QVERIFY(sheet.has_value());
      const Audit a = audit(c, rotation_of(sheet->rows(), slots));
      QVERIFY2(a.holds(), tiny::dump(c, slots).c_str());
      QCOMPARE(a.cost, price(p, *sheet));
      QCOMPARE(a.cost[Component::missed], 0);
      // A slot fewer than the way has places.
      const Problem fewer = std::get<Problem>(make_problem(c, round * c.laps - 1));
      QVERIFY(!two_ways(fewer, in_file_order(n), random));
    }
  }

  /// Every order of up to six stations, everybody there that the floor holds.
  void the_order_is_the_best_of_all() {
    tiny::Draw d(tiny::first_seed());
    const int cases = tiny::cases_wanted(6);
    for (int i = 0; i < cases; ++i) {
      const int n = d.from(3, 6);
      const int slots = n + n % 2 + 2 * d.below(2);
      const int q = d.from(1, 2);
      ClassSpec c = floors::plain(slots * q, n, q, d.word() % 1000);
      for (MemberSpec& m : c.members) m.level = Level::novice;
      const Problem p = std::get<Problem>(make_problem(c, slots));
      Random random(d.word());
      const auto sheet = two_ways(p, in_file_order(n), random);
      QVERIFY(sheet.has_value());
      std::vector<StationIndex> order = in_file_order(n);
      Cost least = audit(c, both_ways(order, q, slots, 0)).cost;
      do
        for (const int forward : {0, 1})
          least = std::min(least, audit(c, both_ways(order, q, slots, forward)).cost);
      while (std::next_permutation(order.begin(), order.end()));
      QVERIFY2(price(p, *sheet) == least, (tiny::dump(price(p, *sheet)) + " instead of " + tiny::dump(least) +
                                           "\n" + tiny::dump(c, slots))
                                              .c_str());
    }
  }

  /// Every rotation of four people on four stations: none is cheaper than the planner's, which begins here.
  void no_rotation_of_four_is_cheaper() {
    tiny::Draw d(tiny::first_seed());
    const int cases = tiny::cases_wanted(4);
    int reached = 0;
    for (int i = 0; i < cases; ++i) {
      ClassSpec c = floors::plain(4, 4, 1, d.word() % 1000);
      c.style = Style::free;
      const Problem p = std::get<Problem>(make_problem(c, 4));
      Random random(d.word());
      const Cost both = price(p, *two_ways(p, in_file_order(4), random));
      const Cost least = brute::best({.spec = c, .slots = 4, .style = Style::free}).cost;
      QVERIFY(!(both < least));
      QCOMPARE(planned(c, Style::free, 4).cost, least);
      reached += both == least ? 1 : 0;
    }
    qInfo("%d of %d cheapest of all rotations as they are", reached, cases);
  }

  /// The same joints left out by all are the long ones: never longer than the cheapest ring of a full floor,
  /// which is exact for so many stations.
  void no_ring_is_shorter() {
    tiny::Draw d(tiny::first_seed());
    const int cases = tiny::cases_wanted(6);
    for (int i = 0; i < cases; ++i) {
      const int n = 2 * d.from(3, 6);
      const int q = d.from(1, 2);
      const ClassSpec c = floors::regular(n * q, n, q, d.word() % 1000);
      const Plan ring = planned(c, Style::ring, n);
      const Problem p = std::get<Problem>(make_problem(c, n));
      Random random(d.word());
      const auto sheet = two_ways(p, ring.rotation.ring, random);
      QVERIFY(sheet.has_value());
      QVERIFY2(!(ring.cost < price(p, *sheet)), tiny::dump(c, n).c_str());
      QVERIFY(!(ring.cost < planned(c, Style::free, n).cost));
    }
  }

  /// Twelve people on ten stations: the search alone comes within 1 % of what prices prove.
  void twelve_on_ten_come_near_the_bound() {
    for (const std::uint64_t seed : {1, 4, 5}) {
      const ClassSpec c = floors::regular(12, 10, 1, seed);
      const Plan found = planned(c, Style::free, 12);
      const Plan proven = planned(c, Style::free, 12, 400'000'000);
      QCOMPARE(found.cost[Component::missed], 0);
      QCOMPARE(found.cost[Component::back_to_back], 0);
      QCOMPARE(found.cost[Component::idle], 20);
      QCOMPARE(proven.bound[Component::idle], 20);
      const auto bound = proven.bound[Component::walk_cm];
      QVERIFY(bound > 0);
      QVERIFY2(found.cost[Component::walk_cm] * 100 <= bound * 101, tiny::dump(found.cost).c_str());
    }
  }

  void not_where_people_differ() {
    Random random(1);
    const auto none = [&](const ClassSpec& c, int slots) {
      return !two_ways(std::get<Problem>(make_problem(c, slots)), in_file_order(4), random);
    };
    const ClassSpec alike = floors::regular(4, 4, 1, 1);
    QVERIFY(!none(alike, 4));
    ClassSpec c = alike;
    c.members[0].present = {2, 4};
    QVERIFY(none(c, 4));
    c = alike;
    c.members[0].required = std::vector<std::string>{"S0", "S1"};
    QVERIFY(none(c, 4));
    c = alike;
    c.pairs.push_back({"m0", "m1", PairRule::apart});
    QVERIFY(none(c, 4));
    c = alike;
    c.stations[0].closed = {{1, 1}};
    QVERIFY(none(c, 4));
    // One kettlebell for two stations.
    c = alike;
    c.equipment.push_back({"kettlebell", 1});
    for (const std::size_t s : {0, 1}) c.stations[s].equipment = {"kettlebell"};
    QVERIFY(none(c, 4));
  }
};

QTEST_APPLESS_MAIN(TestTwoWays)
#include "tst_two_ways.moc"
