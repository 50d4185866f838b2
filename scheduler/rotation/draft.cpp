// SPDX-License-Identifier: GPL-3.0-or-later
// Keeps counts, row costs and reloads of a draft in step with its entries.
#include "scheduler/rotation/draft.h"

namespace floorwheel {

Draft::Draft(const Problem& p, const std::vector<Row>& rows)
    : p_(p), sheet_(p, rows), is_touched_(ix(p.members), 0) {
  for (int m = 0; m < p.members; ++m) {
    row_cost_.push_back(price_row(p, m, sheet_.row(m)));
    add(cost_, row_cost_.back());
  }
  if (!p.has_loads) return;
  reload_ = Grid<std::int64_t>(p.stations, p.slots);
  for (int s = 0; s < p.stations; ++s)
    for (int t = 0; t + 1 < p.slots; ++t) {
      reload_(s, t) = price_reload(p, sheet_, s, t);
      cost_[Component::reload_hg] += reload_(s, t);
    }
}

void Draft::set(int m, int t, StationIndex s) {
  changes_.push_back({m, t, sheet_.at(m, t)});
  sheet_.put(m, t, s);
  if (is_touched_[ix(m)]) return;
  is_touched_[ix(m)] = 1;
  touched_.push_back(m);
}

bool Draft::holds() const {
  for (const Entry& e : changes_) {
    const StationIndex s = sheet_.at(e.member, e.slot);
    if (s == nowhere) continue;
    if (!p_.present(e.member, e.slot) || !p_.work(e.member, s).required || sheet_.room(s, e.slot) < 0)
      return false;
  }
  for (int m : touched_)
    if (!sheet_.laps_hold(m) || !sheet_.pairs_hold(m)) return false;
  return true;
}

Cost Draft::weigh() {
  weigh_rows();
  return weigh_reloads();
}

Cost Draft::weigh_rows() {
  new_cost_ = cost_;
  new_rows_.clear();
  for (int m : touched_) {
    new_rows_.push_back(price_row(p_, m, sheet_.row(m)));
    subtract(new_cost_, row_cost_[ix(m)]);
    add(new_cost_, new_rows_.back());
  }
  return new_cost_;
}

Cost Draft::weigh_reloads() {
  if (p_.has_loads)
    for (const Entry& e : changes_)
      for (const StationIndex s : {e.before, sheet_.at(e.member, e.slot)})
        if (s != nowhere) {
          weigh_reload(s, e.slot - 1);
          weigh_reload(s, e.slot);
        }
  return new_cost_;
}

void Draft::weigh_reload(StationIndex s, int t) {
  if (t < 0 || t + 1 >= p_.slots) return;
  const std::int64_t now = price_reload(p_, sheet_, s, t);
  if (now == reload_(s, t)) return;
  reloads_.push_back({s, t, reload_(s, t)});
  new_cost_[Component::reload_hg] += now - reload_(s, t);
  reload_(s, t) = now;
}

void Draft::keep() {
  for (std::size_t i = 0; i < touched_.size(); ++i) {
    row_cost_[ix(touched_[i])] = new_rows_[i];
    is_touched_[ix(touched_[i])] = 0;
  }
  cost_ = new_cost_;
  touched_.clear();
  changes_.clear();
  reloads_.clear();
}

void Draft::take_back() {
  for (auto e = changes_.rbegin(); e != changes_.rend(); ++e) sheet_.put(e->member, e->slot, e->before);
  for (auto r = reloads_.rbegin(); r != reloads_.rend(); ++r) reload_(r->station, r->slot) = r->before;
  for (int m : touched_) is_touched_[ix(m)] = 0;
  touched_.clear();
  changes_.clear();
  reloads_.clear();
}

}  // namespace floorwheel
