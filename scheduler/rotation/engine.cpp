// SPDX-License-Identifier: GPL-3.0-or-later
// Builds rings and free rotations, has them bettered and bounded, and chooses between them.
#include "scheduler/rotation/engine.h"

#include <algorithm>

#include "scheduler/rotation/bounds.h"
#include "scheduler/rotation/exchange_rows.h"
#include "scheduler/rotation/give_way.h"
#include "scheduler/rotation/in_step.h"
#include "scheduler/rotation/ring_order.h"
#include "scheduler/rotation/ring_repair.h"
#include "scheduler/rotation/ring_walk.h"
#include "scheduler/rotation/row_cover.h"
#include "scheduler/rotation/search.h"
#include "scheduler/rotation/slot_assignment.h"
#include "scheduler/rotation/thorough.h"
#include "scheduler/rotation/two_ways.h"

namespace floorwheel {

std::vector<Component> ranking(const Problem& p) {
  std::vector<Component> out;
  for (Component c : components)
    if (c != Component::moved || p.is_repair) out.push_back(c);
  return out;
}

bool leading_equal(const Cost& a, const Cost& b) {
  return std::equal(a.value.begin(), a.value.begin() + 3, b.value.begin());
}

bool leading_less(const Cost& a, const Cost& b) {
  return std::lexicographical_compare(a.value.begin(), a.value.begin() + 3, b.value.begin(),
                                      b.value.begin() + 3);
}

namespace {

constexpr std::int64_t ring_walk_most = 120'000'000;  // table entries

/// Steps; what a class of one floor can use within a breath, less for crowds so that they are answered too.
std::int64_t default_effort(const Problem& p) {
  const std::int64_t cells = std::max<std::int64_t>(1, std::int64_t{p.members} * p.slots);
  return p.is_repair ? std::clamp<std::int64_t>(3'000'000 / cells, 200, 20'000)
                     : std::clamp<std::int64_t>(40'000'000 / cells, 200, 80'000);
}

/// Repairs of a class of a dozen are tried over and over, should too much be moved; each try is a breath.
constexpr int tries = 12;
bool is_small_repair(const Problem& p) { return p.is_repair && p.members * p.slots <= 320; }

/// For a floor to make room for those who come late: a few looks at every entry, however large it is.
std::int64_t steps_to_give(const Problem& p) {
  return p.is_repair ? 4 * std::int64_t{p.members} * p.slots : 0;
}

/// Whether its ring can be kept is asked before all else; in larger classes after it, and for a moment only.
bool asks_for_ring_first(const Problem& p) { return p.is_repair && p.members * p.slots <= 480; }

class Engine {
 public:
  Engine(const Problem& p, const Task& task)
      : p_(p),
        task_(task),
        effort_((task.effort > 0 ? task.effort : default_effort(p)) * task.effort_times),
        budget_((is_small_repair(p) ? 4 * tries : 6) * effort_ + steps_to_give(p), task.stop, task.progress),
        random_(task.seed),
        thorough_(p, task) {}

  Answer run_first() {
    Answer answer;
    if (task_.style != Style::free) answer.ring = built(ring_track(first_ring_order(p_, random_)), false);
    if (answer.ring && somebody_waits(p_)) go_in_step(*answer.ring);
    if (task_.style != Style::ring && !(answer.ring && as_good_as_free(*answer.ring))) {
      answer.free = built(Track{}, false);
      complete(p_, *answer.free, budget_, random_);
      prove(p_, *answer.free);
      if (answer.free->cost[Component::back_to_back] > answer.free->bound[Component::back_to_back])
        improve(*answer.free, effort_ / 32);  // a breath of it takes most of them out
    }
    choose(answer);
    return answer;
  }

  Answer run() {
    Answer answer;
    if (task_.style != Style::free || !p_.is_repair) answer.ring = ring();
    const bool settled = answer.ring && asks_for_ring_first(p_) && keep_ring(*answer.ring);
    if (answer.ring && ring_is_enough(*answer.ring)) {
      if (p_.members > 0) improve(*answer.ring, effort_ / 8);
    } else if (task_.style != Style::ring) {
      answer.free = free_rotation(answer.ring ? &*answer.ring : nullptr);
    }
    if (answer.ring && !settled && is_small_repair(p_)) again(*answer.ring);
    if (answer.ring && p_.is_repair && !asks_for_ring_first(p_)) keep_ring(*answer.ring);
    if (task_.style == Style::free) answer.ring.reset();  // it was a start only
    for (auto* found : {&answer.ring, &answer.free})
      if (*found) exchange_rows(p_, **found, budget_);
    thorough_.settle(answer);
    for (auto* found : {&answer.ring, &answer.free})
      if (*found) prove(p_, **found);
    choose(answer);
    return answer;
  }

 private:
  void choose(Answer& answer) const {
    answer.ring_is_best =
        answer.ring &&
        (as_good_as_free(*answer.ring) ||
         (answer.free && answer.free->proven >= 3 && leading_equal(answer.ring->cost, answer.free->cost)));
    answer.found = takes_ring(answer) ? *answer.ring : *answer.free;
  }

  /// A beam as wide as the size of the class lets it be.
  int width() const {
    const std::int64_t cells = std::int64_t{p_.members} * p_.slots * p_.stations;
    return static_cast<int>(std::clamp<std::int64_t>(400'000 / std::max<std::int64_t>(cells, 1), 2, 48));
  }

  bool thorough() const {
    const std::int64_t n = p_.stations * std::int64_t{p_.laps};
    return n * n * n * p_.slots * p_.members < 40'000'000;
  }

  Found ring() {
    std::vector<std::vector<StationIndex>> orders;
    int bad_joints = 0;
    if (!task_.ring.empty()) {
      orders.push_back(task_.ring);
    } else {
      RingOrders found = find_ring_orders(p_, random_);
      if (found.exact && everybody_alike(p_))
        bad_joints = static_cast<int>(found.list.front().bad / std::max(1, p_.members));
      for (RingOrder& order : found.list) orders.push_back(std::move(order.order));
      if (const std::int64_t entries = ring_walk_entries(p_); entries > 0 && entries < ring_walk_most)
        orders.push_back(cheapest_ring(p_, in_order(p_, Component::walk_cm)).order);
    }
    Found best;
    if (task_.shorter && task_.shorter->style == Style::ring) best = lengthened(Style::ring);
    for (auto& order : orders) {
      Found found = built(ring_track(order), thorough());
      go_in_step(found);
      found.bad_joints = bad_joints;
      prove(p_, found);
      if (found.proven < 3) improve(found, effort_ / 8);
      if (best.rows.empty() || found.cost < best.cost) best = std::move(found);
    }
    return best;
  }

  /// Takes everybody round in step where that is cheaper.
  void go_in_step(Found& found) const {
    if (p_.is_repair || (!somebody_waits(p_) && found.proven >= 3)) return;
    Found other = found_on(in_step(p_, found.ring), ring_track(found.ring));
    if (other.cost < found.cost) found = std::move(other);
  }

  /// A free rotation, from the better of a ring and rows put down freely.
  Found free_rotation(const Found* ring) {
    Found found = built(Track{}, thorough());
    if (task_.shorter)
      if (Found longer = lengthened(Style::free); longer.cost < found.cost) found = std::move(longer);
    const bool from_ring = ring && ring->cost < found.cost;
    if (from_ring) {
      found.rows = ring->rows;
      found.cost = ring->cost;
      prove(p_, found);
    }
    if (found.cost[Component::missed] > found.bound[Component::missed]) complete(p_, found, budget_, random_);
    if (!from_ring || !only_walking_left(found)) improve(found, from_ring ? 2 * effort_ : effort_);
    if (found.cost[Component::back_to_back] > found.bound[Component::back_to_back] && !budget_.stopped() &&
        cover_with_rows(p_, found, budget_))
      improve(found, effort_ / 2);
    if (is_small_repair(p_)) again(found);
    if (!p_.is_repair) cool(found, ring);
    if (found.proven < static_cast<int>(ranking(p_).size())) {
      assign_slots(p_, found, budget_);
      prove(p_, found);
    }
    return found;
  }

  /// Where entries seem to be moved in vain: from the best so far, each time by another way.
  void again(Found& found) {
    for (int i = 0; i < tries && found.cost[Component::moved] > found.bound[Component::moved] &&
                    !budget_.stopped() && leading_equal(found.cost, found.bound);
         ++i) {
      Found other = found;
      improve(other, 4 * effort_);
      if (other.cost < found.cost) found = std::move(other);
    }
  }

  /// The answer for a slot fewer with an empty slot at its end.
  Found lengthened(Style style) const {
    Found found;
    found.style = style;
    if (style == Style::ring) found.ring = task_.shorter->ring;
    found.rows = task_.shorter->rows;
    for (Row& row : found.rows) row.resize(ix(p_.slots), nowhere);
    found.cost = price(p_, Sheet(p_, found.rows));
    prove(p_, found);
    return found;
  }

  /// What comes before walking cannot be less.
  bool only_walking_left(const Found& found) const {
    const std::vector<Component> order = ranking(p_);
    return order[ix(std::min<int>(found.proven, static_cast<int>(order.size()) - 1))] >= Component::walk_cm;
  }

  /// The full heat finds fewer waits, but loses any order in which people go round; a cool search keeps it
  /// and finds shorter ways. So it goes from such an order, and from the better of the two once more.
  void cool(Found& found, const Found* ring) {
    if (ring) {
      Sheet order(p_, ring->rows);
      if (auto both = two_ways(p_, ring->ring, random_); both && price(p_, *both) < ring->cost)
        order = std::move(*both);
      Found other = found_on(order, Track{});  // bounds of a ring hold for rings only
      improve(other, effort_ / (only_walking_left(other) ? 10 : 4), Heat::cool);
      if (other.cost < found.cost) found = std::move(other);
    }
    if (!only_walking_left(found)) improve(found, effort_ / 2, Heat::cool);
  }

  void improve(Found& found, std::int64_t steps, Heat heat = Heat::full) {
    if (found.proven == static_cast<int>(ranking(p_).size())) return;
    if (thorough_.can()) steps /= 16;  // what is left will be found by looking at everything
    if (found.style == Style::ring)
      rebuild(p_, found, budget_, steps, random_);
    else
      anneal(p_, found, budget_, steps, random_, heat);
    prove(p_, found);
  }

  /// Steps are of packing: mostly a hundredth of them is needed.
  bool keep_ring(Found& ring) const {
    const bool first = asks_for_ring_first(p_);
    std::int64_t steps = is_small_repair(p_) ? 3'000'000 : first ? 1'000'000 : 60'000;
    const RingRowsMost rows = first ? RingRowsMost{} : RingRowsMost{200'000, 30'000};
    if (task_.effort > 0) steps = steps * task_.effort / default_effort(p_);
    Budget budget(steps * task_.effort_times, task_.stop, task_.progress);
    return settle_ring_repair(p_, ring, rows, budget);
  }

  /// No free rotation can be so much better that the model would rather have it.
  bool ring_is_enough(const Found& ring) const {
    return task_.style == Style::automatic && as_good_as_free(ring) &&
           (p_.is_repair || ring.cost[Component::idle] <= p_.members);
  }

  /// By bounds that hold for free rotations too.
  bool as_good_as_free(const Found& ring) const {
    Found free;
    free.cost = ring.cost;
    prove(p_, free);
    return free.proven >= 3;
  }

  Found built(const Track& track, bool thorough) {
    Placement placement(p_, track, width(), thorough, random_);
    if (p_.is_repair) {
      Sheet sheet(p_);
      placement.build_from_old(sheet);
      Found near = found_on(sheet, track);
      if (!track.is_ring()) make_way(near);
      if (near.proven >= 3) return near;
      Sheet anew(p_);
      placement.build(anew);
      Found far = found_on(anew, track);
      return far.cost < near.cost ? far : near;
    }
    Sheet sheet(p_);
    placement.build(sheet);
    return found_on(sheet, track);
  }

  Found found_on(const Sheet& sheet, const Track& track) const {
    Found found;
    found.style = track.is_ring() ? Style::ring : Style::free;
    found.ring = track.ring;
    found.rows = sheet.rows();
    found.cost = price(p_, sheet);
    prove(p_, found);
    return found;
  }

  /// What a repair owes those who miss most, near the earlier sheet.
  void make_way(Found& found) {
    if (found.cost[Component::missed] > found.bound[Component::missed]) complete(p_, found, budget_, random_);
    give_way(p_, found, budget_, random_);
    prove(p_, found);
  }

  bool takes_ring(const Answer& answer) const {
    if (!answer.free) return true;
    if (!answer.ring) return false;
    const Cost& ring = answer.ring->cost;
    const Cost& free = answer.free->cost;
    if (p_.is_repair) return !leading_less(free, ring);
    return !leading_less(free, ring) && ring[Component::idle] <= free[Component::idle] + p_.members;
  }

  const Problem& p_;
  const Task& task_;
  const std::int64_t effort_;
  Budget budget_;
  Random random_;
  Thorough thorough_;
};

}  // namespace

Answer solve(const Problem& p, const Task& task) { return Engine(p, task).run(); }

Answer first(const Problem& p, const Task& task) { return Engine(p, task).run_first(); }

}  // namespace floorwheel
