// SPDX-License-Identifier: GPL-3.0-or-later
// Steepest descent over "m visits s in slot t, and somebody who was there waits instead". Where that ends too
// early, since m has been at s already or each has given way once, what stands against it is given back.
#include "scheduler/rotation/give_way.h"

#include <algorithm>
#include <numeric>

#include "scheduler/rotation/draft.h"

namespace floorwheel {
namespace {

constexpr int tries_most = 3000;
constexpr int leading = 4;  // missed, uneven, back_to_back, moved

class GiveWay {
 public:
  GiveWay(const Problem& p, Found& found, Budget& budget, Random& random)
      : p_(p), found_(found), budget_(budget), random_(random), draft_(p, found.rows) {}

  void run() {
    std::vector<int> order(ix(p_.members));
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return beyond(a) > beyond(b); });
    for (int m : order) {
      const int begin = std::max(p_.from, p_.first[ix(m)]);
      const int end = p_.last[ix(m)];
      // Where looking at every slot before each visit would take too long, one slot after another.
      if (std::int64_t{end - begin + 1} * p_.members * beyond(m) > budget_.left())
        for (int t = begin; t <= end && beyond(m) > 1; ++t) take_one(m, t, t);
      while (beyond(m) > 1 && take_one(m, begin, end)) {
      }
      int idle_tries = 0;
      while (beyond(m) > 1 && !done() && idle_tries < tries_most)
        if (!exchange_one(m) || !take_one(m, begin, end)) ++idle_tries;
    }
    found_.rows = draft_.sheet().rows();
    found_.cost = draft_.cost();
  }

 private:
  struct Change {
    int slot = -1;
    StationIndex station = nowhere;
    int other = -1;
  };

  [[nodiscard]] std::int64_t beyond(int m) const {
    return draft_.row_cost(m)[Component::missed] - p_.forced_missed(m);
  }
  [[nodiscard]] bool of_a_team(int m) const { return p_.teams[ix(p_.team_of[ix(m)])].size() > 1; }

  void set(int m, const Change& c) {
    draft_.set(c.other, c.slot, nowhere);
    draft_.set(m, c.slot, c.station);
  }

  [[nodiscard]] bool done() const {
    for (Component c : {Component::missed, Component::uneven, Component::back_to_back, Component::moved})
      if (draft_.cost()[c] > found_.bound[c]) return false;
    return true;
  }

  /// In the components up to `moved`.
  static bool rises(const Cost& from, const Cost& to) {
    return std::lexicographical_compare(from.value.begin(), from.value.begin() + leading, to.value.begin(),
                                        to.value.begin() + leading);
  }

  /// One visit is taken and another given back; what comes first in the cost does not rise.
  bool exchange_one(int m) {
    if (of_a_team(m) || p_.last[ix(m)] < std::max(p_.from, p_.first[ix(m)])) return false;
    const int begin = std::max(p_.from, p_.first[ix(m)]);
    const int t = begin + random_.below(p_.last[ix(m)] - begin + 1);
    const int other = random_.below(p_.members);
    const StationIndex s = draft_.sheet().at(other, t);
    if (other == m || s == nowhere || of_a_team(other) || !p_.work(m, s).required ||
        !budget_.spend(1, found_.cost, found_.bound))
      return false;
    give_back(m, t);
    for (int u = begin; u <= p_.last[ix(m)]; ++u) {
      const StationIndex there = draft_.sheet().at(m, u);
      if (u != t && there != nowhere &&
          ((there == s && draft_.sheet().visits(m, s) >= p_.laps) || lost(other, u) == there))
        give_back(m, u);
    }
    set(m, {t, s, other});
    if (!draft_.holds() || rises(draft_.cost(), draft_.weigh())) {
      draft_.take_back();
      return false;
    }
    draft_.keep();
    return true;
  }

  /// Where `other` stood on the earlier sheet and now waits.
  [[nodiscard]] StationIndex lost(int other, int u) const {
    return draft_.sheet().at(other, u) == nowhere ? p_.old(other, u) : nowhere;
  }

  /// m leaves slot u to one who had to wait for it.
  void give_back(int m, int u) {
    const StationIndex s = draft_.sheet().at(m, u);
    if (s == nowhere) return;
    draft_.set(m, u, nowhere);
    for (int other = 0; other < p_.members; ++other)
      if (other != m && lost(other, u) == s && !of_a_team(other) && p_.present(other, u) &&
          draft_.sheet().visits(other, s) < p_.laps)
        return draft_.set(other, u, s);
  }

  /// The best visit in these slots.
  bool take_one(int m, int begin, int end) {
    if (of_a_team(m)) return false;
    Change best;
    Cost best_cost = draft_.cost();
    bool time_left = true;
    for (int t = begin; t <= end && time_left; ++t) {
      if (draft_.sheet().at(m, t) != nowhere) continue;
      for (int other = 0; other < p_.members && time_left; ++other) {
        const StationIndex s = draft_.sheet().at(other, t);
        if (s == nowhere || beyond(other) + 1 >= beyond(m) || of_a_team(other) || !p_.work(m, s).required ||
            draft_.sheet().visits(m, s) >= p_.laps)
          continue;
        time_left = budget_.spend(1, found_.cost, found_.bound);
        const Change change{t, s, other};
        set(m, change);
        if (draft_.holds())
          if (const Cost cost = draft_.weigh(); cost < best_cost) {
            best = change;
            best_cost = cost;
          }
        draft_.take_back();
      }
    }
    if (best.other < 0) return false;
    set(m, best);
    draft_.weigh();
    draft_.keep();
    return true;
  }

  const Problem& p_;
  Found& found_;
  Budget& budget_;
  Random& random_;
  Draft draft_;
};

}  // namespace

void give_way(const Problem& p, Found& found, Budget& budget, Random& random) {
  GiveWay(p, found, budget, random).run();
}

}  // namespace floorwheel
