// SPDX-License-Identifier: GPL-3.0-or-later
// Planner and repair against brute force on tiny random classes with every feature of the model: refusals
// agree, every answer passes the auditor at the cost it states, missed, uneven and back_to_back (and, in a
// repair, moved) are the true ones, no bound exceeds the truth, and a proof is never wrong.
// FLOORWHEEL_TINY_CASES and FLOORWHEEL_TINY_SEED choose how many and which.
#include <QTest>
#include <cstdio>

#include "scheduler/rotation/audit.h"
#include "scheduler/rotation/solve.h"
#include "tests/support/brute_force.h"
#include "tests/support/tiny_cases.h"

using namespace floorwheel;

// Qt Test cuts long messages short; a failing case is printed whole.
#define TELL(condition, text)                    \
  do {                                           \
    if (!(condition)) {                          \
      std::fputs((text).c_str(), stderr);        \
      QVERIFY2(condition, "see the case above"); \
    }                                            \
  } while (false)

namespace {

constexpr double most = 20'000;  // combinations of rows a case

/// The components in their order, `moved` only in a repair.
std::vector<Component> ranked(bool in_repair) {
  std::vector<Component> out;
  for (Component c : components)
    if (in_repair || c != Component::moved) out.push_back(c);
  return out;
}

int first_difference(const Cost& a, const Cost& b, const std::vector<Component>& order) {
  for (std::size_t i = 0; i < order.size(); ++i)
    if (a[order[i]] != b[order[i]]) return static_cast<int>(i);
  return static_cast<int>(order.size());
}

/// What all answers owe: rules, stated cost, bounds that hold. "" if fine.
std::string check_answer(brute::Question q, const Plan& plan, int leading) {
  const bool in_repair = q.before != nullptr;
  const Audit a = audit(q.spec, plan.rotation, q.at_slot, q.before);
  if (!a.holds()) return "breach: " + a.breaches.front().text;
  if (a.cost != plan.cost) return "stated cost differs from the auditor's " + tiny::dump(a.cost);
  q.style = plan.rotation.style;
  const auto order = ranked(in_repair);
  if (in_repair && q.style == Style::ring) q.order = plan.rotation.ring;
  const brute::Best best = brute::best(q);
  const int same = first_difference(best.cost, plan.cost, order);
  if (same < leading)
    return "brute force finds " + tiny::dump(best.cost) + "\n" + tiny::dump(q.spec, best.rotation);
  if (same < plan.proven) return "a wrong proof: brute force finds " + tiny::dump(best.cost);
  const auto least = brute::least_after(q, plan.cost);
  for (std::size_t i = 0; i < order.size(); ++i) {
    const auto c = static_cast<std::size_t>(order[i]);
    if (plan.bound.value[c] > least[c])
      return "bound of " + std::string(id_of(order[i])) + " exceeds " + std::to_string(least[c]);
    if (static_cast<int>(i) < plan.proven && plan.bound.value[c] != plan.cost.value[c])
      return "proven, yet bound and cost differ";
  }
  return {};
}

std::string stated(const Plan& plan) {
  return "\nplan  " + tiny::dump(plan.cost) + "\nbound " + tiny::dump(plan.bound) + "\nproven " +
         std::to_string(plan.proven) + "\n";
}

}  // namespace

class TestPlannerTiny : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void plans_are_as_good_as_any() {
    int refused = 0;
    int all_proven = 0;
    const int cases = tiny::cases_wanted(150);
    for (int i = 0; i < cases; ++i) {
      const std::uint64_t seed = tiny::first_seed() + static_cast<std::uint64_t>(i);
      const tiny::Case given = tiny::make_case(seed, most);
      const std::string head = "case " + std::to_string(seed) + "\n" + tiny::dump(given.spec, given.slots);
      const auto rules = brute::refusals(given.spec, given.slots, false);
      const auto outcome = plan(given.spec, given.slots);
      if (const auto* refusal = std::get_if<Refusal>(&outcome)) {
        ++refused;
        TELL(rules.contains(refusal->rule), head + "refused: " + refusal->reason);
        continue;
      }
      TELL(rules.empty(), head + "should be refused");
      const Plan& answer = std::get<Plan>(outcome);
      const brute::Question q{.spec = given.spec, .slots = given.slots};
      std::string fault = check_answer(q, answer, 3);
      if (fault.empty() && given.spec.style == Style::free && answer.rotation.style != Style::free)
        fault = "not free";
      if (fault.empty() && given.spec.style == Style::ring && answer.rotation.style != Style::ring)
        fault = "no ring";
      if (fault.empty() && given.spec.style == Style::automatic) {
        const auto order = ranked(false);
        const Cost free = brute::best(q).cost;
        if (first_difference(free, answer.cost, order) < 3)
          fault = "a free rotation is better: " + tiny::dump(free);
        brute::Question ring{.spec = given.spec, .slots = given.slots, .style = Style::ring};
        const Cost best_ring = brute::best(ring).cost;
        if (answer.rotation.style == Style::free && first_difference(free, best_ring, order) >= 3 &&
            best_ring[Component::idle] <=
                answer.cost[Component::idle] + static_cast<int>(given.spec.members.size()) &&
            first_difference(best_ring, free, order) >= static_cast<int>(order.size()))
          fault = "a ring is as good in everything: " + tiny::dump(best_ring);
      }
      TELL(fault.empty(), head + fault + stated(answer) + tiny::dump(given.spec, answer.rotation));
      all_proven += answer.proven >= 3 ? 1 : 0;
    }
    qInfo("%d classes, %d refused, first three components proven in %d", cases, refused, all_proven);
  }

  void repairs_move_no_more_than_they_must() {
    int refused = 0;
    int all_proven = 0;
    const int cases = tiny::cases_wanted(150);
    for (int i = 0; i < cases; ++i) {
      const std::uint64_t seed = tiny::first_seed() + static_cast<std::uint64_t>(i);
      const tiny::Change given = tiny::make_change(seed, most);
      const std::string head = "change " + std::to_string(seed) + ": " + given.what + "\n" +
                               tiny::dump(given.spec, given.slots) + tiny::dump(given.before) + "at_slot " +
                               std::to_string(given.at_slot) + "\n";
      const auto rules = brute::refusals(given.spec, given.slots, true);
      const auto outcome = repair(given.spec, given.slots, given.before, given.at_slot);
      if (const auto* refusal = std::get_if<Refusal>(&outcome)) {
        ++refused;
        TELL(rules.contains(refusal->rule), head + "refused: " + refusal->reason);
        continue;
      }
      TELL(rules.empty(), head + "should be refused");
      const Plan& answer = std::get<Plan>(outcome);
      const brute::Question q{
          .spec = given.spec, .slots = given.slots, .at_slot = given.at_slot, .before = &given.before};
      std::string fault = check_answer(q, answer, 4);
      if (fault.empty() && given.before.style == Style::ring) {
        const auto order = ranked(true);
        brute::Question ring = q;
        ring.style = Style::ring;
        for (const std::string& id : given.before.ring)
          for (std::size_t s = 0; s < given.spec.stations.size(); ++s)
            if (given.spec.stations[s].id == id) ring.order.push_back(static_cast<StationIndex>(s));
        const Cost kept = brute::best(ring).cost;
        const Cost free = brute::best(q).cost;
        const bool can = first_difference(kept, free, order) >= 3;
        if (can != (answer.rotation.style == Style::ring))
          fault = "the ring is kept or not, against the model";
      }
      TELL(fault.empty(), head + fault + stated(answer) + tiny::dump(given.spec, answer.rotation));
      all_proven += answer.proven >= 4 ? 1 : 0;
    }
    qInfo("%d changes, %d refused, first four components proven in %d", cases, refused, all_proven);
  }
};

QTEST_APPLESS_MAIN(TestPlannerTiny)
#include "tst_planner_tiny.moc"
