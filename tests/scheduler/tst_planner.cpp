// SPDX-License-Identifier: GPL-3.0-or-later
// What every answer of the planner owes, on classes of a real size; refusals; determinism; crowds and large
// floors. The true optimum is the matter of tst_planner_tiny. A failing case names its seed.
#include <QTest>

#include "scheduler/rotation/audit.h"
#include "scheduler/rotation/solve.h"
#include "tests/support/floors.h"

using namespace floorwheel;

namespace {

/// Rules, stated cost, bounds and proofs that fit together. "" if fine.
std::string fault_of(const ClassSpec& c, const Plan& plan, const EarlierSheet* before = nullptr) {
  const Audit a = audit(c, plan.rotation, std::max(1, plan.at_slot), before);
  if (!a.holds()) return a.breaches.front().text;
  if (a.cost != plan.cost) return "The cost stated is not the auditor's.";
  int proven = 0;
  bool leads = true;
  for (Component k : components) {
    if (k == Component::moved && before == nullptr) continue;
    leads = leads && plan.bound[k] == plan.cost[k];
    proven += leads ? 1 : 0;
  }
  if (proven != plan.proven) return "What is said to be proven does not fit the bounds.";
  if (plan.bound[Component::missed] > plan.cost[Component::missed]) return "A bound above the cost.";
  if (plan.reasons.empty()) return "No reason for the style.";
  return {};
}

Refusal refusal_of(const OrRefusal<Plan>& outcome) {
  const auto* refusal = std::get_if<Refusal>(&outcome);
  return refusal ? *refusal : Refusal{};
}

using Ids = std::vector<std::string>;

ClassSpec two_stations() {
  ClassSpec c;
  build::station(c, "A", {Group::chest});
  build::station(c, "B", {Group::quadriceps});
  build::member(c, "m1");
  build::member(c, "m2");
  build::member(c, "m3");
  return c;
}

}  // namespace

class TestPlanner : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  // The first row of the table of worked cases is the best there is.
  void worked_class_gets_its_best_row() {
    ClassSpec c;
    build::station(c, "A", {Group::chest}, 0, 0);
    build::station(c, "B", {Group::chest}, 300, 400);
    build::station(c, "C", {Group::quadriceps}, 0, 400);
    build::member(c, "m1");
    const Plan best = std::get<Plan>(plan(c, 3));
    QCOMPARE(best.cost, build::cost({{Component::short_rest, 1}, {Component::walk_cm, 700}}));
    QCOMPARE(best.proven, 8);
  }

  void member_without_any_station_is_refused() {
    ClassSpec c = two_stations();
    c.members[1].excluded_groups = {Group::chest, Group::quadriceps};
    const Refusal r = refusal_of(plan(c, 2));
    QCOMPARE(r.rule, 3);
    QCOMPARE(r.members, Ids{"m2"});
  }

  void required_station_without_exercise_is_refused() {
    ClassSpec c = two_stations();
    c.members[0].required = {"A", "B"};
    c.members[0].excluded_groups = {Group::chest};
    const Refusal r = refusal_of(plan(c, 2));
    QCOMPARE(r.rule, 3);
    QCOMPARE(r.members, Ids{"m1"});
    QCOMPARE(r.stations, Ids{"A"});
    c.members[0].required.reset();  // on a default list it drops out
    QVERIFY(std::holds_alternative<Plan>(plan(c, 2)));
  }

  void repair_drops_a_required_station_and_says_so() {
    ClassSpec c = two_stations();
    c.members[0].required = {"A", "B"};
    const Plan before = std::get<Plan>(plan(c, 4));
    c.members[0].excluded_groups = {Group::chest};
    const EarlierSheet sheet = build::sheet(c, before.rotation);
    const Plan after = std::get<Plan>(repair(c, 4, sheet, 2));
    QCOMPARE(fault_of(c, after, &sheet), std::string());
    QVERIFY(after.reasons.back().find("A drops out for m1") == 0);
  }

  void chain_held_together_without_room_is_refused() {
    ClassSpec c = two_stations();
    c.pairs = {{"m1", "m2"}, {"m2", "m3"}};
    for (StationSpec& s : c.stations) s.capacity = 2;
    const Refusal r = refusal_of(plan(c, 2));
    QCOMPARE(r.rule, 5);
    QCOMPARE(r.members, (Ids{"m1", "m2", "m3"}));
    c.stations[1].capacity = 3;
    QVERIFY(std::holds_alternative<Plan>(plan(c, 2)));
    c.equipment = {{"mat", 2}};
    c.stations[1].equipment = {"mat"};
    QCOMPARE(refusal_of(plan(c, 2)).rule, 5);
    c.members[2].present = {2, 2};  // only two share a slot until the third comes
    QCOMPARE(refusal_of(plan(c, 2)).slots, std::vector<int>{2});
    QVERIFY(std::holds_alternative<Plan>(plan(c, 1)));
  }

  void together_and_apart_at_once_is_refused() {
    ClassSpec c = two_stations();
    for (StationSpec& s : c.stations) s.capacity = 3;
    c.pairs = {{"m1", "m2"}, {"m2", "m3"}, {"m1", "m3", PairRule::apart}};
    const Refusal r = refusal_of(plan(c, 2));
    QCOMPARE(r.rule, 5);
    QCOMPARE(r.members, (Ids{"m1", "m3"}));
  }

  void every_answer_holds_at_the_cost_it_states() {
    const std::uint64_t first = tiny::first_seed();
    const std::uint64_t last = first + static_cast<std::uint64_t>(tiny::cases_wanted(4)) - 1;
    qInfo("seeds %llu to %llu", static_cast<unsigned long long>(first),
          static_cast<unsigned long long>(last));
    for (std::uint64_t seed = first; seed <= last; ++seed) {
      tiny::Draw d(seed);
      const int slots = d.from(4, 14);
      ClassSpec c = floors::hall(seed, d.from(3, 20), d.from(2, 12), slots);
      c.style = static_cast<Style>(d.below(3));
      const auto outcome = plan(c, slots, {.effort = 2000});
      const std::string head = "seed " + std::to_string(seed) + ": ";
      if (std::holds_alternative<Refusal>(outcome)) continue;
      const Plan& answer = std::get<Plan>(outcome);
      std::string fault = fault_of(c, answer);
      QVERIFY2(fault.empty(), (head + fault).c_str());
      if (c.style != Style::automatic) QCOMPARE(answer.rotation.style, c.style);

      const EarlierSheet sheet = build::sheet(c, answer.rotation);
      const int k = d.from(1, slots);
      c.members[static_cast<std::size_t>(d.below(static_cast<int>(c.members.size())))].present.last = k;
      c.stations[static_cast<std::size_t>(d.below(static_cast<int>(c.stations.size())))].closed.push_back(
          {k, slots});
      const auto repaired = repair(c, slots + d.below(2), sheet, k, {.effort = 2000});
      if (std::holds_alternative<Refusal>(repaired)) continue;
      fault = fault_of(c, std::get<Plan>(repaired), &sheet);
      QVERIFY2(fault.empty(), (head + "repair: " + fault).c_str());
    }
  }

  void same_seed_same_rotation() {
    const ClassSpec c = floors::hall(5, 14, 9, 10);
    const Plan one = std::get<Plan>(plan(c, 10, {.seed = 7, .effort = 3000}));
    const Plan two = std::get<Plan>(plan(c, 10, {.seed = 7, .effort = 3000}));
    QCOMPARE(one.rotation, two.rotation);
    QCOMPARE(one.cost, two.cost);
    QCOMPARE(one.reasons, two.reasons);
    const Plan other = std::get<Plan>(plan(c, 10, {.seed = 8, .effort = 3000}));
    QCOMPARE(fault_of(c, other), std::string());
  }

  void renaming_members_changes_no_cost() {
    ClassSpec c = floors::hall(9, 12, 8, 9);
    const Plan named = std::get<Plan>(plan(c, 9, {.effort = 3000}));
    const auto renamed = [](const std::string& id) { return "z" + std::string(id.rbegin(), id.rend()); };
    for (MemberSpec& m : c.members) m.id = renamed(m.id);
    for (PairSpec& p : c.pairs) p = {renamed(p.a), renamed(p.b), p.rule};
    const Plan other = std::get<Plan>(plan(c, 9, {.effort = 3000}));
    QCOMPARE(other.cost, named.cost);
    QCOMPARE(other.rotation, named.rotation);
  }

  void stopping_early_gives_a_valid_rotation() {
    const ClassSpec c = floors::hall(3, 16, 10, 10);
    int told = 0;
    PlanOptions options;
    options.stop = [&] { return told > 0; };
    options.progress = [&](const Progress& p) {
      ++told;
      QVERIFY(p.steps <= p.steps_max);
    };
    const Plan early = std::get<Plan>(plan(c, 10, options));
    QCOMPARE(told, 1);
    QCOMPARE(fault_of(c, early), std::string());
  }

  void plain_classes_are_proven_free_of_clashes() {
    for (std::uint64_t seed = 1; seed <= 6; ++seed) {
      ClassSpec c = floors::plain(20, 11, 2, seed);
      c.pairs.push_back({"m3", "m4"});
      c.members[7].excluded_groups.insert(Group::chest);
      const Plan answer = std::get<Plan>(plan(c, 11));
      QVERIFY(answer.proven >= 3);
      for (Component k : {Component::missed, Component::uneven, Component::back_to_back})
        QCOMPARE(answer.cost[k], 0);
      QCOMPARE(fault_of(c, answer), std::string());
    }
  }

  void large_floors_and_crowds_are_answered() {
    for (int stations : {63, 64, 65, 100}) {
      const ClassSpec c = floors::plain(12, stations, 1, 1, 20);
      QCOMPARE(fault_of(c, std::get<Plan>(plan(c, 12, {.effort = 200, .proof_effort = 10'000'000}))),
               std::string());
      const Plan free = std::get<Plan>(plan(
          [&] {
            ClassSpec f = c;
            f.style = Style::free;
            return f;
          }(),
          12, {.effort = 200, .proof_effort = 10'000'000}));
      QCOMPARE(free.cost[Component::back_to_back], 0);
    }
    const int people = tiny::cases_wanted(100);  // ten thousand in the long run
    const ClassSpec crowd = floors::plain(people, 3, 2, 1);
    const Plan answer = std::get<Plan>(plan(crowd, 8, {.effort = 200}));
    QCOMPARE(fault_of(crowd, answer), std::string());
    QCOMPARE(answer.cost[Component::missed], 3 * people - 8 * 6);
  }

  void smallest_classes_are_answered() {
    for (int slots : {0, 1, 2, 5}) {
      for (Style style : {Style::automatic, Style::ring, Style::free}) {
        ClassSpec c;
        build::station(c, "A", {Group::chest});
        build::member(c, "m1");
        c.laps = 2;
        c.style = style;
        const Plan answer = std::get<Plan>(plan(c, slots));
        QCOMPARE(fault_of(c, answer), std::string());
        QCOMPARE(answer.cost[Component::missed], std::max(0, 2 - slots));
        QCOMPARE(answer.cost[Component::back_to_back], slots == 2 ? 1 : 0);
        QCOMPARE(answer.proven, 8);
      }
    }
    ClassSpec closed = two_stations();
    closed.equipment = {{"bar", 0}};
    for (StationSpec& s : closed.stations) s.equipment = {"bar"};
    const Plan none = std::get<Plan>(plan(closed, 3));
    QCOMPARE(none.cost, build::cost({{Component::missed, 6}, {Component::uneven, 12}}));
    QCOMPARE(none.proven, 8);
  }

  void late_arrival_keeps_announced_stations() {
    ClassSpec c = floors::plain(20, 12, 2, 4);
    const EarlierSheet sheet = build::sheet(c, std::get<Plan>(plan(c, 12)).rotation);
    build::member(c, "late").present.first = 5;
    const Plan after = std::get<Plan>(repair(c, 12, sheet, 5));
    QCOMPARE(fault_of(c, after, &sheet), std::string());
    QCOMPARE(after.cost[Component::moved], 0);
    QCOMPARE(after.rotation.style, Style::ring);
    QVERIFY(after.proven >= 4);
  }

  void closed_station_moves_only_those_who_were_due_there() {
    ClassSpec c = floors::plain(20, 12, 2, 4);
    const EarlierSheet sheet = build::sheet(c, std::get<Plan>(plan(c, 12)).rotation);
    c.stations[3].closed.push_back({6, SlotRange::to_the_end});
    int due = 0;
    for (const RunSheetRow& row : sheet.rows)
      for (std::size_t t = 5; t < 12; ++t) due += row.stations[t] == c.stations[3].id ? 1 : 0;
    const Plan after = std::get<Plan>(repair(c, 12, sheet, 6));
    QCOMPARE(fault_of(c, after, &sheet), std::string());
    QCOMPARE(after.cost[Component::moved], due);
    QCOMPARE(after.bound[Component::moved], due);
  }
};

QTEST_APPLESS_MAIN(TestPlanner)
#include "tst_planner.moc"
