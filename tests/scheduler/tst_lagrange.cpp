// SPDX-License-Identifier: GPL-3.0-or-later
// Prices against brute force on tiny classes with every feature: no bound above the truth, and the check,
// which shares no code, finds the same bound from the prices; and regular classes, planned to the bound in
// every component with certificates that hold.
#include <QTest>

#include "scheduler/rotation/lagrange.h"
#include "scheduler/rotation/ring_walk.h"
#include "scheduler/rotation/solve.h"
#include "tests/support/brute_force.h"
#include "tests/support/regular.h"
#include "tests/support/tiny_cases.h"

using namespace floorwheel;

namespace {

constexpr std::array by_steps = {Component::back_to_back, Component::idle, Component::assist_overlap,
                                 Component::walk_cm};

struct Planned {
  Plan plan;
  Certificate certificate;
};

Planned planned(ClassSpec c, int slots, Style style) {
  Planned out;
  c.style = style;
  PlanOptions options;
  options.certificate = &out.certificate;
  out.plan = std::get<Plan>(plan(c, slots, options));
  return out;
}

/// The bound of one component where the earlier ones are as in `cost`; 0: none can be had.
std::int64_t bound_of(const ClassSpec& c, const Problem& p, const Cost& cost, Component component,
                      std::int64_t least, std::string& wrong) {
  Lagrange lagrange(p, cost, component);
  if (!lagrange.possible()) return 0;
  lagrange.raise(80, std::max<std::int64_t>(1, cost[component]));
  const std::int64_t bound = lagrange.bound();
  const std::string name(id_of(component));
  if (bound > least)
    wrong += name + " at least " + std::to_string(bound) + ", true " + std::to_string(least) + "\n";
  Certificate all;
  all.class_hash = class_hash(c);
  all.slots = p.slots;
  all.cost = cost;
  Claim claim{component, bound, {ProofType::lagrange, {}, lagrange.prices(), 0}};
  const ClaimVerdict v = check_claim(c, all, claim);
  if (v.verdict != Verdict::holds) wrong += name + ": the check says " + v.text + "\n";
  return bound;
}

}  // namespace

class TestLagrange : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void no_bound_is_above_brute_force() {
    int bounds = 0;
    int above_0 = 0;
    int tight = 0;
    int in_laps = 0;  // above 0, of several laps
    const std::uint64_t first = tiny::first_seed();
    const int cases = tiny::cases_wanted(200);
    for (std::uint64_t seed = first; seed < first + static_cast<std::uint64_t>(cases); ++seed) {
      tiny::Case t = tiny::make_case(seed, tiny::most_wanted(5000));
      t.spec.laps = seed % 4 != 0 ? 1 : 2 + static_cast<int>(seed / 4 % 4 == 0);
      const auto made = make_problem(t.spec, t.slots);
      const auto quick = first_rotation(t.spec, t.slots);
      if (!std::holds_alternative<Problem>(made)) continue;
      const auto& p = std::get<Problem>(made);
      const brute::Question q{.spec = t.spec, .slots = t.slots};
      std::set<std::array<std::int64_t, component_count>> costs{brute::best(q).cost.value,
                                                                std::get<Plan>(quick).cost.value};
      for (const auto& value : costs) {
        const Cost cost{value};
        const auto least = brute::least_after(q, cost);
        for (Component c : by_steps) {
          const std::int64_t truth = least[static_cast<std::size_t>(c)];
          if (truth == brute::none) continue;
          std::string wrong;
          const std::int64_t bound = bound_of(t.spec, p, cost, c, truth, wrong);
          QVERIFY2(wrong.empty(),
                   ("seed " + std::to_string(seed) + "\n" + wrong + tiny::dump(t.spec, t.slots)).c_str());
          ++bounds;
          if (truth > 0) ++above_0;
          if (truth > 0 && bound == truth) ++tight;
          if (t.spec.laps > 1 && bound > 0) ++in_laps;
        }
      }
    }
    qInfo("%d bounds, %d with a truth above 0, %d of these reached; %d of laps", bounds, above_0, tight,
          in_laps);
    QVERIFY(tight > 20);
    QVERIFY(in_laps > 0);
  }

  /// With all remembered a table of memory is the exact one; with less it is never dearer, and its rows near
  /// the least are true rows all the same.
  void tables_of_memory_agree_with_the_exact_one() {
    int lower = 0;
    int near_rows = 0;
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
      tiny::Draw d(seed);
      const int n = 3 + d.below(5);
      RowCosts c;
      for (int i = 0; i < n; ++i) c.list.push_back(2 * i + 1);
      c.visits = n - (d.one_in(4) ? 1 : 0);
      c.rests = d.below(3);
      c.idle = d.one_in(3) ? forbidden : d.below(30);
      c.next = Grid<std::int32_t>(n, (n + 3) / 4 * 4, forbidden);
      c.later = c.next;
      Grid<std::int32_t> price(n, c.visits + c.rests);
      for (int i = 0; i < n; ++i) {
        for (int j = 0; j < n; ++j) {
          if (i == j) continue;
          c.next(i, j) = d.one_in(6) ? forbidden : d.below(100);
          c.later(i, j) = d.below(100);
        }
        for (int t = 0; t < c.visits + c.rests; ++t) price(i, t) = d.one_in(8) ? forbidden : d.below(100);
      }
      std::vector<std::vector<int>> all(static_cast<std::size_t>(n));
      std::vector<std::vector<int>> some(all.size());
      for (int i = 0; i < n; ++i)
        for (int j = 0; j < n; ++j) {
          if (i == j) continue;
          all[static_cast<std::size_t>(i)].push_back(j);
          if (d.one_in(3)) some[static_cast<std::size_t>(i)].push_back(j);
        }
      RowTable exact(c);
      MemoryTable full(c, all);
      MemoryTable part(c, some);
      const std::int32_t least = exact.least(price);
      QCOMPARE(full.least(price), least);
      QVERIFY(part.least(price) <= least);
      if (part.least() < forbidden) QCOMPARE(part.cost(part.row()), part.least());
      if (least == forbidden) continue;
      QCOMPARE(full.cost(full.row()), least);
      lower += part.least() < least ? 1 : 0;
      std::vector<std::vector<int>> rows, rows_full, rows_part;
      QVERIFY(exact.near(40, 100'000, rows));
      QVERIFY(full.near(40, 100'000, rows_full));
      QVERIFY(part.near(least - part.least() + 40, 100'000, rows_part));
      for (auto* list : {&rows, &rows_full, &rows_part}) std::sort(list->begin(), list->end());
      QVERIFY(rows == rows_full);
      QVERIFY(rows == rows_part);
      near_rows += static_cast<int>(rows.size());
    }
    QVERIFY2(lower > 10, qPrintable(QString::number(lower)));
    QVERIFY2(near_rows > 200, qPrintable(QString::number(near_rows)));
  }

  /// Twenty stations: the check, which shares no code, finds the same bound from prices and memory; it does
  /// not with one digit more on a price, nor with nothing remembered.
  void long_lists_are_bounded_and_rechecked() {
    const ClassSpec c = floors::regular(40, 20, 2, 1);
    const auto made = make_problem(c, 20);
    const auto& p = std::get<Problem>(made);
    ClassSpec ring = c;
    ring.style = Style::ring;
    const auto quick = first_rotation(ring, 20);
    const Cost cost = std::get<Plan>(quick).cost;
    QCOMPARE(cost[Component::back_to_back], 0);
    Lagrange lagrange(p, cost, Component::walk_cm);
    QVERIFY(lagrange.possible());
    lagrange.raise(100, cost[Component::walk_cm] / 3);
    const PriceList early = lagrange.prices();
    lagrange.raise(1500, lagrange.bound() * 13 / 10);
    QVERIFY(lagrange.bound() > cost[Component::walk_cm] / 4);
    QVERIFY(lagrange.bound() <= cost[Component::walk_cm]);
    Certificate all;
    all.class_hash = class_hash(c);
    all.slots = 20;
    all.cost = cost;
    Claim claim{Component::walk_cm, lagrange.bound(), {ProofType::lagrange, {}, lagrange.prices(), 0}};
    QVERIFY(!early.memory.empty());
    QVERIFY(claim.proof.prices.memory != early.memory);  // it grew
    const ClaimVerdict v = check_claim(c, all, claim);
    QVERIFY2(v.verdict == Verdict::holds, v.text.c_str());
    Claim twin = claim;
    ++twin.bound;
    QVERIFY(check_claim(c, all, twin).verdict == Verdict::fails);
    twin = claim;
    for (auto& list : twin.proof.prices.memory) list.clear();
    QVERIFY(check_claim(c, all, twin).verdict == Verdict::fails);
    twin = claim;
    std::int64_t* highest = &twin.proof.prices.places[0][0];
    for (auto& list : twin.proof.prices.places)
      for (std::int64_t& one : list)
        if (one > *highest) highest = &one;
    *highest *= 10;
    QVERIFY(check_claim(c, all, twin).verdict == Verdict::fails);
  }

  void regular_classes_are_planned_to_the_bound_data() {
    QTest::addColumn<int>("members");
    QTest::addColumn<int>("stations");
    QTest::addColumn<int>("capacity");
    QTest::addColumn<int>("slots");
    QTest::newRow("6 on 6") << 6 << 6 << 1 << 6;
    QTest::newRow("10 on 6, two places") << 10 << 6 << 2 << 6;
    QTest::newRow("8 on 8") << 8 << 8 << 1 << 8;
    QTest::newRow("7 on 6, each rests twice") << 7 << 6 << 1 << 8;
  }
  void regular_classes_are_planned_to_the_bound() {
    QFETCH(int, members);
    QFETCH(int, stations);
    QFETCH(int, capacity);
    QFETCH(int, slots);
    for (std::uint64_t seed = 1; seed <= 3; ++seed)
      for (Style style : {Style::free, Style::ring}) {
        if (slots > stations && style == Style::ring) continue;  // the table of rings has no rests
        const ClassSpec c = floors::regular(members, stations, capacity, seed);
        const Planned made = planned(c, slots, style);
        QCOMPARE(made.plan.cost[Component::missed], 0);
        QCOMPARE(made.plan.cost[Component::back_to_back], 0);
        QVERIFY2(made.plan.proven == 8,
                 qPrintable(QString("seed %1: proven %2").arg(seed).arg(made.plan.proven)));
        const CertificateVerdict v = check_certificate(c, slots, made.certificate);
        for (const ClaimVerdict& one : v.claims) QVERIFY2(one.verdict == Verdict::holds, one.text.c_str());
        QCOMPARE(made.certificate.claims[6].component, Component::walk_cm);
        QCOMPARE(made.certificate.claims[6].bound, made.plan.cost[Component::walk_cm]);
      }
  }

  /// Several laps of a full class: a bound on the walk within a twentieth of what was found, in a
  /// certificate that holds; and none once one of its prices is raised far, so that it claims too much.
  void laps_have_a_bound() {
    for (std::uint64_t seed = 1; seed <= 3; ++seed)
      for (int laps : {2, 3}) {
        ClassSpec c = floors::regular(6, 6, 1, seed);
        c.laps = laps;
        const Planned made = planned(c, 6 * laps, Style::free);
        QCOMPARE(made.plan.cost[Component::missed], 0);
        const CertificateVerdict v = check_certificate(c, 6 * laps, made.certificate);
        for (const ClaimVerdict& one : v.claims) QVERIFY2(one.verdict == Verdict::holds, one.text.c_str());
        const Claim& walk = made.certificate.claims[6];
        QCOMPARE(walk.component, Component::walk_cm);
        const std::int64_t cost = made.plan.cost[Component::walk_cm];
        QVERIFY2(
            walk.bound * 20 >= cost * 19 && walk.bound <= cost,
            qPrintable(QString("seed %1, %2 laps: %3 of %4").arg(seed).arg(laps).arg(walk.bound).arg(cost)));
        Claim twin = walk;
        twin.proof.type = ProofType::lagrange;
        QVERIFY(!twin.proof.prices.places.empty());
        twin.proof.prices.places[0][0] += cost * twin.proof.prices.scale;
        QCOMPARE(check_claim(c, made.certificate, twin).verdict, Verdict::fails);
      }
  }

  /// Three people with room for all, each a slot late: tens of thousands of rows wait less, all alike.
  void choosing_again_ends_among_too_many_rows() {
    const ClassSpec c = floors::regular(3, 8, 5, 1);
    const Problem p = std::get<Problem>(make_problem(c, 10));
    Sheet sheet(p);
    for (int m = 0; m < 3; ++m)
      for (int s = 0; s < 8; ++s) sheet.put(m, s + 1, s);
    Cost given = price(p, sheet);
    QCOMPARE(given[Component::idle], 3);
    given[Component::back_to_back] = 1;  // and so no row is ruled out by it
    Lagrange lagrange(p, given, Component::idle);
    lagrange.raise(1, 3);
    std::int64_t steps = 100'000;
    std::vector<Row> rows = sheet.rows();
    lagrange.again({0, 1, 2}, steps, rows);
    QVERIFY(steps < 100'000);
  }

  /// On a ring all walk the joints, so a free rotation can only be as short or shorter; and the table of
  /// rings agrees with every order there is.
  void the_cheapest_ring_is_that_of_all_orders() {
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
      const int members = 1 + static_cast<int>(seed % 9);
      const int capacity = members > 6 ? 2 : 1;
      const ClassSpec c = floors::regular(members, 6, capacity, seed);
      const auto made = make_problem(c, 6);
      const auto& p = std::get<Problem>(made);
      std::vector<int> order{0, 1, 2, 3, 4, 5};
      std::int64_t least = INT64_MAX;
      do {
        std::vector<int> joints;
        std::int64_t sum = 0;
        for (std::size_t i = 0; i < 6; ++i) {
          joints.push_back(p.walk_cm(order[i], order[(i + 1) % 6]));
          sum += std::int64_t{members} * joints.back();
        }
        std::sort(joints.rbegin(), joints.rend());
        for (int m = 0; m < members; ++m) sum -= joints[static_cast<std::size_t>(m / capacity)];
        least = std::min(least, sum);
      } while (std::next_permutation(order.begin() + 1, order.end()));
      QVERIFY(ring_walk_entries(p) > 0);
      const RingWalk ring = cheapest_ring(p, {0, 0, 1});
      QCOMPARE(ring.least, least);
      QCOMPARE(std::set<int>(ring.order.begin(), ring.order.end()).size(), std::size_t{6});
    }
  }

  /// What no rotation has less of bounds a ring too, where the table of rings says nothing.
  void rings_with_slots_to_spare_are_proven() {
    for (std::uint64_t seed = 1; seed <= 3; ++seed) {
      const ClassSpec c = floors::regular(5, 5, 1, seed);
      const Planned made = planned(c, 7, Style::automatic);
      QCOMPARE(made.plan.rotation.style, Style::ring);
      QCOMPARE(made.plan.proven, 8);
      const Claim& walk = made.certificate.claims[6];
      QCOMPARE(walk.proof.type, ProofType::lagrange);
      QCOMPARE(walk.bound, made.plan.cost[Component::walk_cm]);
      QCOMPARE(check_claim(c, made.certificate, walk).verdict, Verdict::holds);
    }
  }

  void the_same_prices_every_time() {
    const ClassSpec c = floors::regular(8, 8, 1, 5);
    const Planned a = planned(c, 8, Style::free);
    const Planned b = planned(c, 8, Style::free);
    QVERIFY(a.certificate == b.certificate);
    QVERIFY(a.plan.rotation == b.plan.rotation);
  }
};

QTEST_APPLESS_MAIN(TestLagrange)
#include "tst_lagrange.moc"
