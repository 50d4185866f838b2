// SPDX-License-Identifier: GPL-3.0-or-later
// Pre-flight: the bound on missed visits against brute force, its cut against the bound it proves, the
// sentences of cases worked by hand, and bad input.
#include <QTest>
#include <algorithm>

#include "scheduler/rotation/preflight.h"
#include "scheduler/rotation/solve.h"
#include "tests/support/brute_force.h"
#include "tests/support/builders.h"
#include "tests/support/tiny_cases.h"

using namespace floorwheel;

namespace {

ClassSpec hall(int stations, int members, int capacity = 1) {
  ClassSpec c;
  for (int s = 0; s < stations; ++s)
    build::station(c, std::string(1, static_cast<char>('A' + s)), {static_cast<Group>(s)}).capacity =
        capacity;
  for (int m = 1; m <= members; ++m) build::member(c, "m" + std::to_string(m));
  return c;
}

std::string said(const ClassSpec& c, int slots) { return std::get<Preflight>(preflight(c, slots)).reason; }

/// What members' windows force and the parts of the cut add up to.
std::int64_t explained(const Problem& p, const VisitBound& bound) {
  std::int64_t sum = 0;
  for (int m = 0; m < p.members; ++m) sum += p.forced_missed(m);
  for (const VisitCut& cut : bound.cuts) sum += cut.required - cut.room;
  return sum;
}

}  // namespace

class TestPreflight : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void enough_room_says_nothing() {
    QCOMPARE(said(hall(4, 4), 4), std::string());
    QCOMPARE(std::get<Preflight>(preflight(hall(4, 4), 4)).least.missed, 0);
  }

  // 2 places · 12 slots = 24 visits, and 26 people.
  void places_of_a_station() {
    ClassSpec c = hall(3, 26, 9);
    c.stations[1].id = "SLED";
    c.stations[1].capacity = 2;
    QCOMPARE(
        said(c, 12),
        std::string("Missed at least 2: the 2 places at SLED can take 24 visits in slots 1 to 12; 26 are "
                    "required of everybody."));
    c.stations[1].closed = {{3, 4}, {12, SlotRange::to_the_end}};
    QCOMPARE(said(c, 12), std::string("Missed at least 8: the 2 places at SLED can take 18 visits in slots 1 "
                                      "and 2 and 5 to 11; 26 are required of everybody."));
  }

  void stations_overloaded_apart_are_said_apart() {
    ClassSpec c = hall(3, 5);
    c.stations[2].capacity = 5;
    QCOMPARE(
        said(c, 4),
        std::string("Missed at least 2: the place at A can take 4 visits in slots 1 to 4; 5 are required of "
                    "everybody; the place at B can take 4 visits in slots 1 to 4; 5 are required of "
                    "everybody."));
  }

  // One kettlebell for three stations: 6 slots, 6 visits; 3 members want 3 each.
  void units_of_equipment() {
    ClassSpec c = hall(4, 3, 3);
    c.equipment = {{"kettlebell", 1}};
    for (int s = 0; s < 3; ++s) c.stations[static_cast<std::size_t>(s)].equipment = {"kettlebell"};
    QCOMPARE(said(c, 6), std::string("Missed at least 3: A, B and C with 1 × kettlebell can take 6 visits in "
                                     "slots 1 to 6; 9 are required of everybody."));
  }

  // The two latecomers are here for slots 4 to 6 and A is open for them in one slot only.
  void late_members_at_a_station_that_closes() {
    ClassSpec c = hall(3, 4, 2);
    c.stations[0].capacity = 1;
    c.members[2].present = c.members[3].present = {4, 6};
    c.stations[0].closed = {{5, 6}};
    const Preflight found = std::get<Preflight>(preflight(c, 6));
    QCOMPARE(found.least.missed, 1);
    QCOMPARE(found.reason, std::string("Missed at least 1: the place at A can take 1 visit in slot 4; 2 are "
                                       "required of m3 and m4."));
    c.stations[0].closed = {{4, 6}};
    QCOMPARE(said(c, 6),
             std::string("Missed at least 2: A is not open for long enough while m3 and m4 are here, "
                         "2 visits fewer."));
  }

  void own_window() {
    ClassSpec c = hall(4, 3);
    c.members[1].present = {3, 4};
    QCOMPARE(said(c, 4),
             std::string("Missed at least 2: m2 has 2 visits more to make than slots to make them in."));
  }

  // Held together, two cannot both go where there is one place, nor three where there are two.
  void held_together_where_places_are_few() {
    ClassSpec c = hall(3, 2, 2);
    c.stations[0].capacity = c.stations[2].capacity = 1;
    c.pairs = {{"m1", "m2", PairRule::together}};
    QCOMPARE(said(c, 6),
             std::string(
                 "Missed at least 2: m1 and m2 are held together, and A and C have too few places or units "
                 "for all of them at once: not all of them can go there, 2 visits fewer."));
    QCOMPARE(std::get<Plan>(plan(c, 6)).cost[Component::missed], 2);
    ClassSpec three = hall(2, 3, 3);
    three.stations[0].capacity = 2;
    three.pairs = {{"m1", "m2", PairRule::together}, {"m2", "m3", PairRule::together}};
    QCOMPARE(std::get<Preflight>(preflight(three, 6)).least.missed, 1);
    QCOMPARE(std::get<Plan>(plan(three, 6)).cost[Component::missed], 1);
  }

  // Never above what is possible, and every missed visit of the bound is in a clause. How often it is exact
  // is printed, not asserted: pairs and history can cost more than any count of places shows.
  void never_above_brute_force_and_wholly_explained() {
    const int cases = tiny::cases_wanted(300);
    int exact = 0;
    int planned = 0;
    for (std::uint64_t seed = tiny::first_seed(); planned < cases; ++seed) {
      const tiny::Change change = tiny::make_change(seed, tiny::most_wanted(3'000));
      const bool in_repair = seed % 2 == 0;
      const EarlierSheet* before = in_repair ? &change.before : nullptr;
      const int at_slot = in_repair ? change.at_slot : 1;
      const auto made = make_problem(change.spec, change.slots, before, at_slot);
      if (std::holds_alternative<Refusal>(made)) continue;
      ++planned;
      const Problem& p = std::get<Problem>(made);
      const VisitBound bound = cut_visits(p);
      const brute::Best best = brute::best({change.spec, change.slots, Style::free, {}, at_slot, before});
      const std::string text = "seed " + std::to_string(seed) + "\n" + tiny::dump(change.spec, change.slots);
      QVERIFY2(bound.flow.missed <= best.cost[Component::missed], text.c_str());
      if (bound.flow.missed == best.cost[Component::missed]) {
        QVERIFY2(bound.flow.uneven <= best.cost[Component::uneven], text.c_str());
        ++exact;
      }
      // In a repair the window's own share may lie in the past.
      if (!in_repair) QVERIFY2(explained(p, bound) == bound.flow.missed, text.c_str());
      QVERIFY2((bound.flow.missed > 0) == !why_missed(change.spec, p, bound).empty() || in_repair,
               text.c_str());
    }
    qInfo("%d tiny classes and changes from seed %llu, %d with the exact number", planned,
          static_cast<unsigned long long>(tiny::first_seed()), exact);
    QVERIFY(exact * 10 > planned * 8);
  }

  // What no count shows is found by looking at everything, and the reason says so: three who are mutually
  // apart at two stations of two places each, in three slots.
  void what_only_search_refutes_says_so() {
    ClassSpec c = hall(2, 3, 2);
    c.pairs = {{"m1", "m2", PairRule::apart}, {"m2", "m3", PairRule::apart}, {"m1", "m3", PairRule::apart}};
    QCOMPARE(std::get<Preflight>(preflight(c, 2)).least.missed, 0);
    const Plan answer = std::get<Plan>(plan(c, 2));
    QCOMPARE(answer.cost[Component::missed], 2);
    QCOMPARE(answer.bound[Component::missed], 2);
    QVERIFY(std::any_of(answer.reasons.begin(), answer.reasons.end(), [](const std::string& r) {
      return r.starts_with("Missed at least 2: ") && r.find("looked at") != std::string::npos;
    }));
  }

  void contradictions_are_refused_with_the_entries_that_clash() {
    ClassSpec both = hall(3, 3, 3);
    both.pairs = {
        {"m1", "m2", PairRule::together}, {"m2", "m3", PairRule::together}, {"m3", "m1", PairRule::apart}};
    const Refusal apart = std::get<Refusal>(preflight(both, 3));
    QCOMPARE(apart.rule, 5);
    QCOMPARE(apart.members.size(), std::size_t{2});
    ClassSpec ring = hall(3, 4, 3);  // a cycle of four where three fit
    ring.pairs = {{"m1", "m2"}, {"m2", "m3"}, {"m3", "m4"}, {"m4", "m1"}};
    Refusal crowded = std::get<Refusal>(preflight(ring, 3));
    QCOMPARE(crowded.rule, 5);
    std::sort(crowded.members.begin(), crowded.members.end());
    QCOMPARE(crowded.members, (std::vector<std::string>{"m1", "m2", "m3", "m4"}));
    QCOMPARE(crowded.slots, std::vector<int>{1});
    QVERIFY(crowded.reason.find("4 places") != std::string::npos);
  }

  // No bad input: answered, audited, in as many members and stations as a hall has.
  void sixty_four_stations_and_two_thousand_members_are_planned() {
    for (const int stations : {63, 64, 65, 100}) {
      ClassSpec c;
      for (int s = 0; s < stations; ++s)
        build::station(c, "s" + std::to_string(s), {static_cast<Group>(s % 7)}, 100 * (s % 10),
                       100 * (s / 10));
      for (int m = 0; m < 3; ++m) build::member(c, "m" + std::to_string(m));
      PlanOptions options;
      options.effort = 50;
      const Plan answer = std::get<Plan>(plan(c, stations, options));
      QCOMPARE(answer.cost[Component::missed], 0);
    }
    ClassSpec crowd = hall(8, 2000, 250);
    PlanOptions options;
    options.effort = 1;
    const Plan answer = std::get<Plan>(plan(crowd, 8, options));
    QCOMPARE(answer.cost[Component::missed], 0);
    for (std::size_t m = 0; m < crowd.members.size(); ++m)  // all kinds of people
      crowd.members[m].excluded_groups.insert(static_cast<Group>(m % 8));
    crowd.stations[0].capacity = 1;
    const Preflight found = std::get<Preflight>(preflight(crowd, 8));
    QCOMPARE(found.least.missed, 1750 - 8);
  }
};

QTEST_APPLESS_MAIN(TestPreflight)
#include "tst_preflight.moc"
