// SPDX-License-Identifier: GPL-3.0-or-later
// The network of visits: members, stations by period, equipment by period; and its cut, part by part.
#include "scheduler/rotation/preflight.h"

#include <algorithm>
#include <functional>
#include <map>
#include <numeric>
#include <set>

#include "scheduler/rotation/flow.h"
#include "scheduler/rotation/visit_kinds.h"

namespace floorwheel {
namespace {

constexpr std::size_t nodes_most = 20'000;  // beyond, stations are counted one by one

/// Slots first..last.
struct Period {
  int first = 0;
  int last = -1;
};

/// What a node stands for, to say so later.
struct Node {
  enum class Is { kind, visits, team_in, team_out, places, units, sink };
  Is is = Is::sink;
  int kind = -1;
  int team = -1;
  int station = -1;
  int equipment = -1;
  int period = -1;
};

class VisitNetwork {
 public:
  explicit VisitNetwork(const Problem& p, const std::vector<VisitKind>& kinds) : p_(p), kinds_(kinds) {
    for (int k = 0; k < static_cast<int>(kinds.size()); ++k) node({Node::Is::kind, k});
    sink_ = node({});
    find_periods();
  }

  /// Members to stations, these to their places in each period, through the scarcest equipment they take;
  /// leaving its others out only weakens the bound.
  void by_stations() {
    if (kinds_.size() * ix(p_.stations) * periods_.size() > nodes_most) periods_ = {{p_.from, p_.slots - 1}};
    std::vector<int> scarce(ix(p_.stations), -1);
    for (int s = 0; s < p_.stations; ++s)
      for (int e : p_.takes[ix(s)])
        if (int& kind = scarce[ix(s)]; kind < 0 || p_.units[ix(e)] < p_.units[ix(kind)]) kind = e;
    std::vector<std::vector<int>> units(ix(p_.kinds));
    for (int e = 0; e < p_.kinds; ++e)
      for (int q = 0; q < periods(); ++q) {
        units[ix(e)].push_back(node({Node::Is::units, -1, -1, -1, e, q}));
        flow_.join(units[ix(e)].back(), sink_, units_in(e, q, scarce));
      }
    std::vector<std::vector<int>> places(ix(p_.stations));
    for (int s = 0; s < p_.stations; ++s)
      for (int q = 0; q < periods(); ++q) {
        places[ix(s)].push_back(node({Node::Is::places, -1, -1, s, -1, q}));
        std::int64_t most = 0;
        for (int t = periods_[ix(q)].first; t <= periods_[ix(q)].last; ++t) most += p_.places(s, t);
        flow_.join(places[ix(s)].back(), scarce[ix(s)] < 0 ? sink_ : units[ix(scarce[ix(s)])][ix(q)], most);
      }
    const auto gates = team_gates(places);
    for (int k = 0; k < kinds(); ++k)
      for (int s = 0; s < p_.stations; ++s)
        if (const int room = kinds_[ix(k)].room[ix(s)]; room > 0) {
          const std::int64_t most = room * kinds_[ix(k)].count();
          if (const auto gate = gates.find({team(k), s}); gate != gates.end())
            flow_.join(k, gate->second, most);
          else
            to_places(k, s, most, places[ix(s)]);
        }
  }

  /// Those with the most visits to come grow first, as long as a path is left: the visits that fit form a
  /// polymatroid, so the largest flow found this way also has the least sum of squares of what is missed.
  VisitFlow run(std::int64_t to_come) {
    VisitFlow out{to_come, 0};
    short_.clear();
    std::map<int, std::map<int, std::int64_t>, std::greater<>> at;  // missed beyond -> kind -> members
    for (int k = 0; k < kinds(); ++k) at[kinds_[ix(k)].beyond][k] = kinds_[ix(k)].count();
    while (!at.empty()) {
      const int beyond = at.begin()->first;
      const auto level = std::move(at.begin()->second);
      at.erase(at.begin());
      for (const auto& [k, members] : level) {
        std::int64_t left = members;
        const bool wants = beyond > kinds_[ix(k)].least;
        while (wants && left > 0) {
          const std::int64_t sent = flow_.send(k, sink_, left);
          if (sent == 0) break;
          left -= sent;
          out.missed -= sent;
        }
        if (wants && left > 0) short_.push_back(k);
        out.uneven += left * beyond * beyond;
        if (left < members) at[beyond - 1][k] += members - left;
      }
    }
    return out;
  }

  /// The cut that run() left, in parts that do not hang together.
  [[nodiscard]] std::vector<VisitCut> cuts() const;

 private:
  friend class CutParts;
  int node(Node what) {
    nodes_.push_back(what);
    return flow_.add_node();
  }
  [[nodiscard]] int kinds() const { return static_cast<int>(kinds_.size()); }
  [[nodiscard]] int periods() const { return static_cast<int>(periods_.size()); }
  /// The team of a kind that is one of a team, else -1.
  [[nodiscard]] int team(int k) const {
    const int team = p_.team_of[ix(kinds_[ix(k)].members.front())];
    return p_.teams[ix(team)].size() > 1 ? team : -1;
  }

  void find_periods() {
    std::set<int> begins{p_.from};
    for (const VisitKind& kind : kinds_)
      for (int t : {kind.begin, kind.last + 1})
        if (t > p_.from && t < p_.slots) begins.insert(t);
    for (auto it = begins.begin(); it != begins.end(); ++it)
      periods_.push_back({*it, std::next(it) == begins.end() ? p_.slots - 1 : *std::next(it) - 1});
  }
  [[nodiscard]] std::int64_t units_in(int e, int q, const std::vector<int>& scarce) const {
    std::int64_t most = 0;
    for (int t = periods_[ix(q)].first; t <= periods_[ix(q)].last; ++t) {
      std::int64_t places = 0;
      for (int s = 0; s < p_.stations; ++s)
        if (scarce[ix(s)] == e) places += p_.places(s, t);
      most += std::min<std::int64_t>(places, p_.units[ix(e)]);
    }
    return most;
  }

  /// No more visits in a period than open slots of it while the members are there.
  void to_places(int k, int s, std::int64_t most, const std::vector<int>& places) {
    std::vector<std::pair<int, std::int64_t>> arcs;
    for (int q = 0; q < periods(); ++q) {
      std::int64_t open = 0;
      for (int t = std::max(kinds_[ix(k)].begin, periods_[ix(q)].first);
           t <= std::min(kinds_[ix(k)].last, periods_[ix(q)].last); ++t)
        open += p_.places(s, t) > 0 ? 1 : 0;
      if (open > 0) arcs.emplace_back(places[ix(q)], open * kinds_[ix(k)].count());
    }
    int from = k;
    if (arcs.size() > 1) {
      from = node({Node::Is::visits, k, -1, s});
      flow_.join(k, from, most);
    }
    for (const auto& [to, open] : arcs) flow_.join(from, to, std::min(open, most));
  }

  /// (team, station) to the gate its members pass together, where rule 5 lets fewer of them in.
  std::map<std::pair<int, int>, int> team_gates(const std::vector<std::vector<int>>& places) {
    std::map<std::pair<int, int>, int> gates;
    std::vector<int> kind_of(ix(p_.members), -1);
    for (int k = 0; k < kinds(); ++k)
      if (team(k) >= 0) kind_of[ix(kinds_[ix(k)].members.front())] = k;
    for (int i = 0; i < static_cast<int>(p_.teams.size()); ++i) {
      const auto& members = p_.teams[ix(i)];
      if (members.size() < 2) continue;
      for (int s = 0; s < p_.stations; ++s) {
        std::vector<int> room;
        for (int m : members) room.push_back(kinds_[ix(kind_of[ix(m)])].room[ix(s)]);
        const std::int64_t most = team_room(p_, members, s, room);
        if (most < 0) continue;
        const int in = node({Node::Is::team_in, -1, i, s});
        const int out = node({Node::Is::team_out, -1, i, s});
        flow_.join(in, out, most);
        for (int q = 0; q < periods(); ++q) flow_.join(out, places[ix(s)][ix(q)], most);
        gates[{i, s}] = in;
      }
    }
    return gates;
  }

  const Problem& p_;
  const std::vector<VisitKind>& kinds_;
  std::vector<Period> periods_;
  std::vector<Node> nodes_;
  Flow flow_;
  int sink_ = 0;
  std::vector<int> short_;  // kinds that could not send all
};

/// What is reached from those who are short falls into parts; a part holds the full arcs out of it. Members
/// whose slots are as many as their visits bind nothing together: each of their visits stands alone.
class CutParts {
 public:
  explicit CutParts(const VisitNetwork& n)
      : n_(n), in_(n.flow_.reached(n.short_)), parent_(n.nodes_.size() + ix(n.p_.stations)) {
    std::iota(parent_.begin(), parent_.end(), 0);
  }

  std::vector<VisitCut> list() {
    for (int v = 0; v < nodes(); ++v)
      if (in_[ix(v)]) bind(v);
    for (int v = 0; v < nodes(); ++v)
      if (in_[ix(v)]) count(v);
    std::vector<VisitCut> out;
    for (auto& [root, part] : parts_) {
      if (part.cut.required <= part.cut.room) continue;
      part.cut.members.assign(part.members.begin(), part.members.end());
      part.cut.stations.assign(part.stations.begin(), part.stations.end());
      part.cut.kinds.assign(part.kinds.begin(), part.kinds.end());
      part.cut.slots.assign(part.slots.begin(), part.slots.end());
      if (part.team) part.cut.why = VisitCut::Why::team;
      out.push_back(std::move(part.cut));
    }
    return out;
  }

 private:
  struct Part {
    VisitCut cut;
    std::set<int> members, stations, kinds, slots;
    bool team = false;
  };

  [[nodiscard]] int nodes() const { return static_cast<int>(n_.nodes_.size()); }
  int root(int v) { return parent_[ix(v)] == v ? v : parent_[ix(v)] = root(parent_[ix(v)]); }
  void unite(int a, int b) { parent_[ix(root(a))] = root(b); }

  /// Whether each visit the kind wants has its slot, so that nothing but room is short.
  [[nodiscard]] bool has_slots(int k) const {
    const VisitKind& kind = n_.kinds_[ix(k)];
    return std::accumulate(kind.room.begin(), kind.room.end(), 0) <= kind.supply();
  }
  static bool is_kind(const Node& v) { return v.is == Node::Is::kind; }

  void bind(int v) {
    const Node& what = n_.nodes_[ix(v)];
    if (what.is == Node::Is::places || what.is == Node::Is::visits) unite(v, nodes() + what.station);
    if (is_kind(what) && has_slots(what.kind)) return;
    for (const Flow::Arc& arc : n_.flow_.arcs(v))
      if (arc.most > 0 && in_[ix(arc.to)]) unite(v, arc.to);
  }

  void count(int v) {
    const Node& what = n_.nodes_[ix(v)];
    if (is_kind(what)) {
      // A kind that is bound by its slots asks for all it can work; else for each visit where it goes.
      const VisitKind& kind = n_.kinds_[ix(what.kind)];
      const bool alone = has_slots(what.kind);
      if (!alone) required(part(v), kind, kind.supply() * kind.count());
      for (const Flow::Arc& arc : n_.flow_.arcs(v)) {
        if (arc.most == 0) continue;
        if (alone && in_[ix(arc.to)]) required(part(arc.to), kind, arc.most);
        if (!alone && !in_[ix(arc.to)]) part(v).cut.required -= arc.most;  // these fit elsewhere
      }
      return;
    }
    Part& here = part(v);
    for (const Flow::Arc& arc : n_.flow_.arcs(v))
      if (arc.most > 0 && !in_[ix(arc.to)]) here.cut.room += arc.most;
    if (what.station >= 0) here.stations.insert(what.station);
    if (what.is == Node::Is::team_in) here.team = true;
    if (what.is == Node::Is::units) here.kinds.insert(what.equipment);
    if (what.period < 0) return;
    for (int t = n_.periods_[ix(what.period)].first; t <= n_.periods_[ix(what.period)].last; ++t)
      if (what.station < 0 || n_.p_.places(what.station, t) > 0) here.slots.insert(t);
  }

  static void required(Part& part, const VisitKind& kind, std::int64_t visits) {
    part.cut.required += visits;
    part.members.insert(kind.members.begin(), kind.members.end());
  }
  Part& part(int v) { return parts_[root(v)]; }

  const VisitNetwork& n_;
  const std::vector<std::uint8_t> in_;
  std::vector<int> parent_;
  std::map<int, Part> parts_;
};

std::vector<VisitCut> VisitNetwork::cuts() const { return CutParts(*this).list(); }

/// Members who have the slots, but not while the stations are open.
void add_closed(const Problem& p, const std::vector<VisitKind>& kinds, std::vector<VisitCut>& cuts) {
  for (const VisitKind& kind : kinds) {
    const int short_of = kind.supply() - std::accumulate(kind.room.begin(), kind.room.end(), 0);
    if (short_of <= 0) continue;
    VisitCut cut{VisitCut::Why::closed, kind.members, {}, {}, {}, short_of * kind.count(), 0};
    for (int s : p.required[ix(kind.members.front())]) {
      int open = 0;
      for (int t = kind.begin; t <= kind.last; ++t) open += p.places(s, t) > 0 ? 1 : 0;
      if (open < p.laps) cut.stations.push_back(s);
    }
    cuts.push_back(std::move(cut));
  }
}

/// For more kinds than a flow counts at once: station by station, and places in all.
VisitBound plain_count(const Problem& p, const std::vector<VisitKind>& kinds, std::int64_t to_come) {
  VisitBound out;
  std::int64_t can = 0;
  for (const VisitKind& kind : kinds) can += std::int64_t{kind.supply()} * kind.count();
  std::int64_t over = 0;
  std::int64_t places = 0;
  for (int s = 0; s < p.stations; ++s) {
    VisitCut cut;
    cut.stations = {s};
    for (const VisitKind& kind : kinds)
      if (kind.room[ix(s)] > 0) {
        cut.required += kind.room[ix(s)] * kind.count();
        cut.members.insert(cut.members.end(), kind.members.begin(), kind.members.end());
      }
    for (int t = p.from; t < p.slots; ++t)
      if (const int here = p.places(s, t); here > 0) {
        cut.room += here;
        cut.slots.push_back(t);
      }
    places += cut.room;
    if (cut.required <= cut.room) continue;
    over += cut.required - cut.room;
    std::sort(cut.members.begin(), cut.members.end());
    out.cuts.push_back(std::move(cut));
  }
  out.flow.missed = std::max(to_come - std::min(places, can), over);
  if (to_come - can > over) out.cuts.clear();
  return out;
}

VisitBound bound(const Problem& p, bool with_cuts) {
  const std::vector<VisitKind> kinds = visit_kinds(p);
  const std::int64_t to_come = visits_to_come(p);
  if (kinds.size() * ix(p.stations) > nodes_most) return plain_count(p, kinds, to_come);
  VisitNetwork network(p, kinds);
  network.by_stations();
  VisitBound out;
  out.flow = network.run(to_come);
  if (!with_cuts) return out;
  out.cuts = network.cuts();
  add_closed(p, kinds, out.cuts);
  return out;
}

}  // namespace

VisitFlow bound_visits(const Problem& p) { return bound(p, false).flow; }
VisitBound cut_visits(const Problem& p) { return bound(p, true); }

}  // namespace floorwheel
