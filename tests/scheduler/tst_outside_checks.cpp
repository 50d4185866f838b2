// SPDX-License-Identifier: GPL-3.0-or-later
// Class seconds and the auditor against what was not made here: tables of tests/reference (sources in their
// rows), Williams' row-complete squares and the example of forty people on ten stations.
#include <QTest>
#include <cmath>
#include <set>

#include "scheduler/rotation/audit.h"
#include "tests/support/builders.h"
#include "tests/support/csv.h"

using namespace floorwheel;

namespace {

GroupSet groups(const std::string& words) {
  GroupSet out;
  for (const std::string& id : csv::split(words, ' ')) out.insert(group_from(id).value());
  return out;
}

/// Row-complete Latin square of even order n: 0, 1, n−1, 2, n−2, ... and its shifts modulo n.
/// E. J. Williams, Experimental designs balanced for the estimation of residual effects of treatments,
/// Australian Journal of Scientific Research A 2 (1949) 149-168.
std::vector<std::vector<StationIndex>> williams_square(int n) {
  std::vector<std::vector<StationIndex>> rows;
  for (int shift = 0; shift < n; ++shift) {
    rows.emplace_back();
    for (int i = 0; i < n; ++i) {
      const int term = i % 2 == 1 ? (i + 1) / 2 : (n - i / 2) % n;
      rows.back().push_back((term + shift) % n);
    }
  }
  return rows;
}

Rotation square_rotation(int n) {
  Rotation r;
  r.slots = n;
  r.at = williams_square(n);
  return r;
}

}  // namespace

class TestOutsideChecks : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  // circuit_duration_cases.csv; work differs by round in one row, so each round is a class of its own there.
  void circuit_durations() {
    const auto rows = csv::read("tests/reference/circuit_duration_cases.csv");
    QVERIFY(rows.size() >= 5);
    for (const auto& row : rows) {
      const int stations = std::stoi(row.at("stations"));
      ClassSpec c;
      c.change_s = std::stoi(row.at("change_s"));
      int by_rounds = 0;
      std::set<int> lengths;
      const auto rounds = csv::split(row.at("work_s_per_round"), ' ');
      QCOMPARE(std::to_string(rounds.size()), row.at("rounds"));
      for (const std::string& work_s : rounds) {
        c.work_s = std::stoi(work_s);
        lengths.insert(c.work_s);
        by_rounds += class_seconds(c, stations);
      }
      QCOMPARE(std::to_string(by_rounds), row.at("total_s_with_last_change"));
      QCOMPARE(std::to_string(by_rounds - c.change_s), row.at("total_s_without_last_change"));
      if (lengths.size() > 1) continue;
      QCOMPARE(class_seconds(c, stations * static_cast<int>(rounds.size())), by_rounds);
    }
  }

  // station_adjacency_cases.csv: the circuit rule is back_to_back, the strict one assist_overlap besides.
  void the_circuit_rule() {
    std::map<std::string, csv::Record> muscles;
    for (const auto& row : csv::read("tests/reference/exercise_muscles.csv"))
      muscles[row.at("exercise_id")] = row;
    const auto rows = csv::read("tests/reference/station_adjacency_cases.csv");
    QVERIFY(rows.size() >= 20);
    for (const auto& row : rows) {
      ClassSpec c;
      for (const char* which : {"first_exercise", "next_exercise"}) {
        const auto& e = muscles.at(row.at(which));
        build::station(c, e.at("exercise_id"), groups(e.at("primary_groups")), 0, 0,
                       groups(e.at("secondary_groups")));
      }
      build::member(c, "m1");
      Rotation r;
      r.slots = 2;
      r.at = {{0, 1}};
      const Cost cost = audit(c, r).cost;
      const bool kept = cost[Component::back_to_back] == 0;
      const bool kept_strictly = kept && cost[Component::assist_overlap] == 0;
      const std::string pair = row.at("first_exercise") + ", " + row.at("next_exercise");
      QVERIFY2(kept == (row.at("allowed_primary_rule") == "yes"), pair.c_str());
      QVERIFY2(kept_strictly == (row.at("allowed_strict_rule") == "yes"), pair.c_str());
      QCOMPARE(kept, row.at("shared_primary_groups").empty());
    }
  }

  // In a row-complete square every ordered pair of stations follows each other once. So whatever the floor
  // is, the rotation walks each distance twice, and meets each pair that shares a group twice.
  void williams_squares() {
    for (int n = 2; n <= 12; n += 2) {
      ClassSpec c;
      for (int s = 0; s < n; ++s) {
        const GroupSet primary{static_cast<Group>(s % 5)};
        const GroupSet assisting{static_cast<Group>(5 + s % 3), static_cast<Group>((s + 1) % 5)};
        build::station(c, "s" + std::to_string(s), primary, (s * s * 37) % 500, (s * 91) % 700, assisting);
        build::member(c, "m" + std::to_string(s));
      }
      std::int64_t same_group = 0;
      std::int64_t assisting = 0;
      std::int64_t walk_cm = 0;
      for (int a = 0; a < n; ++a)
        for (int b = 0; b < n; ++b) {
          if (a == b) continue;
          const auto& at_a = c.stations[static_cast<std::size_t>(a)];
          const auto& at_b = c.stations[static_cast<std::size_t>(b)];
          walk_cm += std::lround(std::hypot(at_a.x_cm - at_b.x_cm, at_a.y_cm - at_b.y_cm));
          if (a % 5 == b % 5)
            ++same_group;
          else if ((a + 1) % 5 == b % 5 || (b + 1) % 5 == a % 5)
            ++assisting;
        }
      const Audit a = audit(c, square_rotation(n));
      QVERIFY(a.holds());
      QCOMPARE(a.cost[Component::missed], 0);
      QCOMPARE(a.cost[Component::idle], 0);
      QCOMPARE(a.cost[Component::back_to_back], same_group);
      QCOMPARE(a.cost[Component::assist_overlap], assisting);
      QCOMPARE(a.cost[Component::walk_cm], walk_cm);
    }
  }

  // The same by hand for n = 4, stations on a line at 0, 1, 3 and 6 m: the distances 1, 3, 6, 2, 5 and 3 m
  // add up to 20 m, walked twice; chest at the first and the third station are met twice.
  void williams_square_of_four_by_hand() {
    QCOMPARE(williams_square(4).front(), (std::vector<StationIndex>{0, 1, 3, 2}));
    ClassSpec c;
    build::station(c, "A", {Group::chest}, 0);
    build::station(c, "B", {Group::biceps}, 100);
    build::station(c, "C", {Group::chest}, 300);
    build::station(c, "D", {Group::calves}, 600);
    for (int m = 0; m < 4; ++m) build::member(c, "m" + std::to_string(m));
    c.recovery_s = {0, 0, 0};
    QCOMPARE(audit(c, square_rotation(4)).cost,
             build::cost({{Component::back_to_back, 2}, {Component::walk_cm, 4000}}));
  }

  // circuit_timing.csv, "persons / stations in the grouping example": 40 on 10 stations make 10 groups of 4.
  void forty_people_on_ten_stations() {
    int persons = 0;
    std::string unit;
    for (const auto& row : csv::read("tests/reference/circuit_timing.csv"))
      if (row.at("quantity") == "persons / stations in the grouping example") {
        persons = std::stoi(row.at("value"));
        unit = row.at("unit");
      }
    QCOMPARE(persons, 40);
    QCOMPARE(unit, std::string("persons on 10 stations = 10 groups of 4"));
    ClassSpec c;
    Rotation r;
    r.slots = 10;
    r.style = Style::ring;
    for (int s = 0; s < 10; ++s) {
      build::station(c, "s" + std::to_string(s), {static_cast<Group>(s)}).capacity = 4;
      r.ring.push_back(s);
    }
    for (int m = 0; m < persons; ++m) {
      build::member(c, "m" + std::to_string(m));
      r.at.emplace_back();
      for (int t = 0; t < 10; ++t) r.at.back().push_back((m / 4 + t) % 10);
    }
    const Audit a = audit(c, r);
    QVERIFY(a.holds());
    QCOMPARE(a.cost, Cost{});
    // One place less, and every station breaks rule 2 in every slot.
    for (StationSpec& s : c.stations) s.capacity = 3;
    QCOMPARE(audit(c, r).breaches.size(), std::size_t{100});
  }
};

QTEST_APPLESS_MAIN(TestOutsideChecks)
#include "tst_outside_checks.moc"
