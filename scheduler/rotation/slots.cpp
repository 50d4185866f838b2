// SPDX-License-Identifier: GPL-3.0-or-later
// What each number of slots buys. Source: the rotation model, "Cost", last paragraph.
#include <algorithm>

#include "scheduler/rotation/bounds.h"
#include "scheduler/rotation/outcome.h"

namespace floorwheel {
namespace {

constexpr int slots_most = 200;
constexpr int rows_after = 3;

class SlotTableMaker {
 public:
  SlotTableMaker(const ClassSpec& spec, const PlanOptions& options) : spec_(spec), options_(options) {}

  OrRefusal<SlotTable> make() {
    auto widest = make_problem(spec_, slots_most);
    if (auto* refusal = std::get_if<Refusal>(&widest)) return *refusal;
    const int first = smallest(std::get<Problem>(widest));
    SlotTable table;
    for (int t = first; t <= first + rows_after; ++t) table.rows.push_back(row(t));
    choose(table);
    return table;
  }

 private:
  struct Solved {
    int slots = 0;
    Answer answer;
  };

  Answer solve_for(int slots, Style style, std::int64_t effort) const {
    const auto made = make_problem(spec_, slots);
    const Task task{style, {}, options_.seed, effort, options_.stop, {}};
    return solve(std::get<Problem>(made), task);
  }

  std::int64_t missed_with(int slots) {
    std::int64_t missed = solve_for(slots, spec_.style, 1).found.cost[Component::missed];
    return missed;
  }

  std::int64_t bound_with(int slots) const {
    return bound_visits(std::get<Problem>(make_problem(spec_, slots))).missed;
  }

  /// The smallest T whose `missed` is as low as with any. It never rises with T: a slot more can stay empty.
  int smallest(const Problem& widest) {
    const std::int64_t least = bound_visits(widest).missed;
    int from = 1;
    int to = slots_most;
    while (from < to) {  // first T that the bound does not rule out
      const int middle = (from + to) / 2;
      if (bound_with(middle) > least)
        from = middle + 1;
      else
        to = middle;
    }
    if (missed_with(from) == least) return from;
    const std::int64_t reached = std::max(least, missed_with(slots_most));
    int low = from;  // misses more
    int step = 1;
    int high = from + 1;
    while (high < slots_most && missed_with(high) > reached) {
      low = high;
      step *= 2;
      high = std::min(slots_most, high + step);
    }
    while (low + 1 < high) {
      const int middle = (low + high) / 2;
      (missed_with(middle) > reached ? low : high) = middle;
    }
    return missed_with(low) <= reached ? low : high;
  }

  SlotRow row(int slots) {
    Answer answer = solve_for(slots, spec_.style, options_.effort);
    const Found& found = answer.found;
    SlotRow out;
    out.slots = slots;
    out.class_s = class_seconds(spec_, slots);
    out.fits = !spec_.length_s || out.class_s <= *spec_.length_s;
    out.style = found.style;
    out.cost = found.cost;
    out.bound = found.bound;
    out.proven = found.proven;
    solved_.push_back({slots, std::move(answer)});
    return out;
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
      if (slots < table.rows.front().slots) table.rows.insert(table.rows.begin(), row(slots));
      const SlotRow& only = table.rows.front();
      note = only.fits ? "Only " + std::to_string(slots) + " slots fit into the class's length, so " +
                             std::to_string(only.cost[Component::missed]) + " visits are missed; " +
                             std::to_string(table.rows[1].slots) + " slots would miss " +
                             std::to_string(table.rows[1].cost[Component::missed]) + "."
                       : "Not even one slot fits into the class's length.";
    }
    const auto chosen =
        std::find_if(solved_.begin(), solved_.end(), [&](const Solved& s) { return s.slots == slots; });
    const Problem p = std::get<Problem>(make_problem(spec_, slots));
    table.chosen = as_plan(spec_, p, chosen->answer, spec_.style, options_.seed);
    if (!note.empty()) table.chosen.reasons.push_back(note);
  }

  const ClassSpec& spec_;
  const PlanOptions& options_;
  std::vector<Solved> solved_;
};

}  // namespace

OrRefusal<SlotTable> plan_slots(const ClassSpec& spec, const PlanOptions& options) {
  return SlotTableMaker(spec, options).make();
}

}  // namespace floorwheel
