// SPDX-License-Identifier: GPL-3.0-or-later
// Unlike the network of preflight.h this one has a node for each station and slot, so that its cut can be
// said in stations and slots; and of rule 5 it knows pairs only.
#include "scheduler/rotation/hall_cut.h"

#include <algorithm>

#include "scheduler/rotation/flow.h"
#include "scheduler/rotation/visit_kinds.h"

namespace floorwheel {
namespace {

constexpr std::size_t arcs_most = 60'000;

class HallNetwork {
 public:
  HallNetwork(const Problem& p, const std::vector<VisitKind>& kinds) : p_(p), kinds_(kinds) {
    for (std::size_t k = 0; k < kinds.size(); ++k) flow_.add_node();
    sink_ = flow_.add_node();
    units_ = Grid<int>(p.kinds, p.slots, -1);
    places_ = Grid<int>(p.stations, p.slots, -1);
    for (int e = 0; e < p.kinds; ++e)
      for (int t = 0; t < p.slots; ++t) {
        units_(e, t) = flow_.add_node();
        flow_.join(units_(e, t), sink_, p.units[ix(e)]);
      }
    for (int s = 0; s < p.stations; ++s) {
      scarce_.push_back(-1);
      for (int e : p.takes[ix(s)])
        if (int& kind = scarce_.back(); kind < 0 || p.units[ix(e)] < p.units[ix(kind)]) kind = e;
      for (int t = 0; t < p.slots; ++t) {
        if (p.places(s, t) == 0) continue;
        places_(s, t) = flow_.add_node();
        flow_.join(places_(s, t), scarce_.back() < 0 ? sink_ : units_(scarce_.back(), t), p.places(s, t));
      }
    }
    find_pairs();
    for (int k = 0; k < static_cast<int>(kinds.size()); ++k)
      for (int s = 0; s < p.stations; ++s) {
        const VisitKind& kind = kinds[ix(k)];
        if (kind.room[ix(s)] == 0) continue;
        if (const int gate = gate_of(kind.members.front(), s); gate >= 0) {
          flow_.join(k, gate, kind.room[ix(s)]);
          continue;
        }
        const int visits = flow_.add_node();
        flow_.join(k, visits, kind.room[ix(s)] * kind.count());
        for (int t = kind.begin; t <= kind.last; ++t)
          if (places_(s, t) >= 0) flow_.join(visits, places_(s, t), kind.count());
      }
  }

  /// The part of one level; without members where all beyond it find room.
  HallPart part(int level) {
    HallPart out;
    out.level = level;
    std::vector<int> left_over;
    for (int k = 0; k < static_cast<int>(kinds_.size()); ++k) {
      std::int64_t left = std::max(0, kinds_[ix(k)].beyond - level) * kinds_[ix(k)].count();
      while (left > 0) {
        const std::int64_t sent = flow_.send(k, sink_, left);
        if (sent == 0) break;
        left -= sent;
      }
      if (left > 0) left_over.push_back(k);
    }
    if (left_over.empty()) return out;
    const auto in = flow_.reached(left_over);
    for (std::size_t k = 0; k < kinds_.size(); ++k)
      if (in[k]) out.members.insert(out.members.end(), kinds_[k].members.begin(), kinds_[k].members.end());
    std::sort(out.members.begin(), out.members.end());
    for (int s = 0; s < p_.stations; ++s) {
      HallPart::In cells{s, {}};
      for (int t = 0; t < p_.slots; ++t)
        if (places_(s, t) >= 0 && in[ix(places_(s, t))] &&
            (scarce_[ix(s)] < 0 || !in[ix(units_(scarce_[ix(s)], t))]))
          cells.slots.push_back(t + 1);
      if (!cells.slots.empty()) out.places.push_back(cells);
    }
    for (int e = 0; e < p_.kinds; ++e) {
      HallPart::In cells{e, {}};
      for (int t = 0; t < p_.slots; ++t)
        if (in[ix(units_(e, t))]) cells.slots.push_back(t + 1);
      if (!cells.slots.empty()) out.units.push_back(cells);
    }
    for (const Pair& pair : pairs_)
      if (in[ix(pair.in)] && !in[ix(pair.out)]) out.together.push_back({pair.station, pair.members});
    return out;
  }

 private:
  /// Two held together pass a gate to a station where rule 5 lets fewer of them in than they would like.
  struct Pair {
    int station = 0;
    std::vector<int> members;
    int in = 0, out = 0;  // nodes
  };
  void find_pairs() {
    std::vector<int> kind_of(ix(p_.members), -1);
    for (int k = 0; k < static_cast<int>(kinds_.size()); ++k)
      for (int m : kinds_[ix(k)].members) kind_of[ix(m)] = k;
    for (const std::vector<int>& team : p_.teams) {
      if (team.size() != 2) continue;
      for (int s = 0; s < p_.stations; ++s) {
        std::vector<int> room;
        for (int m : team) room.push_back(kinds_[ix(kind_of[ix(m)])].room[ix(s)]);
        const std::int64_t most = team_room(p_, team, s, room);
        if (most < 0) continue;
        pairs_.push_back({s, team, flow_.add_node(), flow_.add_node()});
        flow_.join(pairs_.back().in, pairs_.back().out, most);
        for (int t = 0; t < p_.slots; ++t)
          if (places_(s, t) >= 0 && (p_.present(team[0], t) || p_.present(team[1], t)))
            flow_.join(pairs_.back().out, places_(s, t), 2);
      }
    }
  }
  [[nodiscard]] int gate_of(int m, int s) const {
    for (const Pair& pair : pairs_)
      if (pair.station == s && (pair.members[0] == m || pair.members[1] == m)) return pair.in;
    return -1;
  }

  const Problem& p_;
  const std::vector<VisitKind>& kinds_;
  Flow flow_;
  int sink_ = 0;
  Grid<int> units_, places_;  // nodes; -1: none
  std::vector<int> scarce_;   // [station] the scarcest equipment it takes, -1: none
  std::vector<Pair> pairs_;
};

/// For classes too large for that: everybody, and the stations that more visits are wanted at than fit.
HallPart full_stations(const Problem& p) {
  HallPart out;
  for (int m = 0; m < p.members; ++m) out.members.push_back(m);
  for (int s = 0; s < p.stations; ++s) {
    HallPart::In cells{s, {}};
    std::int64_t room = 0;
    std::int64_t wanted = 0;
    for (int t = 0; t < p.slots; ++t) {
      room += p.places(s, t);
      if (p.places(s, t) > 0) cells.slots.push_back(t + 1);
    }
    for (int m = 0; m < p.members; ++m) wanted += p.work(m, s).required ? p.laps : 0;
    if (wanted > room && room > 0) out.places.push_back(cells);
  }
  return out;
}

}  // namespace

std::vector<HallPart> hall_parts(const Problem& p, bool squares) {
  const std::vector<VisitKind> kinds = visit_kinds(p);
  if (kinds.size() * ix(p.stations) * ix(p.slots) > arcs_most)
    return squares ? std::vector<HallPart>{} : std::vector<HallPart>{full_stations(p)};
  if (!squares) return {HallNetwork(p, kinds).part(0)};
  std::vector<HallPart> out;
  for (int level = 1; level <= p.slots; ++level) {
    HallPart part = HallNetwork(p, kinds).part(level);
    if (part.members.empty()) break;
    out.push_back(std::move(part));
  }
  return out;
}

}  // namespace floorwheel
