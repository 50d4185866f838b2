// SPDX-License-Identifier: GPL-3.0-or-later
// The auditor's cost: the worked cases of the rotation model; for every component a rotation and a twin that
// differ in exactly that one; and the clauses of single components.
#include <QTest>
#include <functional>

#include "tests/scheduler/audit_twins.h"

using namespace floorwheel;
using namespace floorwheel::build;

class TestAuditCost : public QObject {
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

QTEST_APPLESS_MAIN(TestAuditCost)
#include "tst_audit_cost.moc"
