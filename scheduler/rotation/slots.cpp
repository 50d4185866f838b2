// SPDX-License-Identifier: GPL-3.0-or-later
// What each number of slots buys. Source: the rotation model, "Cost", last paragraph.
#include <algorithm>
#include <utility>

#include "scheduler/rotation/bounds.h"
#include "scheduler/rotation/certify.h"
#include "scheduler/rotation/outcome.h"
#include "scheduler/rotation/prove_answer.h"

namespace floorwheel {
namespace {

constexpr int slots_most = 200;
constexpr std::size_t rows_after = 3;
constexpr std::int64_t second_try = 4000;  // steps

class SlotTableMaker {
 public:
  SlotTableMaker(const ClassSpec& spec, const PlanOptions& options) : spec_(spec), options_(options) {}

  /// `chosen_only`: ends at a row that no later one can be chosen over.
  OrRefusal<SlotTable> make(bool chosen_only) {
    auto widest = make_problem(spec_, slots_most);
    if (auto* refusal = std::get_if<Refusal>(&widest)) return *refusal;
    const int first = smallest(std::get<Problem>(widest));
    SlotTable table;
    for (int t = first; table.rows.size() <= rows_after; ++t) {
      SlotRow next = row(t, solved_.empty() ? nullptr : &solved_.back().answer.found);
      // With its whole effort a row may come lower than the quick looks that found the first one.
      if (!table.rows.empty() && next.cost[Component::missed] < table.rows.front().cost[Component::missed])
        table.rows.clear();
      table.rows.push_back(next);
      if (chosen_only && leading_equal(next.cost, Cost{})) break;
    }
    choose(table);
    return table;
  }

 private:
  struct Solved {
    Answer answer;
    Plan plan;
  };

  Answer solve_for(int slots, std::int64_t effort) const {
    const auto made = make_problem(spec_, slots);
    const Task task{.style = spec_.style, .seed = options_.seed, .effort = effort, .stop = options_.stop};
    return solve(std::get<Problem>(made), task);
  }

  Answer first_for(int slots) const {
    const auto made = make_problem(spec_, slots);
    return first(std::get<Problem>(made),
                 {.style = spec_.style, .seed = options_.seed, .stop = options_.stop});
  }

  /// What is missed with so many slots, looked for no harder than it takes to come down to `wanted`.
  std::int64_t missed_with(int slots, std::int64_t wanted) const {
    std::int64_t least = first_for(slots).found.cost[Component::missed];
    if (least > wanted) least = std::min(least, solve_for(slots, 1).found.cost[Component::missed]);
    if (least > wanted) least = std::min(least, solve_for(slots, second_try).found.cost[Component::missed]);
    return least;
  }

  std::int64_t bound_with(int slots) const {
    return bound_visits(std::get<Problem>(make_problem(spec_, slots))).missed;
  }

  /// The first T for which holds(T), of those from `low` on; it holds for slots_most.
  template <class Holds>
  static int first_with(int low, Holds holds) {
    int step = 1;
    int high = low;
    while (high < slots_most && !holds(high)) {
      low = high + 1;
      high = std::min(slots_most, high + step);
      step *= 2;
    }
    while (low < high) {
      const int middle = (low + high) / 2;
      if (holds(middle))
        high = middle;
      else
        low = middle + 1;
    }
    return high;
  }

  /// The smallest T whose `missed` is as low as with any. It never rises with T: a slot more can stay empty.
  int smallest(const Problem& widest) const {
    const std::int64_t least = bound_visits(widest).missed;
    const auto first_by_bound = [&](std::int64_t missed) {
      return first_with(1, [&](int t) { return bound_with(t) <= missed; });
    };
    const int from = first_by_bound(least);
    if (missed_with(from, least) == least) return from;
    const std::int64_t reached = missed_with(slots_most, least);
    return first_with(reached == least ? from + 1 : first_by_bound(reached),
                      [&](int t) { return missed_with(t, reached) <= reached; });
  }

  /// `shorter`: the row before. One more slot can stay empty, so a row is never worse in what comes first.
  SlotRow row(int slots, const Found* shorter) {
    const Problem p = std::get<Problem>(make_problem(spec_, slots));
    const Task task{.style = spec_.style,
                    .shorter = shorter,
                    .seed = options_.seed,
                    .effort = options_.effort,
                    .effort_times = options_.effort_times,
                    .stop = options_.stop,
                    .progress = options_.progress};
    Answer answer = solve(p, task);
    certify(spec_, p, answer);
    Plan plan = as_plan(spec_, p, answer, spec_.style, options_.seed);
    SlotRow out;
    out.slots = slots;
    out.class_s = class_seconds(spec_, slots);
    out.fits = !spec_.length_s || out.class_s <= *spec_.length_s;
    take_over(out, plan);
    solved_.push_back({std::move(answer), std::move(plan)});
    return out;
  }

  static void take_over(SlotRow& row, const Plan& plan) {
    row.style = plan.rotation.style;
    row.cost = plan.cost;
    row.bound = plan.bound;
    row.proven = plan.proven;
  }

  void choose(SlotTable& table) {
    const SlotRow* best = nullptr;
    for (const SlotRow& row : table.rows)
      if (row.fits && (!best || leading_less(row.cost, best->cost))) best = &row;
    std::string note;
    int slots = best ? best->slots : 0;
    if (!best) {
      slots = table.rows.front().slots - 1;
      while (slots > 1 && class_seconds(spec_, slots) > *spec_.length_s) --slots;
      slots = std::max(slots, 1);
      if (slots < table.rows.front().slots) table.rows.insert(table.rows.begin(), row(slots, nullptr));
      const SlotRow& only = table.rows.front();
      note = only.fits ? "Only " + std::to_string(slots) + " slots fit into the class's length, so " +
                             std::to_string(only.cost[Component::missed]) + " visits are missed; " +
                             std::to_string(table.rows[1].slots) + " slots would miss " +
                             std::to_string(table.rows[1].cost[Component::missed]) + "."
                       : "Not even one slot fits into the class's length.";
    }
    const auto chosen = std::find_if(solved_.begin(), solved_.end(),
                                     [&](const Solved& s) { return s.plan.rotation.slots == slots; });
    table.chosen = chosen->plan;
    if (options_.prove_chosen) {
      const Problem p = std::get<Problem>(make_problem(spec_, slots));
      table.chosen = prove_answer(spec_, p, chosen->answer, options_);
      for (SlotRow& row : table.rows)
        if (row.slots == slots) take_over(row, table.chosen);
    }
    if (!note.empty()) table.chosen.reasons.push_back(note);
  }

  const ClassSpec& spec_;
  const PlanOptions& options_;
  std::vector<Solved> solved_;
};

}  // namespace

OrRefusal<SlotTable> plan_slots(const ClassSpec& spec, const PlanOptions& options) {
  return SlotTableMaker(spec, options).make(false);
}

OrRefusal<Plan> plan_chosen(const ClassSpec& spec, const PlanOptions& options) {
  auto made = SlotTableMaker(spec, options).make(true);
  if (auto* refusal = std::get_if<Refusal>(&made)) return std::move(*refusal);
  return std::move(std::get<SlotTable>(made).chosen);
}

}  // namespace floorwheel
