// SPDX-License-Identifier: GPL-3.0-or-later
// The auditor against the worked cases of the rotation model, and clause by clause: every rule and every cost
// component has a clean rotation and a twin that is broken in exactly that one.
#include <QTest>
#include <functional>
#include <set>

#include "scheduler/rotation/audit.h"
#include "tests/support/builders.h"

using namespace floorwheel;
using namespace floorwheel::build;

namespace {

/// The class of the model's worked cases.
ClassSpec worked_class() {
  ClassSpec c;
  station(c, "A", {Group::chest}, 0, 0);
  station(c, "B", {Group::chest}, 300, 400);
  station(c, "C", {Group::quadriceps}, 0, 400);
  member(c, "m1", Level::advanced);
  return c;
}

/// Stations A to D of four different groups on one spot and members m1, m2, ..., so that nothing costs unless
/// a test makes it.
ClassSpec quiet_class(int members = 1, const std::string& stations = "ABCD") {
  const std::array groups{Group::chest, Group::quadriceps, Group::biceps, Group::calves};
  ClassSpec c;
  for (std::size_t s = 0; s < stations.size(); ++s) station(c, std::string(1, stations[s]), {groups[s]});
  for (int m = 1; m <= members; ++m) member(c, "m" + std::to_string(m));
  return c;
}

std::string text(const Cost& cost) {
  std::string out;
  for (Component c : components)
    if (cost[c] != 0) out += std::string(id_of(c)) + " " + std::to_string(cost[c]) + " ";
  return out;
}

std::string text(const std::vector<Breach>& breaches) {
  std::string out;
  for (const Breach& b : breaches) out += "rule " + std::to_string(b.rule) + ": " + b.text + "\n";
  return out;
}

/// A class, a rotation that is clean and its twin, both judged from `at_slot` on against `before`.
struct Twins {
  ClassSpec c;
  Rotation clean;
  Rotation twin;
  int at_slot = 1;
  std::optional<EarlierSheet> before;

  [[nodiscard]] Audit audit_clean() const { return audit(c, clean, at_slot, before ? &*before : nullptr); }
  [[nodiscard]] Audit audit_twin() const { return audit(c, twin, at_slot, before ? &*before : nullptr); }
};

void expect_broken(const Twins& t, int rule, int slot, const std::string& words) {
  QCOMPARE(text(t.audit_clean().breaches), std::string());
  const Audit broken = t.audit_twin();
  QVERIFY(!broken.holds());
  for (const Breach& b : broken.breaches) {
    QVERIFY2(b.rule == rule, b.text.c_str());
    QVERIFY2(b.text.find(words) != std::string::npos, b.text.c_str());
    QVERIFY2(b.text.ends_with('.'), b.text.c_str());
  }
  QCOMPARE(broken.breaches.front().slot, slot);
}

}  // namespace

class TestAudit : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void worked_cases_data() {
    QTest::addColumn<QString>("row");
    QTest::addColumn<QString>("cost");
    QTest::newRow("short rest") << "A C B"
                                << "short_rest 1 walk_cm 700 ";
    QTest::newRow("back to back") << "A B C"
                                  << "back_to_back 1 walk_cm 800 ";
    QTest::newRow("hole") << "A - B"
                          << "missed 1 uneven 1 short_rest 1 idle 1 walk_cm 500 ";
    QTest::newRow("late start") << "- A C"
                                << "missed 1 uneven 1 idle 1 walk_cm 400 ";
    QTest::newRow("early end") << "A C -"
                               << "missed 1 uneven 1 walk_cm 400 ";
  }
  void worked_cases() {
    QFETCH(QString, row);
    QFETCH(QString, cost);
    const ClassSpec c = worked_class();
    const Audit a = audit(c, rotation(c, {row.toStdString()}));
    QCOMPARE(text(a.breaches), std::string());
    QCOMPARE(text(a.cost), cost.toStdString());
    QVERIFY(!a.moved_known);
  }

  // ---- rules: a clean rotation and a twin that breaks exactly that rule

  void rule_1_presence() {
    ClassSpec c = quiet_class();
    c.members[0].present = {2, 3};
    expect_broken({c, rotation(c, {"- A B -"}), rotation(c, {"A B - -"}), 1, {}}, 1, 1, "is present from");
    expect_broken({c, rotation(c, {"- A B -"}), rotation(c, {"- A - B"}), 1, {}}, 1, 4, "is present from");
  }

  void rule_2_places() {
    ClassSpec c = quiet_class(3);
    c.stations[0].capacity = 2;
    expect_broken({c, rotation(c, {"A", "A", "B"}), rotation(c, {"A", "A", "A"}), 1, {}}, 2, 1, "holds 3");
    expect_broken({c, rotation(c, {"A B", "A C", "B D"}), rotation(c, {"A B", "A C", "C B"}), 1, {}}, 2, 2,
                  "holds 2");
  }

  void rule_2_closed() {
    ClassSpec c = quiet_class();
    c.stations[1].closed = {{1, 1}, {3, SlotRange::to_the_end}};
    expect_broken({c, rotation(c, {"A B C"}), rotation(c, {"B A C"}), 1, {}}, 2, 1, "closed");
    expect_broken({c, rotation(c, {"A B C -"}), rotation(c, {"A C - B"}), 1, {}}, 2, 4, "closed");
  }

  void rule_2_equipment_is_counted_over_stations() {
    ClassSpec c = quiet_class(2);
    c.equipment = {{"kettlebell", 1}};
    c.stations[0].equipment = {"kettlebell"};
    c.stations[1].equipment = {"kettlebell"};
    expect_broken({c, rotation(c, {"A B", "C D"}), rotation(c, {"A B", "B A"}), 1, {}}, 2, 1, "kettlebell");
  }

  void rule_3_exercises() {
    ClassSpec c = quiet_class();
    c.members[0].excluded_exercises = {"do-A"};
    expect_broken({c, rotation(c, {"B C"}), rotation(c, {"B A"}), 1, {}}, 3, 2, "do-A");
  }

  void rule_4_required() {
    ClassSpec c = quiet_class();
    c.members[0].required = {{"A", "B"}};
    expect_broken({c, rotation(c, {"A B"}), rotation(c, {"A C"}), 1, {}}, 4, 2, "not required");
  }

  void rule_4_laps() {
    ClassSpec c = quiet_class(1, "ABC");
    c.laps = 2;
    // A B | A C B: a lap may pass over stations, and the second begins where A comes again.
    expect_broken({c, rotation(c, {"A B A C B -"}), rotation(c, {"A B A C A -"}), 1, {}}, 4, 5, "lap 3");
    c.laps = 1;
    expect_broken({c, rotation(c, {"A B -"}), rotation(c, {"A - A"}), 1, {}}, 4, 3, "lap 2");
  }

  void rule_5_together() {
    ClassSpec c = quiet_class(2);
    for (StationSpec& s : c.stations) s.capacity = 2;
    c.pairs = {{"m1", "m2", PairRule::together}};
    expect_broken({c, rotation(c, {"A B", "A B"}), rotation(c, {"A B", "A C"}), 1, {}}, 5, 2,
                  "held together");
    // One waits while the other works at a station that the waiting one has in another slot.
    expect_broken({c, rotation(c, {"A B", "- B"}), rotation(c, {"A B", "B -"}), 1, {}}, 5, 1,
                  "held together");
    expect_broken({c, rotation(c, {"A B -", "A - -"}), rotation(c, {"A B -", "A - B"}), 1, {}}, 5, 2,
                  "another slot");
  }

  void rule_5_together_holds_only_while_both_are_present() {
    ClassSpec c = quiet_class(2);
    c.pairs = {{"m1", "m2", PairRule::together}};
    c.members[1].present = {1, 1};
    for (StationSpec& s : c.stations) s.capacity = 2;
    QVERIFY(audit(c, rotation(c, {"A B", "A -"})).holds());
    c.members[1].present = {1, 2};
    QVERIFY(audit(c, rotation(c, {"A B", "A -"})).holds());
    QVERIFY(!audit(c, rotation(c, {"A B", "B -"})).holds());
  }

  void rule_5_apart() {
    ClassSpec c = quiet_class(2);
    c.stations[1].capacity = 2;
    c.pairs = {{"m1", "m2", PairRule::apart}};
    expect_broken({c, rotation(c, {"A B", "B A"}), rotation(c, {"A B", "C B"}), 1, {}}, 5, 2, "held apart");
  }

  void rule_6_steps_within_a_lap() {
    const ClassSpec c = quiet_class();
    // B to D to A: 2 + 1 = 3 of 4 steps, passing over C; B, A, D: 3 + 3.
    expect_broken({c, ring_rotation(c, "A B C D", {"B D A"}), ring_rotation(c, "A B C D", {"B A D"}), 1, {}},
                  6, 3, "within a lap");
    // The order of the ring counts, not that of the file.
    QVERIFY(audit(c, ring_rotation(c, "A C B D", {"A C B D"})).holds());
    QVERIFY(!audit(c, ring_rotation(c, "A C B D", {"A B C D"})).holds());
    // Slots not worked in between do not matter.
    QVERIFY(audit(c, ring_rotation(c, "A B C D", {"C - D - A"})).holds());
  }

  void rule_6_steps_of_the_whole_row() {
    ClassSpec c = quiet_class(1, "ABC");
    c.laps = 2;
    // Laps A B and A B C: steps 1 + 2 + 1 + 1 = 5 of 6. Laps B and B C A: 3 + 1 + 1; with A C | C B: 2 + 3 +
    // 2 = 7.
    expect_broken(
        {c, ring_rotation(c, "A B C", {"A B A B C"}), ring_rotation(c, "A B C", {"A C C B -"}), 1, {}}, 6, 4,
        "steps round the ring in all");
    QVERIFY(audit(c, ring_rotation(c, "A B C", {"B B C A -"})).holds());
  }

  void rule_6_a_ring_names_every_station_once() {
    const ClassSpec c = quiet_class();
    const std::string order = "every station";
    expect_broken({c, ring_rotation(c, "A B C D", {"A"}), ring_rotation(c, "A B C", {"A"}), 1, {}}, 6, 0,
                  order);
    expect_broken({c, ring_rotation(c, "A B C D", {"A"}), ring_rotation(c, "A B C C", {"A"}), 1, {}}, 6, 0,
                  order);
  }

  void rule_0_history() {
    const ClassSpec c = quiet_class(2);
    const Rotation old = rotation(c, {"A B C", "B A D"});
    const EarlierSheet before = sheet(c, old);
    expect_broken({c, rotation(c, {"A B C", "B A -"}), rotation(c, {"A B C", "C A -"}), 3, before}, 0, 1,
                  "history");
    // Without the earlier sheet history cannot be judged, neither by rule 0 nor by another.
    QVERIFY(audit(c, rotation(c, {"A B C", "A A -"}), 3).holds());
    QVERIFY(!audit(c, rotation(c, {"A B C", "A A -"}), 1).holds());
  }

  void rule_0_history_is_empty_where_a_member_was_not_present() {
    ClassSpec c = quiet_class(2);
    EarlierSheet before = sheet(c, rotation(c, {"A B C", "B A D"}));
    c.members[1].present = {2, SlotRange::to_the_end};
    expect_broken({c, rotation(c, {"A B C", "- A D"}), rotation(c, {"A B C", "B A D"}), 3, before}, 0, 1,
                  "not present");
    before.rows.pop_back();  // m2 is new
    expect_broken({c, rotation(c, {"A B C", "- - D"}), rotation(c, {"A B C", "- A D"}), 3, before}, 0, 2,
                  "no row");
  }

  void rule_0_a_ring_keeps_its_order_and_free_stays_free() {
    const ClassSpec c = quiet_class();
    const EarlierSheet ring = sheet(c, ring_rotation(c, "A B C D", {"A B C D"}));
    expect_broken(
        {c, ring_rotation(c, "C D A B", {"A B C D"}), ring_rotation(c, "A B D C", {"A B D C"}), 3, ring}, 0,
        0, "order");
    QVERIFY(audit(c, rotation(c, {"A B D C"}), 3, &ring).holds());
    const EarlierSheet free = sheet(c, rotation(c, {"A B C D"}));
    expect_broken({c, rotation(c, {"A B C D"}), ring_rotation(c, "A B C D", {"A B C D"}), 3, free}, 0, 0,
                  "free");
  }

  void rule_0_a_rotation_of_another_class() {
    const ClassSpec c = quiet_class(2);
    Rotation r = rotation(c, {"A B", "B A"});
    QVERIFY(audit(c, r).holds());
    Rotation short_row = r;
    short_row.at[1].pop_back();
    Rotation one_row = r;
    one_row.at.pop_back();
    Rotation no_such_station = r;
    no_such_station.at[0][0] = 4;
    Rotation undecided = r;
    undecided.style = Style::automatic;
    for (const Rotation& bad : {short_row, one_row, no_such_station, undecided}) {
      const Audit a = audit(c, bad);
      QCOMPARE(a.breaches.size(), std::size_t{1});
      QCOMPARE(a.breaches[0].rule, 0);
    }
  }

  // ---- in a repair rules are judged from its slot on; laps and ring steps count history in

  void history_is_not_judged_by_numbered_rules() {
    ClassSpec c = quiet_class(2);
    const Rotation r = rotation(c, {"A B", "A C"});
    QVERIFY(!audit(c, r, 1).holds());
    QVERIFY(audit(c, r, 2).holds());
    c.members[0].excluded_exercises = {"do-A"};
    c.stations[0].closed = {{1, 1}};
    c.members[1].present = {2, 2};
    c.pairs = {{"m1", "m2", PairRule::apart}};
    QVERIFY(audit(c, r, 2).holds());
  }

  void laps_and_ring_steps_count_history_in() {
    const ClassSpec c = quiet_class();
    QCOMPARE(audit(c, rotation(c, {"A B A"}), 3).breaches.at(0).rule, 4);
    QVERIFY(audit(c, rotation(c, {"A A B"}), 4).holds());
    const Audit turned = audit(c, ring_rotation(c, "A B C D", {"B C A B"}), 4);
    QCOMPARE(turned.breaches.at(0).slot, 4);
    const Audit steps = audit(c, ring_rotation(c, "A B C D", {"B D C"}), 3);
    QCOMPARE(steps.breaches.at(0).rule, 6);
  }

  void together_counts_history_of_the_one_who_waits() {
    ClassSpec c = quiet_class(2);
    c.pairs = {{"m1", "m2", PairRule::together}};
    QVERIFY(audit(c, rotation(c, {"B A", "C -"}), 2).holds());
    QCOMPARE(audit(c, rotation(c, {"B A", "A -"}), 2).breaches.at(0).rule, 5);
  }

  // ---- the exercise of a member at a station

  void exclusions_reach_primary_assisting_features_and_ids() {
    ClassSpec c = quiet_class(1, "A");
    c.exercises["do-A"] = exercise("do-A", {Group::chest}, {Group::triceps}, {Feature::floor});
    c.exercises["other"] = exercise("other", {Group::chest});
    c.stations[0].substitutes = {"other"};
    const auto given = [&](const std::function<void(MemberSpec&)>& change) {
      ClassSpec changed = c;
      change(changed.members[0]);
      const Exercise* e = audited_exercise(changed, 0, 0);
      return e == nullptr ? std::string("none") : e->id;
    };
    QCOMPARE(given([](MemberSpec&) {}), std::string("do-A"));
    QCOMPARE(given([](MemberSpec& m) { m.excluded_groups = {Group::triceps}; }), std::string("other"));
    QCOMPARE(given([](MemberSpec& m) { m.excluded_groups = {Group::chest}; }), std::string("none"));
    QCOMPARE(given([](MemberSpec& m) { m.excluded_features = {Feature::floor}; }), std::string("other"));
    QCOMPARE(given([](MemberSpec& m) { m.excluded_exercises = {"do-A"}; }), std::string("other"));
    QCOMPARE(given([](MemberSpec& m) {
               m.excluded_exercises = {"do-A", "other"};
               m.excluded_features = {Feature::floor};
               m.excluded_groups = {Group::chest};
               m.allowed_exercises = {"do-A"};
             }),
             std::string("do-A"));
  }

  void a_substitute_is_priced_with_its_own_groups() {
    ClassSpec c = quiet_class();
    c.exercises["other"] = exercise("other", {Group::chest});
    c.stations[1].substitutes = {"other"};
    QCOMPARE(text(audit(c, rotation(c, {"A B C D"})).cost), std::string());
    c.members[0].excluded_groups = {Group::quadriceps};
    QCOMPARE(text(audit(c, rotation(c, {"A B C D"})).cost), std::string("back_to_back 1 "));
  }

  void history_without_an_exercise_is_priced_with_the_stations_own() {
    ClassSpec c = quiet_class();
    c.exercises["do-B"] = exercise("do-B", {Group::chest}, {}, {Feature::jump});
    c.members[0].excluded_features = {Feature::jump};
    const Audit a = audit(c, rotation(c, {"A B C D"}), 3);
    QVERIFY(a.holds());
    // Required are A, C and D; B was worked, and does not count as a visit.
    QCOMPARE(text(a.cost), std::string("back_to_back 1 "));
  }

  // ---- cost: a rotation and a twin that differ in exactly that component

  void each_component_has_a_twin_of_its_own_data() {
    QTest::addColumn<int>("component");
    QTest::addColumn<int>("clean");
    QTest::addColumn<int>("twin");
    const auto row = [](Component c, int clean, int twin) {
      QTest::newRow(std::string(id_of(c)).c_str()) << static_cast<int>(c) << clean << twin;
    };
    row(Component::missed, 3, 5);
    row(Component::uneven, 2, 4);
    row(Component::back_to_back, 0, 1);
    row(Component::moved, 0, 6);
    row(Component::short_rest, 0, 1);
    row(Component::idle, 0, 1);
    row(Component::assist_overlap, 0, 1);
    row(Component::walk_cm, 600, 700);
    row(Component::reload_hg, 80, 160);
  }
  void each_component_has_a_twin_of_its_own() {
    QFETCH(int, component);
    QFETCH(int, clean);
    QFETCH(int, twin);
    const auto c = static_cast<Component>(component);
    const Twins twins = twins_of(c);
    const Audit a = twins.audit_clean();
    const Audit b = twins.audit_twin();
    QVERIFY2(a.holds() && b.holds(), (text(a.breaches) + text(b.breaches)).c_str());
    QCOMPARE(a.cost[c], std::int64_t{clean});
    QCOMPARE(b.cost[c], std::int64_t{twin});
    for (Component other : components)
      if (other != c) QVERIFY2(a.cost[other] == b.cost[other], std::string(id_of(other)).c_str());
  }

  // ---- clauses of single components

  void uneven_forgives_what_the_members_own_window_forces() {
    ClassSpec c = quiet_class();
    c.members[0].present = {3, SlotRange::to_the_end};
    QCOMPARE(text(audit(c, rotation(c, {"- - A B"})).cost), std::string("missed 2 "));
    QCOMPARE(text(audit(c, rotation(c, {"- - A -"})).cost), std::string("missed 3 uneven 1 "));
  }

  void one_station_in_two_slots_running_is_back_to_back() {
    ClassSpec c = quiet_class(1, "AB");
    c.laps = 2;
    QCOMPARE(text(audit(c, rotation(c, {"A B B A"})).cost), std::string("back_to_back 1 "));
  }

  void gaps_are_shorter_than_recovery_by_level_setting_and_break() {
    ClassSpec c = worked_class();  // A, C, B: gap 20 + 40 + 20 = 80 s
    const Rotation r = rotation(c, {"A C B"});
    const auto short_rests = [&] { return audit(c, r).cost[Component::short_rest]; };
    QCOMPARE(short_rests(), 1);
    c.members[0].level = Level::intermediate;
    QCOMPARE(short_rests(), 1);
    c.members[0].level = Level::novice;
    QCOMPARE(short_rests(), 0);
    c.recovery_s = {81, 90, 120};
    QCOMPARE(short_rests(), 1);
    c.recovery_s = {80, 90, 120};
    QCOMPARE(short_rests(), 0);
    c.members[0].level = Level::intermediate;
    c.breaks = {{2, 10}};  // gap 90 s
    QCOMPARE(short_rests(), 0);
    c.breaks = {{3, 100}};  // falls away: after the last slot
    QCOMPARE(short_rests(), 1);
    c.breaks = {{1, 5}, {2, 4}};
    QCOMPARE(short_rests(), 1);
    c.breaks = {{1, 5}, {2, 5}};
    QCOMPARE(short_rests(), 0);
  }

  void a_break_leaves_neighbours_back_to_back() {
    ClassSpec c = worked_class();
    c.breaks = {{1, 1000}};
    QCOMPARE(audit(c, rotation(c, {"A B C"})).cost[Component::back_to_back], 1);
  }

  void idle_ends_with_the_last_worked_slot_and_begins_with_presence() {
    ClassSpec c = quiet_class();
    const auto idle = [&](const char* row) { return audit(c, rotation(c, {row})).cost[Component::idle]; };
    QCOMPARE(idle("- - - -"), 0);
    QCOMPARE(idle("A - - -"), 0);
    QCOMPARE(idle("- A - B"), 2);
    c.members[0].present = {2, 3};
    QCOMPARE(idle("- - A -"), 1);
  }

  void assist_overlap_is_not_counted_on_top_of_back_to_back() {
    ClassSpec c = quiet_class();
    c.exercises["do-A"].assisting = {Group::quadriceps};
    QCOMPARE(text(audit(c, rotation(c, {"B A C D"})).cost), std::string("assist_overlap 1 "));
    c.exercises["do-A"].primary = {Group::quadriceps};
    QCOMPARE(text(audit(c, rotation(c, {"B A C D"})).cost), std::string("back_to_back 1 "));
    // Assisting against assisting is nothing.
    c.exercises["do-A"].primary = {Group::chest};
    c.exercises["do-A"].assisting = {Group::abs};
    c.exercises["do-B"].assisting = {Group::abs};
    QCOMPARE(text(audit(c, rotation(c, {"B A C D"})).cost), std::string());
  }

  void each_leg_is_rounded_to_the_nearest_centimetre() {
    ClassSpec c = quiet_class();
    c.stations[1].x_cm = c.stations[1].y_cm = 1;  // 1.414
    c.stations[2].x_cm = 3;                       // B to C: 2, 1 apart: 2.236
    c.stations[3].x_cm = 3;
    c.stations[3].y_cm = 7;                                                     // C to D: 7
    QCOMPARE(audit(c, rotation(c, {"A B C D"})).cost[Component::walk_cm], 10);  // 1 + 2 + 7
    QCOMPARE(audit(c, rotation(c, {"A D C B"})).cost[Component::walk_cm], 17);  // 7.616 -> 8, 7, 2
  }

  void far_apart_stations_do_not_overflow() {
    ClassSpec c = quiet_class();
    c.stations[0].x_cm = 1'500'000'000;
    c.stations[1].x_cm = -1'500'000'000;
    QCOMPARE(audit(c, rotation(c, {"A B - -"})).cost[Component::walk_cm], std::int64_t{3'000'000'000});
  }

  void reload_compares_lists_as_far_as_the_shorter_goes() {
    ClassSpec c = quiet_class(3);
    c.stations[0].capacity = 2;
    const auto load = [&](int m, int hg) { c.members[static_cast<std::size_t>(m)].loads_hg["A"] = hg; };
    const auto reload = [&] {
      return audit(c, rotation(c, {"A B", "A C", "B A"})).cost[Component::reload_hg];
    };
    load(0, 160);
    load(1, 240);
    load(2, 200);
    QCOMPARE(reload(), 40);  // 240 160 | 200
    load(2, 0);
    QCOMPARE(reload(), 240);  // a load of 0 is in the list
    c.members[2].loads_hg.clear();
    QCOMPARE(reload(), 0);  // no planned load
    load(2, 200);
    c.members[1].excluded_exercises = {"do-A"};
    c.exercises["other"] = exercise("other", {Group::chest});
    c.stations[0].substitutes = {"other"};
    QCOMPARE(reload(), 40);  // m2 works a substitute: 160 | 200
  }

  void reload_is_between_slots_that_follow_each_other_only() {
    ClassSpec c = quiet_class(2);
    c.members[0].loads_hg["A"] = 160;
    c.members[1].loads_hg["A"] = 80;
    QCOMPARE(audit(c, rotation(c, {"A B C", "B C A"})).cost[Component::reload_hg], 0);
    QCOMPARE(audit(c, rotation(c, {"A B C", "B A C"}), 3).cost[Component::reload_hg], 80);
  }

  void moved_leaves_out_who_just_came_or_left() {
    ClassSpec c = quiet_class(3);
    EarlierSheet before = sheet(c, rotation(c, {"A B C", "B C A", "C A B"}));
    before.rows.pop_back();         // m3 is new
    c.members[1].present = {1, 2};  // m2 leaves after slot 2
    const Rotation r = rotation(c, {"A C B", "B - -", "- D C"});
    const Audit a = audit(c, r, 2, &before);
    QVERIFY2(a.holds(), text(a.breaches).c_str());
    QVERIFY(a.moved_known);
    QCOMPARE(a.cost[Component::moved], 2);  // m1 in slots 2 and 3
    c.members[1].present = {1, 3};
    QCOMPARE(audit(c, r, 2, &before).cost[Component::moved], 4);
  }

  void moved_counts_null_past_the_end_of_the_old_sheet_and_forgets_dropped_slots() {
    ClassSpec c = quiet_class();
    const EarlierSheet before = sheet(c, rotation(c, {"A B C"}));
    QCOMPARE(audit(c, rotation(c, {"A B C D"}), 2, &before).cost[Component::moved], 1);
    QCOMPARE(audit(c, rotation(c, {"A B C -"}), 2, &before).cost[Component::moved], 0);
    QCOMPARE(audit(c, rotation(c, {"A D"}), 2, &before).cost[Component::moved], 1);
    // m1 is written as present for two slots, and slot 3 is dropped: that is not leaving.
    c.members[0].present = {1, 2};
    QCOMPARE(audit(c, rotation(c, {"A D"}), 2, &before).cost[Component::moved], 1);
    // In three slots it is.
    QCOMPARE(audit(c, rotation(c, {"A D -"}), 2, &before).cost[Component::moved], 0);
  }

  // ---- properties

  void order_and_names_of_members_do_not_change_the_price() {
    ClassSpec c = worked_class();
    member(c, "m2", Level::novice).loads_hg["A"] = 80;
    member(c, "m3", Level::intermediate).loads_hg["A"] = 120;
    Rotation r = rotation(c, {"A C B", "C B A", "B A C"});
    const Cost before = audit(c, r).cost;
    std::swap(c.members[0], c.members[2]);
    std::swap(r.at[0], r.at[2]);
    for (MemberSpec& m : c.members) m.id = "x" + m.id;
    QCOMPARE(audit(c, r).cost, before);
  }

 private:
  static Twins twins_of(Component component) {
    ClassSpec c = quiet_class(3, "ABC");
    switch (component) {
      case Component::missed:  // 3² = 2² + 2² + 1²
        return {c, rotation(c, {"- - -", "A B C", "B C A"}), rotation(c, {"A - -", "B - -", "C B -"}), 1, {}};
      case Component::uneven:  // 1² + 1² and 2²
        c.members.pop_back();
        return {c, rotation(c, {"A B -", "B A -"}), rotation(c, {"A B C", "B - -"}), 1, {}};
      case Component::back_to_back: {
        c = quiet_class();
        c.exercises["do-B"].primary = {Group::chest};
        c.recovery_s = {0, 0, 0};
        return {c, rotation(c, {"A C B D"}), rotation(c, {"A B C D"}), 1, {}};
      }
      case Component::moved: {  // two members of a kind change rows
        const EarlierSheet before = sheet(c, rotation(c, {"A B C", "B C A", "C A B"}));
        return {c, rotation(c, {"A B C", "B C A", "C A B"}), rotation(c, {"A C B", "B A C", "C B A"}), 2,
                before};
      }
      case Component::short_rest: {  // gap 80 s; with two slots between 140 s
        c = quiet_class();
        c.exercises["do-B"].primary = {Group::chest};
        return {c, rotation(c, {"A C D B"}), rotation(c, {"A C B D"}), 1, {}};
      }
      case Component::idle:
        return {c, rotation(c, {"A B -", "B C -", "C A -"}), rotation(c, {"A B -", "B C -", "C - A"}), 1, {}};
      case Component::assist_overlap: {
        c = quiet_class();
        c.exercises["do-B"].assisting = {Group::chest};
        return {c, rotation(c, {"A C B D"}), rotation(c, {"A B C D"}), 1, {}};
      }
      case Component::walk_cm: {  // on a line at 0, 1, 3 and 6 m
        c = quiet_class();
        c.stations[1].x_cm = 100;
        c.stations[2].x_cm = 300;
        c.stations[3].x_cm = 600;
        return {c, rotation(c, {"A B C D"}), rotation(c, {"B A C D"}), 1, {}};
      }
      case Component::reload_hg: {  // at A: 16, 16, 8 kg or 16, 8, 16 kg
        c.members[0].loads_hg["A"] = 160;
        c.members[1].loads_hg["A"] = 160;
        c.members[2].loads_hg["A"] = 80;
        return {c, rotation(c, {"A B C", "C A B", "B C A"}), rotation(c, {"A B C", "B C A", "C A B"}), 1, {}};
      }
    }
    return {};
  }
};

QTEST_APPLESS_MAIN(TestAudit)
#include "tst_audit.moc"
