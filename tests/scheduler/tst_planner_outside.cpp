// SPDX-License-Identifier: GPL-3.0-or-later
// The planner where brute force cannot follow: theorems and an example from outside, each with its source,
// and properties that every answer has at any size.
#include <QTest>
#include <algorithm>

#include "scheduler/rotation/audit.h"
#include "scheduler/rotation/solve.h"
#include "tests/support/brute_force.h"
#include "tests/support/builders.h"
#include "tests/support/tiny_cases.h"

using namespace floorwheel;

namespace {

/// n stations of n groups on one spot and some members.
ClassSpec plain_class(int stations, int members, int capacity = 1) {
  ClassSpec c;
  for (int s = 0; s < stations; ++s)
    build::station(c, "s" + std::to_string(s), {static_cast<Group>(s % group_count)}).capacity = capacity;
  for (int m = 0; m < members; ++m) build::member(c, "m" + std::to_string(m));
  return c;
}

/// The rows of a cyclic Latin square with rows, columns and letters in random order.
std::vector<std::vector<StationIndex>> latin_square(tiny::Draw& d, int n) {
  std::array<std::vector<int>, 3> order;
  for (auto& o : order) {
    for (int i = 0; i < n; ++i) o.insert(o.begin() + d.below(i + 1), i);
  }
  std::vector<std::vector<StationIndex>> rows(static_cast<std::size_t>(n));
  for (std::size_t r = 0; r < rows.size(); ++r)
    for (int t = 0; t < n; ++t) {
      const int sum = (order[0][r] + order[1][static_cast<std::size_t>(t)]) % n;
      rows[r].push_back(order[2][static_cast<std::size_t>(sum)]);
    }
  return rows;
}

std::string describe(const ClassSpec& c, const Plan& p) {
  return tiny::dump(c, p.rotation.slots) + tiny::dump(c, p.rotation) + "cost  " + tiny::dump(p.cost) +
         "\nbound " + tiny::dump(p.bound) + "\n";
}

/// What is wrong with an answer by itself, or "".
std::string faults(const ClassSpec& c, const Plan& p) {
  const Audit a = audit(c, p.rotation);
  if (!a.holds()) return a.breaches.front().text;
  if (a.cost != p.cost) return "states another cost than the auditor: " + tiny::dump(a.cost);
  int leading = 0;
  bool all = true;
  for (Component k : components) {
    if (p.bound[k] > p.cost[k]) return "a bound above its cost: " + std::string(id_of(k));
    if (k == Component::moved) continue;
    if (leading++ < p.proven) all = all && p.bound[k] == p.cost[k];
  }
  return all ? "" : "calls proven what is above its bound";
}

/// Whether the bounds of `p` hold for another rotation of the same style.
bool bounds_hold_for(const Plan& p, const Plan& other) {
  if (p.rotation.style != other.rotation.style) return true;
  for (Component k : components) {
    if (p.bound[k] > other.cost[k]) return false;
    if (p.cost[k] != other.cost[k]) return true;
  }
  return true;
}

}  // namespace

class TestPlannerOutside : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  // Any Latin rectangle can be completed to a Latin square: M. Hall, An existence theorem for Latin squares,
  // Bulletin of the American Mathematical Society 51 (1945) 387-388. So wherever a class of as many members,
  // stations and slots stands, nobody need miss a station, whatever was done so far.
  void a_latin_rectangle_is_completed() {
    for (int n = 3; n <= 7; ++n)
      for (int k = 1; k <= n; ++k) {
        tiny::Draw d(static_cast<std::uint64_t>(100 * n + k));
        ClassSpec c = plain_class(n, n);
        c.style = Style::free;
        Rotation done;
        done.slots = n;
        done.at = latin_square(d, n);
        for (auto& row : done.at) std::fill(row.begin() + (k - 1), row.end(), nowhere);
        const EarlierSheet before = build::sheet(c, done);
        const OrRefusal<Plan> answer = repair(c, n, before, k);
        QVERIFY(std::holds_alternative<Plan>(answer));
        const Plan& p = std::get<Plan>(answer);
        const Audit a = audit(c, p.rotation, k, &before);
        QVERIFY2(a.holds(), describe(c, p).c_str());
        QVERIFY2(a.cost[Component::missed] == 0, describe(c, p).c_str());
      }
  }

  // D. König, Über Graphen und ihre Anwendung auf Determinantentheorie und Mengenlehre, Mathematische Annalen
  // 77 (1916) 453-465: the edges of a bipartite multigraph can be coloured with as many colours as its
  // largest degree. Members, stations and visits are such a graph and slots the colours, a station of c
  // places standing for c.
  void the_smallest_number_of_slots_is_koenigs() {
    for (std::uint64_t seed = 1; seed <= static_cast<std::uint64_t>(tiny::cases_wanted(8)); ++seed) {
      tiny::Draw d(seed);
      ClassSpec c = plain_class(d.from(2, 6), d.from(2, 9));
      c.style = Style::free;
      for (StationSpec& s : c.stations) s.capacity = d.from(1, 3);
      std::map<std::string, int> visits;
      int slots = 0;
      for (MemberSpec& m : c.members) {
        std::vector<std::string> list;
        for (const StationSpec& s : c.stations)
          if (list.empty() || !d.one_in(3)) list.push_back(s.id);
        for (const std::string& id : list) ++visits[id];
        slots = std::max(slots, static_cast<int>(list.size()));
        m.required = list;
      }
      for (const StationSpec& s : c.stations)
        slots = std::max(slots, (visits[s.id] + s.capacity - 1) / s.capacity);
      const OrRefusal<SlotTable> answer = plan_slots(c);
      QVERIFY(std::holds_alternative<SlotTable>(answer));
      const SlotRow& first = std::get<SlotTable>(answer).rows.front();
      const std::string text = "seed " + std::to_string(seed) + "\n" + tiny::dump(c, slots);
      QVERIFY2(first.slots == slots, text.c_str());
      QVERIFY2(first.cost[Component::missed] == 0 && first.proven >= 2, text.c_str());
    }
  }

  // circuit_timing.csv: 40 people on 10 stations make 10 groups of 4 (FM 21-20, ch. 7); everybody rotates on
  // command.
  void forty_people_on_ten_stations_move_one_on() {
    const ClassSpec c = plain_class(10, 40, 4);
    const OrRefusal<Plan> answer = plan(c, 10);
    QVERIFY(std::holds_alternative<Plan>(answer));
    const Plan& p = std::get<Plan>(answer);
    QCOMPARE(faults(c, p), std::string());
    QCOMPARE(p.rotation.style, Style::ring);
    QCOMPARE(p.cost, Cost{});
    // A slot less, and each of the forty misses one: 10 · 4 places in 9 slots.
    const OrRefusal<Plan> fewer = plan(c, 9);
    QCOMPARE(std::get<Plan>(fewer).cost[Component::missed], 40);
    QCOMPARE(std::get<Plan>(fewer).bound[Component::missed], 40);
  }

  // Classes of a real floor's size with every feature: rules, cost and bounds of each answer, the bounds also
  // against what other seeds and styles find; refusals are the model's.
  void answers_of_any_size_keep_their_word() {
    const int cases = tiny::cases_wanted(3);
    int planned = 0;
    for (std::uint64_t seed = tiny::first_seed(); planned < cases; ++seed) {
      tiny::Draw d(seed);
      const int stations = d.from(5, 10);
      const int members = d.from(5, 14);
      const int slots = d.from(stations, stations + 3);
      ClassSpec c = tiny::make_class(seed, stations, members, slots);
      // Pairs are too many for so many members: keep a few.
      std::erase_if(c.pairs, [&](const PairSpec&) { return !d.one_in(8); });
      const std::set<int> refusals = brute::refusals(c, slots, false);
      PlanOptions options;
      options.effort = 4000;
      std::vector<Plan> plans;
      for (Style style : {Style::ring, Style::free, Style::automatic}) {
        c.style = style;
        options.seed = seed + static_cast<std::uint64_t>(style);
        const OrRefusal<Plan> answer = plan(c, slots, options);
        if (const Refusal* r = std::get_if<Refusal>(&answer)) {
          QVERIFY2(refusals.contains(r->rule), (r->reason + "\n" + tiny::dump(c, slots)).c_str());
          continue;
        }
        QVERIFY2(refusals.empty(), tiny::dump(c, slots).c_str());
        plans.push_back(std::get<Plan>(answer));
        const std::string fault = faults(c, plans.back());
        QVERIFY2(fault.empty(), (fault + "\n" + describe(c, plans.back())).c_str());
        if (style != Style::automatic) QCOMPARE(plans.back().rotation.style, style);
      }
      if (plans.empty()) continue;
      ++planned;
      for (const Plan& p : plans)
        for (const Plan& other : plans)
          QVERIFY2(bounds_hold_for(p, other), (describe(c, p) + describe(c, other)).c_str());
      // A ring is a free rotation too.
      QVERIFY2(plans[1].bound[Component::missed] <= plans[0].cost[Component::missed],
               describe(c, plans[1]).c_str());
    }
    qInfo("%d classes of 5 to 14 members, three styles each", planned);
  }
};

QTEST_APPLESS_MAIN(TestPlannerOutside)
#include "tst_planner_outside.moc"
