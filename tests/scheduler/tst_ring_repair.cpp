// SPDX-License-Identifier: GPL-3.0-or-later
// Repairs that keep their ring: rows on a ring and the choice between them against brute force on tiny
// classes with every feature, and against the exhaustive search, another algorithm, on a full floor that one
// more person joins.
#include <QTest>
#include <algorithm>
#include <set>

#include "scheduler/rotation/audit.h"
#include "scheduler/rotation/engine.h"
#include "scheduler/rotation/exact.h"
#include "scheduler/rotation/ring_rows.h"
#include "scheduler/rotation/row_choice.h"
#include "tests/support/brute_force.h"
#include "tests/support/builders.h"
#include "tests/support/events.h"
#include "tests/support/floors.h"
#include "tests/support/tiny_cases.h"

using namespace floorwheel;

namespace {

constexpr std::int64_t plenty = 10'000'000;

std::vector<StationIndex> ring_of(const ClassSpec& c, const EarlierSheet& before) {
  std::vector<StationIndex> out;
  for (const std::string& id : before.ring) out.push_back(build::station_index(c, id));
  return out;
}

/// A change in a class that goes round on a ring, and the best rotation that keeps it, by brute force.
struct RingChange {
  tiny::Change change;
  Problem problem;
  std::vector<StationIndex> ring;
  brute::Best truth;
};
template <class Judge>
void each_ring_change(std::uint64_t first, int cases, Judge judge) {
  for (std::uint64_t seed = first; seed < first + static_cast<std::uint64_t>(cases); ++seed) {
    const tiny::Change t = tiny::make_change(seed, tiny::most_wanted(20'000));
    if (t.before.style != Style::ring || t.before.ring.size() != t.spec.stations.size()) continue;
    const auto made = make_problem(t.spec, t.slots, &t.before, t.at_slot);
    if (!std::holds_alternative<Problem>(made)) continue;
    const std::vector<StationIndex> ring = ring_of(t.spec, t.before);
    const brute::Best truth = brute::best({.spec = t.spec,
                                           .slots = t.slots,
                                           .style = Style::ring,
                                           .order = ring,
                                           .at_slot = t.at_slot,
                                           .before = &t.before});
    judge(seed, RingChange{t, std::get<Problem>(made), ring, truth});
    if (QTest::currentTestFailed()) return;
  }
}

/// The least that looks find from below, and a choice that has it; nothing is left out on the way.
std::int64_t least_moved(RowChoice& choice, std::vector<Row>& rows, bool in_turn) {
  for (std::int64_t target = choice.bound();; ++target) {
    std::int64_t steps = plenty;
    const RowChoice::Look look = choice.reach(target, steps, rows, in_turn);
    if (look == RowChoice::Look::found) return target;
    if (look == RowChoice::Look::unended) return -1;
  }
}

Cost cost_of(const Problem& p, const std::vector<Row>& rows) {
  Sheet sheet(p);
  for (int m = 0; m < p.members; ++m) sheet.set_row(m, rows[ix(m)].data());
  return price(p, sheet);
}

/// Rule 2, from the repair on.
bool keeps_rooms(const Problem& p, const std::vector<Row>& rows) {
  Sheet sheet(p);
  for (int m = 0; m < p.members; ++m) sheet.set_row(m, rows[ix(m)].data());
  for (int s = 0; s < p.stations; ++s)
    for (int t = p.from; t < p.slots; ++t)
      if (p.open(s, t) && sheet.room(s, t) < 0) return false;
  return true;
}

/// A ring of so many people on so few stations that every place is taken, and one person more from `at_slot`.
struct FullFloor {
  ClassSpec spec;
  int slots = 0;
  EarlierSheet before;
};
FullFloor full_floor(std::uint64_t seed, int members, int stations, int at_slot) {
  FullFloor f;
  f.spec = floors::plain(members, stations, 1, seed);
  f.spec.style = Style::ring;
  f.slots = members;
  PlanOptions options;
  options.proof_effort = 0;
  f.before = build::sheet(f.spec, std::get<Plan>(plan(f.spec, f.slots, options)).rotation);
  f.spec.style = Style::automatic;
  build::member(f.spec, "late").present.first = at_slot;
  return f;
}

}  // namespace

class TestRingRepair : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void lists_hold_every_row_of_the_best_ring() {
    int rings = 0;
    each_ring_change(
        tiny::first_seed(), tiny::cases_wanted(120), [&](std::uint64_t seed, const RingChange& t) {
          const auto lists =
              list_rows_on_ring(t.problem, t.ring, t.truth.cost, t.truth.cost[Component::missed]);
          QVERIFY(lists);
          for (int m = 0; m < t.problem.members; ++m) {
            const std::vector<PricedRow>& list = (*lists)[ix(m)];
            const auto is_there = [&](const PricedRow& row) { return row.row == t.truth.rotation.at[ix(m)]; };
            QVERIFY2(std::any_of(list.begin(), list.end(), is_there),
                     qPrintable(QString("seed %1, member %2").arg(seed).arg(m)));
            std::set<Row> different;
            for (const PricedRow& row : list) different.insert(row.row);
            QCOMPARE(different.size(), list.size());
          }
          ++rings;
        });
    qInfo("%d rings", rings);
    QVERIFY(rings > 0);
  }

  /// A list that stops short is no list; and where less is worth it, fewer rows are.
  void a_limit_is_kept() {
    const FullFloor f = full_floor(1, 6, 5, 3);
    const Problem p = std::get<Problem>(make_problem(f.spec, f.slots, &f.before, 3));
    const std::vector<StationIndex> ring = ring_of(f.spec, f.before);
    const Cost much = [] {
      Cost c;
      c.value.fill(INT32_MAX);
      return c;
    }();
    const auto all = list_rows_on_ring(p, ring, much, 0);
    QVERIFY(all);
    std::size_t rows = 0;
    for (const auto& list : *all) rows += list.size();
    QVERIFY(list_rows_on_ring(p, ring, much, 0, {.rows = rows}));
    QVERIFY(!list_rows_on_ring(p, ring, much, 0, {.rows = rows - 1}));
    QVERIFY(!list_rows_on_ring(p, ring, much, 0, {.steps = 10}));
  }

  /// Without pairs, which are not asked: bound, least and choice against every ring rotation.
  void the_choice_is_the_truth() {
    int judged = 0;
    int moved = 0;
    each_ring_change(
        tiny::first_seed(), tiny::cases_wanted(200), [&](std::uint64_t seed, const RingChange& t) {
          if (!t.change.spec.pairs.empty()) return;
          const Cost& truth = t.truth.cost;
          const auto lists = list_rows_on_ring(t.problem, t.ring, truth, truth[Component::missed]);
          RowChoice choice(t.problem, *lists, truth);
          QVERIFY(choice.possible());
          choice.raise(truth[Component::moved]);
          QVERIFY2(choice.bound() <= truth[Component::moved], qPrintable(QString("seed %1").arg(seed)));
          std::vector<Row> rows;
          QCOMPARE(least_moved(choice, rows, false), truth[Component::moved]);
          QCOMPARE(least_moved(choice, rows, true), truth[Component::moved]);
          const Cost cost = cost_of(t.problem, rows);
          QVERIFY2(keeps_rooms(t.problem, rows) && leading_equal(cost, truth),
                   qPrintable(QString("seed %1: ").arg(seed) + QString::fromStdString(tiny::dump(cost))));
          QCOMPARE(cost[Component::moved], truth[Component::moved]);
          ++judged;
          moved += truth[Component::moved] > 0 ? 1 : 0;
        });
    qInfo("%d changes, %d of them move something", judged, moved);
    QVERIFY(moved > 0);
  }

  /// Three people, two stations and a limit that nobody fits: prices grew there without end, until sums no
  /// longer fitted 64 bits (found by the long row of the test above).
  void prices_end() {
    int judged = 0;
    each_ring_change(10'272, 1, [&](std::uint64_t, const RingChange& t) {
      const auto lists = list_rows_on_ring(t.problem, t.ring, t.truth.cost, t.truth.cost[Component::missed]);
      RowChoice choice(t.problem, *lists, t.truth.cost);
      choice.raise(t.truth.cost[Component::moved]);
      QVERIFY(choice.bound() <= t.truth.cost[Component::moved]);
      ++judged;
    });
    QCOMPARE(judged, 1);
  }

  /// Seven people go round six stations and an eighth comes, or six round five and a seventh, early: then
  /// prices alone do not tell. What the exhaustive search finds on the same lists.
  void a_full_floor_takes_one_more() {
    int above_the_prices = 0;
    const std::uint64_t first = tiny::first_seed();
    const auto cases = static_cast<std::uint64_t>(tiny::cases_wanted(12));
    for (std::uint64_t seed = first; seed < first + cases; ++seed) {
      const bool early = seed % 2 == 0;
      const int at = early ? 2 : static_cast<int>(3 + seed % 3);
      const FullFloor f = early ? full_floor(seed, 6, 5, at) : full_floor(seed, 7, 6, at);
      const Problem p = std::get<Problem>(make_problem(f.spec, f.slots, &f.before, at));
      const OrRefusal<Plan> answer = repair(f.spec, f.slots, f.before, at);
      const Plan& shown = std::get<Plan>(answer);
      if (shown.cost[Component::back_to_back] > 0) continue;  // that it needs so many is not proven
      QCOMPARE(shown.rotation.style, Style::ring);
      QVERIFY2(shown.proven >= 4,
               qPrintable(QString("seed %1: ").arg(seed) + QString::fromStdString(tiny::dump(shown.cost))));
      Cost aim = shown.cost;
      const auto lists = list_rows_on_ring(p, ring_of(f.spec, f.before), aim, aim[Component::missed]);
      QVERIFY(lists);
      ++aim[Component::moved];  // to be beaten
      Incumbent best{shown.rotation.at, aim};
      std::int64_t steps = plenty;
      QVERIFY(search_all(p, *lists, 4, Cost{}, best, steps));
      QCOMPARE(best.cost[Component::moved], shown.cost[Component::moved]);
      std::vector<Row> rows;
      RowChoice choice(p, *lists, shown.cost);
      choice.raise(shown.cost[Component::moved]);
      QCOMPARE(least_moved(choice, rows, true), shown.cost[Component::moved]);
      above_the_prices += choice.bound() < shown.cost[Component::moved] ? 1 : 0;
    }
    qInfo("in %d of %d the prices alone do not tell", above_the_prices, static_cast<int>(cases));
    QVERIFY(above_the_prices > 0);
  }

  /// The twin: were there one place more, the choice would move fewer, so the places are what it minds.
  void a_place_more_is_noticed() {
    int fewer = 0;
    for (std::uint64_t seed = 1; seed <= 6; ++seed) {
      FullFloor f = full_floor(seed, 7, 6, 4);
      const auto moved = [&] {
        return std::get<Plan>(repair(f.spec, f.slots, f.before, 4)).cost[Component::moved];
      };
      const std::int64_t full = moved();
      for (StationSpec& s : f.spec.stations) s.capacity = 2;
      QCOMPARE(moved(), 0);
      fewer += full > 0 ? 1 : 0;
    }
    QCOMPARE(fewer, 6);
  }

  /// Stopped at any moment, a repair is the best so far and keeps all rules.
  void a_stopped_repair_holds() {
    const FullFloor f = full_floor(2, 12, 10, 2);
    int stopped = 0;
    for (int after : {0, 1, 3, 10, 30}) {
      int asked = 0;
      PlanOptions options;
      options.stop = [&] { return asked++ >= after; };
      const Plan shown = std::get<Plan>(repair(f.spec, f.slots, f.before, 2, options));
      stopped += asked > after ? 1 : 0;
      const Audit a = audit(f.spec, shown.rotation, 2, &f.before);
      QVERIFY(a.holds());
      QCOMPARE(a.cost, shown.cost);
    }
    QVERIFY(stopped > 2);
  }

  /// Where a large floor is full, one who comes late gets visits of many others, each of whom misses one.
  void a_latecomer_to_a_large_floor_gets_a_share() {
    ClassSpec c = floors::plain(60, 30, 2, 7);
    const EarlierSheet before = build::sheet(c, std::get<Plan>(first_rotation(c, 30)).rotation);
    build::member(c, "late").present.first = 9;
    const Plan shown = std::get<Plan>(repair(c, 30, before, 9));
    const Audit a = audit(c, shown.rotation, 9, &before);
    QVERIFY(a.holds());
    QCOMPARE(shown.bound[Component::uneven], 22);  // twenty-two visits for 61 people to do without
    QCOMPARE(a.cost[Component::uneven], 22);
    QVERIFY(shown.proven >= 4);
  }
};

QTEST_APPLESS_MAIN(TestRingRepair)
#include "tst_ring_repair.moc"
