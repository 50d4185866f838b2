// SPDX-License-Identifier: GPL-3.0-or-later
// The flow of visits, and what bounds make of an answer.
#include "scheduler/rotation/bounds.h"

#include <algorithm>
#include <functional>
#include <map>
#include <tuple>

#include "scheduler/rotation/engine.h"

namespace floorwheel {
namespace {

/// Members alike in window, list and history are one kind with a number. Arcs: kind to station (laps a
/// member, less what history has used up), station to its places over the open slots, through the scarcest
/// equipment it takes; leaving its others out only weakens the bound.
class Visits {
 public:
  explicit Visits(const Problem& p) : p_(p) {
    for (int m = 0; m < p.members; ++m) group(m);
    const int stations_at = static_cast<int>(kinds_.size());
    const int equipment_at = stations_at + p.stations;
    sink_ = equipment_at + p.kinds;
    arcs_of_.resize(ix(sink_ + 1));
    for (int k = 0; k < stations_at; ++k)
      for (int s = 0; s < p.stations; ++s)
        if (kinds_[ix(k)].room[ix(s)] > 0)
          join(k, stations_at + s, std::int64_t{kinds_[ix(k)].room[ix(s)]} * kinds_[ix(k)].members);
    for (int s = 0; s < p.stations; ++s) {
      std::int64_t most = 0;
      for (int t = p.from; t < p.slots; ++t) most += p.places(s, t);
      int scarce = -1;
      for (int e : p.takes[ix(s)])
        if (scarce < 0 || p.units[ix(e)] < p.units[ix(scarce)]) scarce = e;
      join(stations_at + s, scarce < 0 ? sink_ : equipment_at + scarce, most);
    }
    for (int e = 0; e < p.kinds; ++e)
      join(equipment_at + e, sink_, std::int64_t{p.units[ix(e)]} * (p.slots - p.from));
  }

  /// Those with the most visits to come grow first, as long as a path is left: the visits that fit form a
  /// polymatroid, so the largest flow found this way also has the least sum of squares of what is missed.
  VisitFlow run() {
    VisitFlow out;
    out.missed = wanted_;
    std::map<int, std::map<int, std::int64_t>, std::greater<>> at;  // missed beyond -> kind -> members
    for (int k = 0; k < static_cast<int>(kinds_.size()); ++k)
      at[kinds_[ix(k)].beyond][k] = kinds_[ix(k)].members;
    while (!at.empty()) {
      const int beyond = at.begin()->first;
      const auto level = std::move(at.begin()->second);
      at.erase(at.begin());
      for (const auto& [k, members] : level) {
        std::int64_t left = members;
        if (beyond > kinds_[ix(k)].least)
          while (left > 0) {
            const std::int64_t sent = augment(k, left);
            if (sent == 0) break;
            left -= sent;
            out.missed -= sent;
          }
        out.uneven += left * beyond * beyond;
        if (left < members) at[beyond - 1][k] += members - left;
      }
    }
    return out;
  }

  /// More kinds than this would take long; the plain count is used instead.
  [[nodiscard]] bool small() const { return kinds_.size() * ix(p_.stations) <= 20'000; }

  [[nodiscard]] VisitFlow plain_count() const {
    std::int64_t places = 0;
    for (int s = 0; s < p_.stations; ++s)
      for (int t = p_.from; t < p_.slots; ++t) places += p_.places(s, t);
    std::int64_t can = 0;
    for (const Kind& kind : kinds_) can += std::int64_t{kind.beyond - kind.least} * kind.members;
    return {wanted_ - std::min(places, can), 0};
  }

 private:
  struct Kind {
    std::vector<int> room;  // [station] visits a member can still make
    int beyond = 0;         // missed beyond the window's, if nothing more is worked
    int least = 0;          // and if all is worked that the window lets
    int members = 0;
  };
  struct Arc {
    int to = 0;
    std::int64_t left = 0;
    std::size_t back = 0;
  };

  void group(int m) {
    Kind kind;
    kind.room.assign(ix(p_.stations), 0);
    const int begin = std::max(p_.from, p_.first[ix(m)]);
    for (int s : p_.required[ix(m)]) kind.room[ix(s)] = p_.laps;
    int past = 0;
    for (int t = 0; t < p_.from; ++t)
      if (const StationIndex s = p_.history(m, t); s != nowhere && p_.work(m, s).required) {
        ++past;
        kind.room[ix(s)] = std::max(0, kind.room[ix(s)] - 1);
      }
    for (int s : p_.required[ix(m)]) {  // no more visits than open slots while m is present
      int slots_open = 0;
      for (int t = begin; t <= p_.last[ix(m)]; ++t) slots_open += p_.places(s, t) > 0 ? 1 : 0;
      kind.room[ix(s)] = std::min(kind.room[ix(s)], slots_open);
    }
    wanted_ += p_.visits_wanted(m) - past;
    const int slots_left = std::max(0, p_.last[ix(m)] - begin + 1);
    kind.beyond = p_.visits_wanted(m) - past - p_.forced_missed(m);
    kind.least = kind.beyond - std::clamp(p_.visits_wanted(m) - past, 0, slots_left);
    const auto [it, is_new] =
        index_.try_emplace(std::tuple(kind.room, kind.beyond, kind.least), static_cast<int>(kinds_.size()));
    if (is_new) kinds_.push_back(std::move(kind));
    ++kinds_[ix(it->second)].members;
  }

  void join(int from, int to, std::int64_t most) {
    arcs_of_[ix(from)].push_back({to, most, arcs_of_[ix(to)].size()});
    arcs_of_[ix(to)].push_back({from, 0, arcs_of_[ix(from)].size() - 1});
  }

  /// Sends up to `most` visits along one path from a kind to the sink, found breadth first.
  std::int64_t augment(int from, std::int64_t most) {
    std::vector<std::pair<int, std::size_t>> came(arcs_of_.size(), {-1, 0});
    std::vector<int> queue{from};
    came[ix(from)] = {from, 0};
    for (std::size_t head = 0; head < queue.size() && came[ix(sink_)].first < 0; ++head) {
      const auto& arcs = arcs_of_[ix(queue[head])];
      for (std::size_t a = 0; a < arcs.size(); ++a) {
        if (arcs[a].left == 0 || came[ix(arcs[a].to)].first >= 0) continue;
        came[ix(arcs[a].to)] = {queue[head], a};
        queue.push_back(arcs[a].to);
      }
    }
    if (came[ix(sink_)].first < 0) return 0;
    std::int64_t amount = most;
    for (int v = sink_; v != from; v = came[ix(v)].first)
      amount = std::min(amount, arcs_of_[ix(came[ix(v)].first)][came[ix(v)].second].left);
    for (int v = sink_; v != from; v = came[ix(v)].first) {
      Arc& arc = arcs_of_[ix(came[ix(v)].first)][came[ix(v)].second];
      arc.left -= amount;
      arcs_of_[ix(v)][arc.back].left += amount;
    }
    return amount;
  }

  const Problem& p_;
  std::map<std::tuple<std::vector<int>, int, int>, int> index_;
  std::vector<Kind> kinds_;
  std::int64_t wanted_ = 0;
  std::vector<std::vector<Arc>> arcs_of_;
  int sink_ = 0;
};

}  // namespace

VisitFlow bound_visits(const Problem& p) {
  Visits visits(p);
  return visits.small() ? visits.run() : visits.plain_count();
}

void prove(const Problem& p, Found& found) {
  const std::vector<Component> order = ranking(p);
  const auto raise = [&](Component c, std::int64_t to) { found.bound[c] = std::max(found.bound[c], to); };
  const auto meets = [&](Component c) { return found.cost[c] == found.bound[c]; };
  const VisitFlow flow = bound_visits(p);
  raise(Component::missed, flow.missed);
  if (found.cost[Component::missed] == flow.missed) raise(Component::uneven, flow.uneven);
  if (p.from == 0) {
    if (meets(Component::missed) && found.cost[Component::uneven] == 0) {
      raise(Component::back_to_back, bound_back_to_back(p));
      if (found.style == Style::ring && found.bad_joints > 0 && found.cost[Component::missed] == 0)
        raise(Component::back_to_back, bound_on_ring(p, found.bad_joints));
    }
  } else {
    const Cost past = price_history(p);
    for (Component c : order)
      if (c != Component::missed && c != Component::uneven && c != Component::moved) raise(c, past[c]);
  }
  if (p.is_repair) {  // not kept from before: the second holds for this `missed` and `uneven` only
    std::int64_t& moved = found.bound[Component::moved];
    moved = bound_moved(p);
    if (moved < found.cost[Component::moved])
      moved = std::max(
          moved, bound_moved_by_shares(p, found.cost[Component::missed], found.cost[Component::uneven]));
  }
  for (int i = 0; i < found.exhausted; ++i) raise(order[ix(i)], found.cost[order[ix(i)]]);
  found.proven = 0;
  for (Component c : order) {
    if (!meets(c)) break;
    ++found.proven;
  }
}

}  // namespace floorwheel
