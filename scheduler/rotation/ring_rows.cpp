// SPDX-License-Identifier: GPL-3.0-or-later
// Rows slot by slot, stepping forward on the ring. A row is left out when it and the least that everybody
// else costs are more than the rotation to beat; what must be missed and is not missed here, others miss, at
// best evenly.
#include "scheduler/rotation/ring_rows.h"

#include <algorithm>

namespace floorwheel {
namespace {

/// What a rotation costs at least if one of its rows is known.
class LeastWith {
 public:
  LeastWith(const Problem& p, std::int64_t missed_least) : p_(p), missed_least_(missed_least) {
    const Sheet past(p);
    for (int m = 0; m < p.members; ++m) {
      Cost least = price_row(p, m, past.row(m));
      least[Component::missed] = p.forced_missed(m);
      least[Component::uneven] = 0;
      least[Component::moved] = cannot_stay(m);
      add(sum_, least);
      each_.push_back(least);
    }
  }

  /// What m cannot but cost.
  [[nodiscard]] const Cost& alone(int m) const { return each_[ix(m)]; }

  /// Of the whole rotation, when the row of m costs so much.
  [[nodiscard]] Cost with(int m, const Cost& row) const {
    Cost out = sum_;
    subtract(out, each_[ix(m)]);
    add(out, row);
    const std::int64_t others = p_.members - 1;
    const std::int64_t more = missed_least_ - out[Component::missed];
    if (more <= 0) return out;
    out[Component::missed] = missed_least_;
    if (others > 0) out[Component::uneven] += least_squares(more, others);
    return out;
  }

 private:
  /// Entries of the earlier sheet that m has to leave.
  [[nodiscard]] std::int64_t cannot_stay(int m) const {
    std::int64_t out = 0;
    if (p_.is_repair && p_.counts[ix(m)])
      for (int t = p_.from; t < p_.slots; ++t)
        if (const StationIndex s = p_.old(m, t); s != nowhere)
          out += p_.present(m, t) && p_.work(m, s).required && p_.places(s, t) > 0 ? 0 : 1;
    return out;
  }

  const Problem& p_;
  const std::int64_t missed_least_;
  std::vector<Cost> each_;
  Cost sum_;
};

class RingLister {
 public:
  RingLister(const Problem& p, const std::vector<StationIndex>& ring, const LeastWith& least,
             const Cost& worth, RingRowsMost most)
      : p_(p), ring_(ring), place_(ring.size()), least_(least), worth_(worth), most_(most) {
    for (std::size_t i = 0; i < ring.size(); ++i) place_[ix(ring[i])] = static_cast<int>(i);
  }

  /// False: there is too much.
  bool list(int m, std::vector<PricedRow>& out) {
    m_ = m;
    out_ = &out;
    seen_in_.assign(ix(p_.stations), 0);
    row_.assign(ix(p_.slots), nowhere);
    RingSteps gone;
    for (int t = 0; t < p_.from; ++t)
      if (const StationIndex s = row_[ix(t)] = p_.history(m, t); s != nowhere)
        gone = step_on(p_, place_, gone, s, seen_in_);
    visits_least_ = visits_least();
    if (!extend(p_.from, gone, p_.visits_made(m))) return false;
    std::stable_sort(out.begin(), out.end(),
                     [](const PricedRow& a, const PricedRow& b) { return a.cost < b.cost; });
    return true;
  }

 private:
  /// How many visits m makes at least where no more is missed than is worth it.
  [[nodiscard]] int visits_least() const {
    const int can = p_.visits_wanted(m_) - p_.forced_missed(m_);
    for (int beyond = can; beyond > 0; --beyond) {
      Cost row = least_.alone(m_);
      row[Component::missed] += beyond;
      row[Component::uneven] = std::int64_t{beyond} * beyond;
      if (!(least_.with(m_, row) > worth_)) return can - beyond;
    }
    return can;
  }

  bool extend(int t, const RingSteps& gone, int visits) {
    if (--most_.steps < 0) return false;
    const int slots_left = p_.last[ix(m_)] - std::max(t, p_.first[ix(m_)]) + 1;
    const int ahead = p_.laps * p_.stations - (gone.at == nowhere ? 0 : gone.in_row + 1);
    if (visits + std::max(0, std::min(slots_left, ahead)) < visits_least_) return true;
    if (t == p_.slots) return take();
    if (p_.present(m_, t))
      for (StationIndex s : ring_) {
        if (!p_.work(m_, s).required || p_.places(s, t) < 1) continue;
        const int seen = seen_in_[ix(s)];
        const RingSteps next = step_on(p_, place_, gone, s, seen_in_);
        row_[ix(t)] = s;
        const bool room = next.lap > p_.laps || !steps_hold(p_, next) || extend(t + 1, next, visits + 1);
        seen_in_[ix(s)] = seen;
        if (!room) return false;
      }
    row_[ix(t)] = nowhere;
    return extend(t + 1, gone, visits);
  }

  bool take() {
    const Cost cost = price_row(p_, m_, row_.data());
    if (least_.with(m_, cost) > worth_) return true;
    if (most_.rows == 0) return false;
    --most_.rows;
    out_->push_back({row_, cost});
    return true;
  }

  const Problem& p_;
  const std::vector<StationIndex>& ring_;
  std::vector<int> place_;
  const LeastWith& least_;
  const Cost& worth_;
  RingRowsMost most_;
  int m_ = 0;
  int visits_least_ = 0;
  std::vector<int> seen_in_;  // [station] the last lap with it
  Row row_;
  std::vector<PricedRow>* out_ = nullptr;
};

}  // namespace

std::optional<RowLists> list_rows_on_ring(const Problem& p, const std::vector<StationIndex>& ring,
                                          const Cost& worth, std::int64_t missed_least,
                                          const RingRowsMost& most) {
  const LeastWith least(p, missed_least);
  RingLister lister(p, ring, least, worth, most);
  RowLists lists(ix(p.members));
  for (int m = 0; m < p.members; ++m)
    if (!lister.list(m, lists[ix(m)])) return std::nullopt;
  return lists;
}

}  // namespace floorwheel
