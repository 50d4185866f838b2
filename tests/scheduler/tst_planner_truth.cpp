// SPDX-License-Identifier: GPL-3.0-or-later
// The planner against brute force on tiny classes with every feature: the true missed, uneven and
// back_to_back of a plan, the true moved of a repair, no bound above the truth, nothing called proven that is
// not, every cost the auditor's, refusals exactly those of the model. FLOORWHEEL_TINY_CASES sets the number
// of cases of each test, FLOORWHEEL_TINY_SEED the first, FLOORWHEEL_TINY_MOST their size;
// FLOORWHEEL_TINY_REPORT a file to which all failures go instead of the first.
#include <QTest>
#include <cstdlib>
#include <fstream>
#include <optional>

#include "scheduler/rotation/audit.h"
#include "scheduler/rotation/solve.h"
#include "tests/support/brute_force.h"
#include "tests/support/builders.h"
#include "tests/support/tiny_cases.h"

using namespace floorwheel;

namespace {

/// Combinations of rows to look at, at most: FLOORWHEEL_TINY_MOST, or so many.
const double most = tiny::most_wanted(30000);

/// The first components of a cost; a repair has `moved` as its fourth.
bool same_first(const Cost& a, const Cost& b, int count) {
  return std::equal(a.value.begin(), a.value.begin() + count, b.value.begin());
}

/// Components that an answer lists, in order.
std::vector<Component> listed(bool in_repair) {
  std::vector<Component> out(components.begin(), components.end());
  if (!in_repair) std::erase(out, Component::moved);
  return out;
}

/// What is wrong with an answer, in sentences; and how good the answers were.
struct Verdict {
  std::string wrong;
  int planned = 0;
  int refused = 0;
  int rings = 0;
  int best_of_all = 0;
  int proven_to_the_end = 0;

  void say(const std::string& text) { wrong += text + "\n"; }
};

/// For each component its least value where the earlier ones equal `shown`; `none` where that cannot be told
/// since the case is too large to look at every rotation.
std::array<std::int64_t, component_count> least_values(const brute::Question& q, const Cost& shown,
                                                       const Cost& true_best) {
  if (shown == true_best) return true_best.value;
  if (brute::combinations(q) <= 1e6) return brute::least_after(q, shown);
  std::array<std::int64_t, component_count> least;
  least.fill(brute::none);
  for (std::size_t i = 0; i < least.size(); ++i) {
    least[i] = true_best.value[i];
    if (shown.value[i] != true_best.value[i]) break;
  }
  return least;
}

/// The answer itself: rules, cost as stated, bounds and proofs against all rotations of its style.
void judge_answer(const Plan& p, brute::Question q, Verdict& v) {
  const Audit a = audit(q.spec, p.rotation, q.at_slot, q.before);
  for (const Breach& b : a.breaches) v.say("breaks rule " + std::to_string(b.rule) + ": " + b.text);
  if (a.cost != p.cost) v.say("states another cost than the auditor: " + tiny::dump(a.cost));
  if (p.rotation.slots != q.slots) v.say("has another number of slots");
  if (!v.wrong.empty()) return;

  q.style = p.rotation.style;
  const brute::Best true_best = brute::best(q);
  const bool best_of_style = true_best.cost == p.cost;
  if (best_of_style) ++v.best_of_all;
  const auto least = least_values(q, p.cost, true_best.cost);
  const std::vector<Component> order = listed(q.before != nullptr);
  for (Component c : order) {
    const std::int64_t least_here = least[static_cast<std::size_t>(c)];
    if (p.bound[c] > least_here)
      v.say("bound of " + std::string(id_of(c)) + " is " + std::to_string(p.bound[c]) + ", but " +
            std::to_string(least_here) + " is possible");
  }
  if (p.proven < 0 || p.proven > static_cast<int>(order.size()))
    v.say("proves so many: " + std::to_string(p.proven));
  for (std::size_t i = 0; i < order.size() && static_cast<int>(i) < p.proven; ++i) {
    const Component c = order[i];
    const std::int64_t true_value = least[static_cast<std::size_t>(c)];
    if (p.bound[c] != p.cost[c] || (p.cost[c] != true_value && true_value != brute::none))
      v.say("calls " + std::string(id_of(c)) + " proven at " + std::to_string(p.cost[c]) + ", bound " +
            std::to_string(p.bound[c]) + ", true " + std::to_string(least[static_cast<std::size_t>(c)]));
  }
  if (p.proven == static_cast<int>(order.size())) ++v.proven_to_the_end;
}

/// True: the planner rightly refused, or wrongly did not; there is no answer to judge.
bool judge_refusal(const ClassSpec& c, int slots, bool in_repair, const OrRefusal<Plan>& answer, Verdict& v) {
  const std::set<int> rules = brute::refusals(c, slots, in_repair);
  if (const Refusal* r = std::get_if<Refusal>(&answer)) {
    ++v.refused;
    if (!rules.contains(r->rule)) v.say("refused by rule " + std::to_string(r->rule) + ": " + r->reason);
    if (r->reason.empty()) v.say("refused without a reason");
    return true;
  }
  ++v.planned;
  if (!rules.empty()) v.say("should have been refused by rule " + std::to_string(*rules.begin()));
  return !rules.empty();
}

void judge_plan(const tiny::Case& t, Verdict& v) {
  const OrRefusal<Plan> answer = plan(t.spec, t.slots);
  if (judge_refusal(t.spec, t.slots, false, answer, v)) return;
  const Plan& p = std::get<Plan>(answer);
  const brute::Question q{.spec = t.spec, .slots = t.slots};
  judge_answer(p, q, v);
  if (p.rotation.style == Style::ring) ++v.rings;
  if (t.spec.style != Style::automatic && p.rotation.style != t.spec.style)
    v.say("has another style than asked");

  brute::Question asked = q;
  asked.style = t.spec.style == Style::ring ? Style::ring : Style::free;
  const brute::Best truth = brute::best(asked);
  if (!same_first(p.cost, truth.cost, 3))
    v.say("the truth is " + tiny::dump(truth.cost) + "\n" + tiny::dump(t.spec, truth.rotation));
  if (t.spec.style != Style::automatic || p.rotation.style == Style::ring) return;
  brute::Question ring = q;
  ring.style = Style::ring;
  const brute::Best r = brute::best(ring);
  const auto members = static_cast<std::int64_t>(t.spec.members.size());
  if (same_first(r.cost, p.cost, 3) && r.cost[Component::idle] <= p.cost[Component::idle] + members)
    v.say("is free, but a ring would do: " + tiny::dump(r.cost) + "\n" + tiny::dump(t.spec, r.rotation));
}

void judge_repair(const tiny::Change& t, Verdict& v) {
  const OrRefusal<Plan> answer = repair(t.spec, t.slots, t.before, t.at_slot);
  if (judge_refusal(t.spec, t.slots, true, answer, v)) return;
  const Plan& p = std::get<Plan>(answer);
  brute::Question q{.spec = t.spec, .slots = t.slots, .at_slot = t.at_slot, .before = &t.before};
  for (const std::string& id : t.before.ring) q.order.push_back(build::station_index(t.spec, id));
  judge_answer(p, q, v);
  if (p.at_slot != t.at_slot) v.say("says another slot of the repair");
  if (p.rotation.style == Style::ring) ++v.rings;

  brute::Best truth = brute::best(q);
  if (t.before.style == Style::ring) {
    q.style = Style::ring;
    const brute::Best kept = brute::best(q);
    if (same_first(kept.cost, truth.cost, 3)) truth = kept;
  }
  if (p.rotation.style != truth.rotation.style)
    v.say("should be " + std::string(id_of(truth.rotation.style)));
  if (!same_first(p.cost, truth.cost, 4))
    v.say("the truth is " + tiny::dump(truth.cost) + "\n" + tiny::dump(t.spec, truth.rotation));
}

/// The choice among the rows when classes of up to `fitting` slots fit the length of the class: the smallest
/// row that is best in missed, uneven and back_to_back; where none fits, the largest that does, in a row of
/// its own.
void judge_choice(const SlotTable& table, int fitting, Verdict& v) {
  const SlotRow* wanted = nullptr;
  int rows = 0;
  for (const SlotRow& row : table.rows) {
    if (row.fits != (row.slots <= fitting))
      v.say("says wrongly whether it fits: " + std::to_string(row.slots));
    if (!row.fits) continue;
    ++rows;
    const bool better = wanted == nullptr || std::lexicographical_compare(
                                                 row.cost.value.begin(), row.cost.value.begin() + 3,
                                                 wanted->cost.value.begin(), wanted->cost.value.begin() + 3);
    if (better) wanted = &row;
  }
  if (wanted == nullptr) return v.say("has no row that fits " + std::to_string(fitting) + " slots");
  if (table.rows.size() > 4 && (rows != 1 || wanted->slots != fitting)) v.say("has a row too many");
  if (table.chosen.rotation.slots != wanted->slots || table.chosen.cost != wanted->cost)
    v.say("chooses " + std::to_string(table.chosen.rotation.slots) + " slots instead of " +
          std::to_string(wanted->slots));
}

/// Rows T, T + 1, T + 2, T + 3: T is the smallest with the least missed, and the row chosen is the smallest
/// that is best among those that fit; where none fits, there is a row more.
void judge_table(tiny::Case t, Verdict& v) {
  // Windows in which people share a slot only later may refuse a longer class.
  if (!brute::refusals(t.spec, 1, false).empty() || !brute::refusals(t.spec, 200, false).empty()) return;
  ++v.planned;
  t.spec.slots.reset();
  const OrRefusal<SlotTable> answer = plan_slots(t.spec);
  if (const Refusal* r = std::get_if<Refusal>(&answer)) return v.say("refused: " + r->reason);
  const SlotTable& table = std::get<SlotTable>(answer);
  if (table.rows.size() != 4) return v.say("rows: " + std::to_string(table.rows.size()));

  const Style style = t.spec.style == Style::ring ? Style::ring : Style::free;
  const auto truth = [&](int slots) -> std::optional<Cost> {
    const brute::Question q{.spec = t.spec, .slots = slots, .style = style};
    if (slots > 6 || brute::combinations(q) > most) return std::nullopt;
    return brute::best(q).cost;
  };
  const int first = table.rows[0].slots;
  for (int i = 0; i < 4; ++i) {
    const SlotRow& row = table.rows[static_cast<std::size_t>(i)];
    const std::string text = "row of " + std::to_string(row.slots) + " slots: " + tiny::dump(row.cost);
    if (row.slots != first + i || row.class_s != class_seconds(t.spec, row.slots) || !row.fits)
      v.say("header, " + text);
    if (row.cost[Component::missed] != table.rows[0].cost[Component::missed])
      v.say("misses another number, " + text);
    const std::optional<Cost> best = truth(row.slots);
    if (best && !same_first(row.cost, *best, 3)) v.say(text + "\nbut the truth is " + tiny::dump(*best));
  }
  for (int fewer = first - 1; fewer >= 1; --fewer)
    if (const std::optional<Cost> best = truth(fewer);
        best && (*best)[Component::missed] <= table.rows[0].cost[Component::missed])
      v.say("begins with " + std::to_string(first) + " slots, but " + std::to_string(fewer) +
            " do: " + tiny::dump(*best));
  judge_choice(table, table.rows[0].slots + 3, v);

  // The same with a room that is ours for so many slots only.
  const int fitting = first - 2 + first % 5;
  if (fitting < 1) return;
  t.spec.length_s = class_seconds(t.spec, fitting);
  judge_choice(std::get<SlotTable>(plan_slots(t.spec)), fitting, v);
}

std::string shown(const ClassSpec& c, const OrRefusal<Plan>& answer) {
  const Plan* p = std::get_if<Plan>(&answer);
  if (p == nullptr) return "";
  return tiny::dump(c, p->rotation) + "cost  " + tiny::dump(p->cost) + "\nbound " + tiny::dump(p->bound) +
         "\nproven " + std::to_string(p->proven) + "\n";
}

/// Runs `judge(seed, verdict)` over the cases wanted; the first failure fails, or all go to the report.
template <class Judge, class Describe>
void run(const char* name, int by_default, Judge judge, Describe describe) {
  const int cases = tiny::cases_wanted(by_default);
  const std::uint64_t first = tiny::first_seed();
  const char* report = std::getenv("FLOORWHEEL_TINY_REPORT");
  int failures = 0;
  Verdict sum;
  for (std::uint64_t seed = first; seed < first + static_cast<std::uint64_t>(cases); ++seed) {
    sum.wrong.clear();
    judge(seed, sum);
    if (sum.wrong.empty()) continue;
    ++failures;
    const std::string text =
        std::string("== ") + name + " seed " + std::to_string(seed) + "\n" + sum.wrong + describe(seed);
    if (report == nullptr) QFAIL(text.c_str());
    std::ofstream(report, std::ios::app) << text << "\n";
  }
  qInfo(
      "%s: %d cases from seed %llu on: %d planned, %d refused, %d rings, %d best in every component, "
      "%d proven in every component, %d failures",
      name, cases, static_cast<unsigned long long>(first), sum.planned, sum.refused, sum.rings,
      sum.best_of_all, sum.proven_to_the_end, failures);
  QCOMPARE(failures, 0);
}

}  // namespace

class TestPlannerTruth : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void plans_are_true() {
    run(
        "plan", 100, [](std::uint64_t seed, Verdict& v) { judge_plan(tiny::make_case(seed, most), v); },
        [](std::uint64_t seed) {
          const tiny::Case t = tiny::make_case(seed, most);
          return tiny::dump(t.spec, t.slots) + shown(t.spec, plan(t.spec, t.slots));
        });
  }

  void repairs_are_true() {
    run(
        "repair", 100, [](std::uint64_t seed, Verdict& v) { judge_repair(tiny::make_change(seed, most), v); },
        [](std::uint64_t seed) {
          const tiny::Change t = tiny::make_change(seed, most);
          return "changed at slot " + std::to_string(t.at_slot) + ": " + t.what + "\n" +
                 tiny::dump(t.spec, t.slots) + tiny::dump(t.before) +
                 shown(t.spec, repair(t.spec, t.slots, t.before, t.at_slot));
        });
  }

  void the_same_seed_gives_the_same_answer() {
    for (std::uint64_t seed = 1; seed <= 8; ++seed) {
      const tiny::Case t = tiny::make_case(seed, most);
      PlanOptions options;
      options.seed = seed;
      const OrRefusal<Plan> a = plan(t.spec, t.slots, options);
      const OrRefusal<Plan> b = plan(t.spec, t.slots, options);
      QCOMPARE(shown(t.spec, a), shown(t.spec, b));
      const tiny::Change change = tiny::make_change(seed, most);
      QCOMPARE(shown(change.spec, repair(change.spec, change.slots, change.before, change.at_slot)),
               shown(change.spec, repair(change.spec, change.slots, change.before, change.at_slot)));
    }
  }

  void tables_of_slots_are_true() {
    run(
        "table", 10, [](std::uint64_t seed, Verdict& v) { judge_table(tiny::make_case(seed, most / 10), v); },
        [](std::uint64_t seed) {
          const tiny::Case t = tiny::make_case(seed, most / 10);
          return tiny::dump(t.spec, 0) +
                 (t.spec.length_s ? "length_s = " + std::to_string(*t.spec.length_s) + "\n" : "");
        });
  }
};

QTEST_APPLESS_MAIN(TestPlannerTruth)
#include "tst_planner_truth.moc"
