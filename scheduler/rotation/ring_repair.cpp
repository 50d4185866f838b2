// SPDX-License-Identifier: GPL-3.0-or-later
// From below while that is cheap, since the bound is mostly the answer; then from above, each time for fewer
// than the best so far, until there is none.
#include "scheduler/rotation/ring_repair.h"

#include <algorithm>

#include "scheduler/rotation/bounds.h"
#include "scheduler/rotation/row_choice.h"

namespace floorwheel {
namespace {

constexpr std::int64_t steps_cheap = 6'000;

class RingRepair {
 public:
  RingRepair(const Problem& p, Found& ring, Budget& budget)
      : p_(p), ring_(ring), budget_(budget), aim_(ring.bound) {
    if (ring.cost[Component::missed] > ring.bound[Component::missed])  // then nobody has asked yet
      aim_[Component::uneven] = bound_visits(p).uneven;
  }

  bool run(const RingRowsMost& most) {
    const bool at_aim = leading_equal(ring_.cost, aim_);
    Cost worth = ring_.cost;
    if (!at_aim) {  // any ring that is as good as that is worth having
      worth.value.fill(INT32_MAX);
      std::copy_n(aim_.value.begin(), 3, worth.value.begin());
    }
    const auto lists = list_rows_on_ring(p_, ring_.ring, worth, aim_[Component::missed], most);
    if (!lists) return false;
    RowChoice choice(p_, *lists, aim_);
    if (!choice.possible()) return false;
    const std::int64_t everything = std::int64_t{p_.members} * (p_.slots - p_.from);
    high_ = at_aim ? ring_.cost[Component::moved] : everything + 1;
    low_ = std::max<std::int64_t>(
        bound_moved(p_), bound_moved_by_shares(p_, aim_[Component::missed], aim_[Component::uneven]));
    look(choice, low_, steps_cheap, false);  // mostly that is the answer, and prices are not needed
    if (low_ < high_) choice.raise(at_aim ? high_ : std::min(everything, 2 * low_ + 8));
    low_ = std::max(low_, choice.bound());
    while (look(choice, low_, steps_cheap, false)) {
    }
    while (look(choice, low_, steps_cheap, true)) {
    }
    // As long as no ring is known to be there at all, not all that is left.
    bool more = look(choice, high_ - 1, high_ > everything ? budget_.left() / 4 : budget_.left(), true);
    while (more) more = look(choice, high_ - 1, budget_.left(), true);
    if (leading_equal(ring_.cost, aim_)) ring_.moved_least = low_;
    prove(p_, ring_);
    return true;
  }

 private:
  /// False: the answer is known, or there was no end to the looking.
  bool look(RowChoice& choice, std::int64_t target, std::int64_t most, bool in_turn) {
    if (low_ >= high_) return false;
    const std::int64_t given = std::min(most, budget_.left());
    std::int64_t left = given;
    std::vector<Row> rows;
    const RowChoice::Look seen = choice.reach(target, left, rows, in_turn, [&] {
      budget_.spend(0, ring_.cost, ring_.bound);
      return budget_.stopped();
    });
    budget_.spend(given - left, ring_.cost, ring_.bound);
    if (seen == RowChoice::Look::none) low_ = target + 1;
    if (seen == RowChoice::Look::found) {
      if (!take(rows)) return false;
      high_ = ring_.cost[Component::moved];
    }
    return seen != RowChoice::Look::unended;
  }

  /// Rule 5 was not asked.
  bool take(const std::vector<Row>& rows) {
    const Sheet sheet(p_, rows);
    for (int m = 0; m < p_.members; ++m)
      if (!sheet.pairs_hold(m)) return false;
    const Cost cost = price(p_, sheet);
    if (!leading_equal(cost, aim_) || !(cost < ring_.cost)) return false;
    ring_.rows = rows;
    ring_.cost = cost;
    return true;
  }

  const Problem& p_;
  Found& ring_;
  Budget& budget_;
  Cost aim_;               // the first three components as good as any rotation can have them
  std::int64_t low_ = 0;   // no ring that has them moves fewer
  std::int64_t high_ = 0;  // the best known
};

}  // namespace

bool settle_ring_repair(const Problem& p, Found& ring, const RingRowsMost& most, Budget& budget) {
  return ring.proven >= 4 || RingRepair(p, ring, budget).run(most);
}

}  // namespace floorwheel
