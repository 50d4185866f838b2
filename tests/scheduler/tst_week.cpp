// SPDX-License-Identifier: GPL-3.0-or-later
// The week planner against every plan of tiny weeks (tests/support/week_brute_force): the same values in
// every goal where it says proven, no bound above what is possible, and a refusal exactly where there is no
// plan. Then what must hold of any week.
#include <QTest>
#include <algorithm>
#include <random>

#include "scheduler/training/week.h"
#include "scheduler/training/week_cuts.h"
#include "scheduler/training/week_ring.h"
#include "tests/support/week_brute_force.h"

using namespace floorwheel;
using namespace floorwheel::training;
namespace brute = floorwheel::week_brute_force;

namespace {

struct Tiny {
  ExerciseTable table;
  WeekSpec week;
};

/// A week of one to three classes over seven groups and three kinds, small enough to go through.
Tiny tiny_week(std::uint64_t seed) {
  std::mt19937_64 random(seed);
  const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  const std::vector<std::string> kinds{"band", "bell", "mat"};
  Tiny t;
  const int exercises = 6 + below(3);
  for (int i = 0; i < exercises; ++i) {
    Exercise e;
    e.id = std::string("e") + static_cast<char>('a' + i);
    const int groups = 1 + (below(2) == 0 ? 1 : 0) + (below(6) == 0 ? 1 : 0);
    for (int g = 0; g < groups; ++g) e.primary.insert(static_cast<Group>(below(7)));
    if (below(2) > 0) e.equipment.push_back(kinds[static_cast<std::size_t>(below(3))]);
    if (below(5) == 0 && e.equipment != std::vector<std::string>{"mat"}) e.equipment.push_back("mat");
    t.table[e.id] = e;
  }
  t.week.name = "tiny";
  for (int g = 0; g < 8; ++g) {  // one that nothing works
    const int least = below(3) == 0 ? 0 : below(8);
    t.week.targets[static_cast<std::size_t>(g)] = {least,
                                                   below(5) == 0 ? SetTarget::no_limit : least + below(4)};
  }
  const int classes = 1 + below(3);
  for (int c = 0; c < classes; ++c) {
    WeekClass k;
    k.weekday = below(3) == 0 ? 6 : below(4);
    k.stations = 1 + below(classes == 3 ? 3 : 5);
    k.laps = 1 + below(3);
    for (const std::string& kind : kinds)
      if (below(5) > 0) k.equipment[kind] = 1 + below(3);
    if (below(4) == 0) k.keep.push_back(std::next(t.table.begin(), below(exercises))->first);
    t.week.classes.push_back(k);
  }
  return t;
}

int cases(int n) { return qEnvironmentVariableIsSet("FLOORWHEEL_LONG") ? 100 * n : n; }

std::string shown(const WeekValues& v) {
  std::string text;
  for (const std::int64_t x : v) text += std::to_string(x) + " ";
  return text;
}

/// The least of each goal over the plans that equal `v` in those before it.
WeekValues least_beside(const std::vector<WeekValues>& plans, const WeekValues& v) {
  WeekValues least;
  least.fill(INT64_MAX);
  for (const WeekValues& p : plans)
    for (std::size_t g = 0; g < p.size(); ++g) {
      least[g] = std::min(least[g], p[g]);
      if (p[g] != v[g]) break;
    }
  return least;
}

}  // namespace

class TestWeek : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  // In parts, since one may take no longer than Qt Test's watch allows.
  void agrees_with_every_plan_of_tiny_weeks_data() {
    QTest::addColumn<int>("part");
    for (int part = 0; part < 10; ++part) QTest::addRow("part %d", part) << part;
  }
  void agrees_with_every_plan_of_tiny_weeks() {
    QFETCH(int, part);
    const std::uint64_t seed = qEnvironmentVariableIsSet("FLOORWHEEL_SEED")
                                   ? qEnvironmentVariable("FLOORWHEEL_SEED").toULongLong()
                                   : 1;
    int planned = 0, refused = 0, priced = 0;
    for (int i = 0; i < cases(200); ++i) {
      const std::uint64_t s = seed * 1'000'000'007 + static_cast<std::uint64_t>(part * 1'000'000 + i);
      const Tiny t = tiny_week(s);
      const auto plans = brute::all_plans(t.week, t.table);
      const auto answer = plan_week(t.week, t.table);
      const std::string about = "case " + std::to_string(s) + ": ";
      if (const auto* plan = std::get_if<WeekPlan>(&answer)) {
        ++planned;
        const std::string rule = brute::broken_rule(t.week, t.table, plan->stations);
        QVERIFY2(rule.empty(), (about + rule).c_str());
        QCOMPARE(brute::price(t.week, t.table, plan->stations), plan->account.value);
        const WeekValues best = *std::ranges::min_element(plans);
        QVERIFY2(
            plan->proven_goals() == week_goal_count,
            (about + "not proven: " + shown(plan->account.value) + "bound " + shown(plan->bound)).c_str());
        QVERIFY2(plan->account.value == best,
                 (about + shown(plan->account.value) + "but there is " + shown(best)).c_str());
        priced += best > WeekValues{} ? 1 : 0;
      } else {
        ++refused;
        QVERIFY2(plans.empty(), (about + "refused: " + std::get<WeekRefusal>(answer).reason).c_str());
      }
    }
    QVERIFY(planned > cases(200) / 3 && refused > cases(200) / 20 && priced > cases(200) / 4);
  }

  // With almost no steps nothing may be claimed that is not so.
  void bounds_hold_however_early_it_stops() {
    int open = 0;
    for (int i = 0; i < cases(600); ++i) {
      const Tiny t = tiny_week(7'000'000 + static_cast<std::uint64_t>(i));
      const auto answer = plan_week(t.week, t.table, {i % 8});
      const auto* plan = std::get_if<WeekPlan>(&answer);
      if (!plan) continue;
      QVERIFY(brute::broken_rule(t.week, t.table, plan->stations).empty());
      const WeekValues least = least_beside(brute::all_plans(t.week, t.table), plan->account.value);
      for (std::size_t g = 0; g < least.size(); ++g)
        QVERIFY2(plan->bound[g] <= least[g], ("case " + std::to_string(i) + " bound " + shown(plan->bound) +
                                              "least " + shown(least) + "value " + shown(plan->account.value))
                                                 .c_str());
      open += plan->proven_goals() < week_goal_count ? 1 : 0;
    }
    QVERIFY(open > 20);
  }

  void rings_are_those_of_all_orders() {
    std::mt19937_64 random(5);
    int with = 0, without = 0;
    for (int i = 0; i < cases(2000); ++i) {
      std::vector<GroupSet> stations(1 + random() % 7);
      for (GroupSet& s : stations)
        for (int k = 0; k < 2; ++k) s.insert(static_cast<Group>(random() % 8));
      const int laps = 1 + i % 2;
      const Ring ring = ring_of(stations, laps);
      QCOMPARE(ring.answer == RingAnswer::holds, brute::has_ring(stations, laps));
      ++(ring.answer == RingAnswer::holds ? with : without);
      if (ring.answer != RingAnswer::holds || stations.size() == 1) continue;
      std::vector<int> sorted = ring.order;
      std::ranges::sort(sorted);
      for (std::size_t k = 0; k < stations.size(); ++k) {
        QCOMPARE(sorted[k], static_cast<int>(k));
        const auto a = static_cast<std::size_t>(ring.order[k]);
        const auto b = static_cast<std::size_t>(ring.order[(k + 1) % stations.size()]);
        QVERIFY(!stations[a].meets(stations[b]));
      }
    }
    QVERIFY(with > cases(100) && without > cases(100));
  }

  // Dirac 1952: where each of n stations gets on with at least half of the others there is a ring.
  void large_rings_are_found_where_dirac_promises_one() {
    std::mt19937_64 random(9);
    for (int i = 0; i < 50; ++i) {
      std::vector<GroupSet> stations(24 + random() % 12);
      for (std::size_t k = 0; k < stations.size(); ++k) stations[k].insert(static_cast<Group>(k % 12));
      std::ranges::shuffle(stations, random);
      const Ring ring = ring_of(stations, 2);
      QCOMPARE(ring.answer, RingAnswer::holds);
      for (std::size_t k = 0; k < stations.size(); ++k)
        QVERIFY(!stations[static_cast<std::size_t>(ring.order[k])].meets(
            stations[static_cast<std::size_t>(ring.order[(k + 1) % stations.size()])]));
    }
  }

  // Every whole point of small programs: none is cut off, and none is cheaper than what is called proven.
  void cuts_and_bounds_leave_every_whole_point() {
    std::mt19937_64 random(17);
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
    int cuts = 0, empty = 0, sharp = 0;
    for (int i = 0; i < cases(2000); ++i) {
      WholeProgram p;
      const int columns = 3 + below(3);
      for (int c = 0; c < columns; ++c) {
        const int low = below(3) - 1;
        p.add_column(low, low + 1 + below(3), below(9) - 2, 1);
      }
      for (int r = 0; r < 2 + below(3); ++r) {
        std::vector<std::pair<int, int>> terms;
        for (int c = 0; c < columns; ++c)
          if (const int factor = below(11) - 5; factor != 0) terms.emplace_back(c, factor);
        if (terms.empty()) continue;
        const int low = below(12) - 6;
        p.add_row(terms, low, low + below(8), 0);
      }
      const std::size_t rows = p.rows.size();
      const WholeProgram plain = p;
      tighten(p, 1'000'000);
      cuts += static_cast<int>(p.rows.size() - rows);
      BoundedSimplex simplex(p);
      simplex.solve(p.low, p.high, 1e12);
      const std::int64_t proven = simplex.proven();
      std::int64_t least = BoundedSimplex::nothing;
      std::vector<int> x(plain.low.begin(), plain.low.begin() + columns);
      while (true) {
        bool holds = true, cut_off = false;
        std::int64_t cost = 0;
        for (int c = 0; c < columns; ++c)
          cost += x[static_cast<std::size_t>(c)] * p.cost[static_cast<std::size_t>(c)];
        for (std::size_t r = 0; r < p.rows.size(); ++r) {
          int sum = 0;
          for (const auto& [column, factor] : p.rows[r].terms)
            sum += factor * x[static_cast<std::size_t>(column)];
          const auto v = static_cast<std::size_t>(columns) + r;
          if (sum < p.low[v] || sum > p.high[v]) (r < rows ? holds : cut_off) = r >= rows;
        }
        if (holds) {
          QVERIFY2(!cut_off, ("case " + std::to_string(i)).c_str());
          least = std::min(least, cost);
        }
        std::size_t c = 0;
        while (c < x.size() && ++x[c] > plain.high[c]) {
          x[c] = plain.low[c];
          ++c;
        }
        if (c == x.size()) break;
      }
      QVERIFY2(proven <= least, ("case " + std::to_string(i)).c_str());
      empty += proven == BoundedSimplex::nothing ? 1 : 0;
      sharp += proven == least && least != BoundedSimplex::nothing ? 1 : 0;
    }
    QVERIFY(cuts > cases(100) && empty > cases(20) && sharp > cases(300));
  }

  void names_change_no_value() {
    for (int i = 0; i < cases(100); ++i) {
      const Tiny t = tiny_week(11'000'000 + static_cast<std::uint64_t>(i));
      Tiny other;
      other.week = t.week;
      const auto renamed = [](const std::string& id) {
        return "x" + std::string(1, static_cast<char>('a' + 'z' - id[1]));
      };
      for (const auto& [id, e] : t.table) {
        other.table[renamed(id)] = e;
        other.table[renamed(id)].id = renamed(id);
      }
      for (WeekClass& c : other.week.classes)
        for (std::string& id : c.keep) id = renamed(id);
      const auto a = plan_week(t.week, t.table), b = plan_week(other.week, other.table);
      QCOMPARE(a.index(), b.index());
      if (const auto* plan = std::get_if<WeekPlan>(&a))
        QCOMPARE(plan->account.value, std::get<WeekPlan>(b).account.value);
    }
  }

  void the_same_week_is_planned_the_same() {
    const Tiny t = tiny_week(3);
    const auto a = plan_week(t.week, t.table), b = plan_week(t.week, t.table);
    QCOMPARE(a.index(), b.index());
    if (const auto* plan = std::get_if<WeekPlan>(&a))
      QCOMPARE(plan->stations, std::get<WeekPlan>(b).stations);
  }

  void time_that_does_not_suffice_is_refused_with_its_seconds() {
    Tiny t = tiny_week(3);
    WeekClass& c = t.week.classes[0];
    c.stations = 3;
    c.laps = 2;
    c.work_s = 40;
    c.change_s = 20;
    c.length_s = 300;
    const auto answer = plan_week(t.week, t.table);
    const auto* no = std::get_if<WeekRefusal>(&answer);
    QVERIFY(no && no->class_index == std::optional<std::size_t>(0));
    QVERIFY2(no->reason.find("360 s in all") != std::string::npos, no->reason.c_str());
  }
};

QTEST_APPLESS_MAIN(TestWeek)
#include "tst_week.moc"
