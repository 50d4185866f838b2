// SPDX-License-Identifier: GPL-3.0-or-later
// Auditor and brute force against each other: two readings of the rotation model without a line in common.
// They must agree on every rotation, good or bad; and a search that forgets one clause must be found out by
// the auditor, by the rule that clause belongs to.
#include <QTest>
#include <map>
#include <set>

#include "scheduler/rotation/audit.h"
#include "tests/support/brute_force.h"
#include "tests/support/builders.h"
#include "tests/support/tiny_cases.h"

using namespace floorwheel;

namespace {

constexpr double most = 8000;  // combinations a case: these tests need many cases, not large ones

/// Changes one entry of the rotation at random, or has two members change rows.
void disturb(tiny::Draw& d, const ClassSpec& c, Rotation& r) {
  const auto m = static_cast<std::size_t>(d.below(static_cast<int>(r.at.size())));
  const auto t = static_cast<std::size_t>(d.below(r.slots));
  if (d.one_in(5))
    std::swap(r.at[m], r.at[static_cast<std::size_t>(d.below(static_cast<int>(r.at.size())))]);
  else
    r.at[m][t] = d.one_in(4) ? nowhere : d.below(static_cast<int>(c.stations.size()));
}

std::set<int> rules_of(const std::vector<Breach>& breaches) {
  std::set<int> out;
  for (const Breach& b : breaches) out.insert(b.rule);
  return out;
}

/// What came up in the cases, so that a test can say that it has seen everything.
struct Seen {
  int clean = 0;
  std::map<int, int> alone;          // rule -> rotations that break this rule only
  std::map<Component, int> costing;  // component -> rotations in which it is not 0
};

/// Walks at random through rotations from a good one on; both opinions on each.
void compare(tiny::Draw& d, brute::Question q, Rotation r, Seen& seen, std::string& failure) {
  for (int step = 0; step < 40; ++step) {
    q.order = r.ring;
    const bool holds = brute::keeps_rules(q, r);
    const Audit a = audit(q.spec, r, q.at_slot, q.before);
    if (a.holds() != holds || a.cost != brute::price(q, r)) {
      failure = tiny::dump(q.spec, q.slots) + (q.before != nullptr ? tiny::dump(*q.before) : "") +
                "at_slot " + std::to_string(q.at_slot) + "\n" + tiny::dump(q.spec, r) + "auditor " +
                tiny::dump(a.cost) + "\nbrute   " + tiny::dump(brute::price(q, r)) +
                (holds ? "\nbrute: holds" : "\nbrute: broken");
      for (const Breach& b : a.breaches) failure += "\nauditor: " + b.text;
      return;
    }
    const std::set<int> broken = rules_of(a.breaches);
    if (broken.empty()) ++seen.clean;
    if (broken.size() == 1) ++seen.alone[*broken.begin()];
    for (Component c : components)
      if (a.cost[c] != 0) ++seen.costing[c];
    const Rotation last = r;
    disturb(d, q.spec, r);
    if (!holds && d.one_in(2)) r = last;
    if (step % 8 == 7) r = brute::best(q).rotation;
  }
}

}  // namespace

class TestBruteForce : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  // From the table of worked cases: A, C, B and its mirror image are the best of all.
  void finds_the_best_of_the_worked_class() {
    ClassSpec c;
    build::station(c, "A", {Group::chest}, 0, 0);
    build::station(c, "B", {Group::chest}, 300, 400);
    build::station(c, "C", {Group::quadriceps}, 0, 400);
    build::member(c, "m1");
    const brute::Best b = brute::best({c, 3});
    QCOMPARE(b.cost, build::cost({{Component::short_rest, 1}, {Component::walk_cm, 700}}));
    // 1 + 3·3 + 3·6 + 6 rows with no station twice
    QCOMPARE(brute::combinations({c, 3}), 34.0);
    // The ring A C B allows that row; every ring of three does, one way round or the other.
    QCOMPARE(brute::best({.spec = c, .slots = 3, .style = Style::ring}).cost, b.cost);
    // Of the rotations that cost nothing up to back_to_back, none has no short rest.
    Cost shown = b.cost;
    shown[Component::short_rest] = 2;
    const auto least = brute::least_after({c, 3}, shown);
    QCOMPARE(least[static_cast<std::size_t>(Component::short_rest)], std::int64_t{1});
    QCOMPARE(least[static_cast<std::size_t>(Component::walk_cm)], brute::none);
  }

  void pruned_search_and_full_search_find_the_same() {
    for (std::uint64_t seed = 1; seed <= static_cast<std::uint64_t>(tiny::cases_wanted(10)); ++seed) {
      const tiny::Case t = tiny::make_case(seed, most);
      for (Style style : {Style::free, Style::ring}) {
        const brute::Question q{.spec = t.spec, .slots = t.slots, .style = style};
        const brute::Best b = brute::best(q);
        QCOMPARE(brute::least_after(q, b.cost), b.cost.value);
      }
    }
  }

  void auditor_and_brute_force_agree_on_every_rotation() {
    Seen seen;
    const int cases = tiny::cases_wanted(100);
    const std::uint64_t first = tiny::first_seed();
    for (std::uint64_t seed = first; seed < first + static_cast<std::uint64_t>(cases); ++seed) {
      tiny::Draw d(seed);
      std::string failure;
      const tiny::Case t = tiny::make_case(seed, most);
      const Style style = d.one_in(2) ? Style::ring : Style::free;
      const brute::Question q{.spec = t.spec, .slots = t.slots, .style = style};
      compare(d, q, brute::best(q).rotation, seen, failure);
      if (failure.empty()) {
        const tiny::Change change = tiny::make_change(seed, most);
        brute::Question repair{
            .spec = change.spec, .slots = change.slots, .at_slot = change.at_slot, .before = &change.before};
        if (change.before.style == Style::ring && d.one_in(2)) {
          repair.style = Style::ring;
          for (const std::string& id : change.before.ring)
            repair.order.push_back(build::station_index(change.spec, id));
        }
        compare(d, repair, brute::best(repair).rotation, seen, failure);
      }
      QVERIFY2(failure.empty(), ("seed " + std::to_string(seed) + "\n" + failure).c_str());
    }
    qInfo("%d classes and %d repairs from seed %llu on, 40 rotations each", cases, cases,
          static_cast<unsigned long long>(first));
    if (cases < 100) return;  // a single seed need not show everything
    QVERIFY(seen.clean > 200);
    for (int rule = 0; rule <= 6; ++rule)
      QVERIFY2(seen.alone[rule] >= 5,
               ("rule " + std::to_string(rule) + ": " + std::to_string(seen.alone[rule])).c_str());
    for (Component c : components) QVERIFY2(seen.costing[c] >= 20, std::string(id_of(c)).c_str());
  }

  // The gate itself: the best rotation of a search that forgets a clause gains by it somewhere, and then the
  // auditor names the rule of that clause and no other.
  void a_search_that_forgets_a_clause_is_found_out_data() {
    QTest::addColumn<int>("leave");
    QTest::addColumn<int>("rule");
    const auto row = [](const char* name, brute::Leave leave, int rule) {
      QTest::newRow(name) << static_cast<int>(leave) << rule;
    };
    row("nothing", brute::Leave::nothing, -1);
    row("presence", brute::Leave::presence, 1);
    row("capacity", brute::Leave::capacity, 2);
    row("closed", brute::Leave::closed, 2);
    row("equipment", brute::Leave::equipment, 2);
    row("together", brute::Leave::together, 5);
    row("waiting", brute::Leave::waiting, 5);
    row("apart", brute::Leave::apart, 5);
    row("laps", brute::Leave::laps, 4);
    row("ring", brute::Leave::ring, 6);
  }
  void a_search_that_forgets_a_clause_is_found_out() {
    QFETCH(int, leave);
    QFETCH(int, rule);
    int found_out = 0;
    for (std::uint64_t seed = 1; seed <= 150; ++seed) {
      const tiny::Case t = tiny::make_case(seed, most);
      const auto forgotten = static_cast<brute::Leave>(leave);
      // Only a fixed order makes a ring a burden: file order here.
      const bool ring = forgotten == brute::Leave::ring;
      std::vector<StationIndex> order;
      for (std::size_t s = 0; ring && s < t.spec.stations.size(); ++s)
        order.push_back(static_cast<StationIndex>(s));
      const brute::Question right{
          .spec = t.spec, .slots = t.slots, .style = ring ? Style::ring : Style::free, .order = order};
      brute::Question wrong = right;
      wrong.leave = forgotten;
      const brute::Best b = brute::best(wrong);
      const Audit a = audit(t.spec, b.rotation);
      QCOMPARE(a.cost, b.cost);
      for (int broken : rules_of(a.breaches)) QCOMPARE(broken, rule);
      if (!a.holds()) ++found_out;
      // A gain is a breach: nothing better than the true best keeps the rules.
      if (b.cost < brute::best(right).cost) QVERIFY(!a.holds());
    }
    if (forgets_nothing(leave))
      QCOMPARE(found_out, 0);
    else
      QVERIFY2(found_out >= 3, std::to_string(found_out).c_str());
  }

  // Rules 3 and 4: no search gains by forgetting them, since such a visit counts for nothing; but a member
  // who is sent to such a station is reported.
  void a_visit_that_counts_for_nothing_is_found_out() {
    std::map<int, int> found_out;
    for (std::uint64_t seed = 1; seed <= 150; ++seed) {
      const tiny::Case t = tiny::make_case(seed, most);
      tiny::Draw d(seed);
      for (const auto& [leave, rule] : {std::pair{brute::Leave::exercises, 3}, {brute::Leave::required, 4}}) {
        Rotation r = brute::best({t.spec, t.slots}).rotation;
        for (int tries = 0; tries < 20; ++tries) {
          const Rotation last = r;
          disturb(d, t.spec, r);
          const bool right = brute::keeps_rules({t.spec, t.slots}, r);
          const bool wrong = brute::keeps_rules({.spec = t.spec, .slots = t.slots, .leave = leave}, r);
          if (right == wrong) {
            r = last;
            continue;
          }
          QCOMPARE(rules_of(audit(t.spec, r).breaches), std::set<int>{rule});
          ++found_out[rule];
          r = last;
        }
      }
    }
    QVERIFY(found_out[3] >= 3);
    QVERIFY(found_out[4] >= 3);
  }

  void refusals_are_those_of_the_model() {
    ClassSpec c;
    build::station(c, "A", {Group::chest});
    build::station(c, "B", {Group::biceps});
    for (const char* id : {"m1", "m2", "m3"}) build::member(c, id);
    const auto rules = [&](int slots = 3) { return brute::refusals(c, slots, false); };
    QCOMPARE(rules(), std::set<int>{});
    c.members[0].excluded_exercises = {"do-A"};
    QCOMPARE(rules(), std::set<int>{});
    c.members[0].required = {{"A", "B"}};
    QCOMPARE(rules(), std::set<int>{3});
    QCOMPARE(brute::refusals(c, 3, true), std::set<int>{});
    c.members[0].required.reset();
    c.members[0].excluded_exercises = {"do-A", "do-B"};
    QCOMPARE(rules(), std::set<int>{3});
    c.members[0].excluded_exercises.clear();

    c.pairs = {{"m1", "m2", PairRule::together}, {"m2", "m3", PairRule::together}};
    c.stations[0].capacity = 2;
    QCOMPARE(rules(), std::set<int>{5});  // three of them
    c.members[2].present = {4, SlotRange::to_the_end};
    QCOMPARE(rules(), std::set<int>{});
    QCOMPARE(rules(4), std::set<int>{5});
    c.stations[0].capacity = 3;
    QCOMPARE(rules(4), std::set<int>{});
    c.equipment = {{"mat", 2}};
    c.stations[0].equipment = {"mat"};
    QCOMPARE(rules(4), std::set<int>{5});
    c.equipment[0].units = 3;
    c.pairs.push_back({"m3", "m1", PairRule::apart});
    QCOMPARE(rules(4), std::set<int>{5});
  }

 private:
  static bool forgets_nothing(int leave) { return static_cast<brute::Leave>(leave) == brute::Leave::nothing; }
};

QTEST_APPLESS_MAIN(TestBruteForce)
#include "tst_brute_force.moc"
