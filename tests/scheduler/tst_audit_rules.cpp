// SPDX-License-Identifier: GPL-3.0-or-later
// The auditor's rules, clause by clause: every rule has a clean rotation and a twin that breaks exactly that
// one.
#include <QTest>

#include "tests/scheduler/audit_twins.h"

using namespace floorwheel;
using namespace floorwheel::build;

namespace {

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
class TestAuditRules : public QObject {
  Q_OBJECT
 private Q_SLOTS:
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
};

QTEST_APPLESS_MAIN(TestAuditRules)
#include "tst_audit_rules.moc"
