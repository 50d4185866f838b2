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
    const std::uint64_t first = tiny::first_seed();
    const int cases = tiny::cases_wanted(200);
    for (std::uint64_t seed = first; seed < first + static_cast<std::uint64_t>(cases); ++seed) {
      tiny::Case t = tiny::make_case(seed, tiny::most_wanted(5000));
      if (seed % 4 != 0) t.spec.laps = 1;
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
        }
      }
    }
    qInfo("%d bounds, %d with a truth above 0, %d of these reached", bounds, above_0, tight);
    QVERIFY(tight > 20);
  }

  void regular_classes_are_planned_to_the_bound_data() {
    QTest::addColumn<int>("members");
    QTest::addColumn<int>("stations");
    QTest::addColumn<int>("capacity");
    QTest::addColumn<int>("slots");
    QTest::newRow("6 on 6") << 6 << 6 << 1 << 6;
    QTest::newRow("10 on 6, two places") << 10 << 6 << 2 << 6;
    QTest::newRow("8 on 8") << 8 << 8 << 1 << 8;
    QTest::newRow("7 on 6, each rests twice: only packing closes them") << 7 << 6 << 1 << 8;
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
        if (slots > stations) QCOMPARE(made.certificate.claims[6].proof.type, ProofType::packing);
      }
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
