// SPDX-License-Identifier: GPL-3.0-or-later
// Chains of entries that change together.
#include "scheduler/rotation/moves.h"

#include <algorithm>

namespace floorwheel {

Moves::Moves(const Problem& p, Random& random) : p_(p), random_(random), mark_(ix(p.members), 0) {
  for (int m = 0; m < p.members; ++m)
    if (std::max(p.from, p.first[ix(m)]) <= p.last[ix(m)]) able_.push_back(m);
}

bool Moves::propose(Draft& draft) {
  if (able_.empty()) return false;
  const int m = able_[ix(random_.below(static_cast<int>(able_.size())))];
  const bool misses = draft.row_cost(m)[Component::missed] > p_.forced_missed(m);
  ++mark_now_;
  alone_ = p_.teams[ix(p_.team_of[ix(m)])].size() > 1 && random_.below(2) == 0;
  if (p_.is_repair && draft.row_cost(m)[Component::moved] > 0 && random_.below(2)) return restore(draft, m);
  const int kind = random_.below(16);
  if (misses && kind < 8) return add_visit(draft, m);
  if (kind < 8) return exchange_slots(draft, m, slot_of(draft, m), slot_of(draft, m));
  if (kind < 11) {
    const int other = able_[ix(random_.below(static_cast<int>(able_.size())))];
    return exchange_members(draft, m, other, slot_of(draft, m));
  }
  const auto& list = p_.required[ix(m)];
  const auto some_station = [&] { return list[ix(random_.below(static_cast<int>(list.size())))]; };
  if (kind < 13) return exchange_stations(draft, m, some_station(), some_station());
  if (kind < 15) return replace_visit(draft, m);
  return add_visit(draft, m);
}

int Moves::slot_of(const Draft&, int m) {
  const int begin = std::max(p_.from, p_.first[ix(m)]);
  return begin + random_.below(p_.last[ix(m)] - begin + 1);
}

/// The entry for m and for everybody in m's team who is there and does the same as m; who waits while m works
/// goes on waiting.
void Moves::set(Draft& draft, int m, int t, StationIndex s) {
  const auto& team = p_.teams[ix(p_.team_of[ix(m)])];
  if (team.size() == 1) return draft.set(m, t, s);
  const StationIndex was = draft.sheet().at(m, t);
  for (int mate : team)
    if (mate == m || (!alone_ && p_.present(mate, t) && draft.sheet().at(mate, t) == was &&
                      (s == nowhere || p_.work(mate, s).required)))
      draft.set(mate, t, s);
}

int Moves::somebody_at(const Draft& draft, StationIndex s, int t) {
  int found = -1;
  int seen = 0;
  draft.sheet().each_at(s, t, [&](int m) {
    if (mark_[ix(m)] != mark_now_ && random_.below(++seen) == 0) found = m;
  });
  return found;
}

/// m works in slot t what it worked in u and the other way round; so does everybody in the way.
bool Moves::exchange_slots(Draft& draft, int m, int t, int u) {
  if (t == u || draft.sheet().at(m, t) == draft.sheet().at(m, u)) return false;
  queue_.assign(1, m);
  for (std::size_t i = 0; i < queue_.size(); ++i) {
    const int who = queue_[i];
    if (mark_[ix(who)] == mark_now_) continue;
    for (int mate : p_.teams[ix(p_.team_of[ix(who)])]) mark_[ix(mate)] = mark_now_;
    const StationIndex a = draft.sheet().at(who, t);
    const StationIndex b = draft.sheet().at(who, u);
    if ((b != nowhere && !p_.open(b, t)) || (a != nowhere && !p_.open(a, u))) return false;
    if (!p_.present(who, t) || !p_.present(who, u)) return false;
    for (int mate : p_.teams[ix(p_.team_of[ix(who)])]) {
      const StationIndex was = draft.sheet().at(mate, t);
      const StationIndex will = draft.sheet().at(mate, u);
      if (p_.present(mate, t)) draft.set(mate, t, will);
      if (p_.present(mate, u)) draft.set(mate, u, was);
    }
    for (const auto& [s, slot] : {std::pair(b, t), std::pair(a, u)})
      while (s != nowhere && draft.sheet().room(s, slot) < 0) {
        const int other = somebody_at(draft, s, slot);
        if (other < 0) return false;
        // Once moved, the other leaves this place; what it takes instead is looked at in its turn.
        if (std::find(queue_.begin() + static_cast<std::ptrdiff_t>(i), queue_.end(), other) != queue_.end())
          break;
        queue_.push_back(other);
        if (draft.sheet().room(s, slot) >= -1) break;
      }
  }
  return true;
}

/// a and b change places in slot t, and in every further slot where one of them would visit a station twice.
bool Moves::exchange_members(Draft& draft, int a, int b, int t) {
  if (a == b || p_.team_of[ix(a)] == p_.team_of[ix(b)]) return false;
  int slot = t;
  for (int length = 0; slot >= 0 && length <= p_.slots; ++length) {
    const StationIndex mine = draft.sheet().at(a, slot);
    const StationIndex other = draft.sheet().at(b, slot);
    if (mine == other || !p_.present(a, slot) || !p_.present(b, slot)) return length > 0;
    set(draft, a, slot, other);
    set(draft, b, slot, mine);
    if (p_.laps > 1) return true;
    int next = -1;
    for (int u = p_.from; u < p_.slots && next < 0; ++u) {
      if (u == slot) continue;
      if (other != nowhere && draft.sheet().at(a, u) == other) next = u;
      if (mine != nowhere && draft.sheet().at(b, u) == mine) next = u;
    }
    slot = next;
  }
  return true;
}

/// m visits station b where it visited a and the other way round; so does everybody in the way.
bool Moves::exchange_stations(Draft& draft, int m, StationIndex a, StationIndex b) {
  if (a == b) return false;
  queue_.assign(1, m);
  for (std::size_t i = 0; i < queue_.size(); ++i) {
    const int who = queue_[i];
    if (mark_[ix(who)] == mark_now_) continue;
    for (int mate : p_.teams[ix(p_.team_of[ix(who)])]) mark_[ix(mate)] = mark_now_;
    const auto& works = p_.work(who, a);
    if (!works.required || !p_.work(who, b).required) return false;
    for (int t = std::max(p_.from, p_.first[ix(who)]); t <= p_.last[ix(who)]; ++t) {
      const StationIndex s = draft.sheet().at(who, t);
      if (s != a && s != b) continue;
      const StationIndex to = s == a ? b : a;
      if (!p_.open(to, t)) return false;
      set(draft, who, t, to);
      if (draft.sheet().room(to, t) >= 0) continue;
      const int other = somebody_at(draft, to, t);
      if (other < 0) return false;
      queue_.push_back(other);
    }
  }
  return true;
}

/// A visit that m misses, in a slot where m is free or is made free.
bool Moves::add_visit(Draft& draft, int m) {
  const auto& list = p_.required[ix(m)];
  const int turn = random_.below(static_cast<int>(list.size()));
  StationIndex s = nowhere;
  for (std::size_t i = 0; i < list.size() && s == nowhere; ++i) {
    const StationIndex some = list[(i + ix(turn)) % list.size()];
    if (draft.sheet().visits(m, some) < p_.laps) s = some;
  }
  if (s == nowhere) return false;
  const int begin = std::max(p_.from, p_.first[ix(m)]);
  const int span = p_.last[ix(m)] - begin + 1;
  std::vector<int> free_slots;   // m does not work
  std::vector<int> roomy_slots;  // s has room
  for (int t = begin; t < begin + span; ++t) {
    const bool free = draft.sheet().at(m, t) == nowhere;
    const bool room = draft.sheet().room(s, t) > 0;
    if (free) free_slots.push_back(t);
    if (room) roomy_slots.push_back(t);
    if (free && room) {
      set(draft, m, t, s);
      return true;
    }
  }
  if (free_slots.empty()) return false;
  const auto one_of = [&](const std::vector<int>& list) {
    return list[ix(random_.below(static_cast<int>(list.size())))];
  };
  const int t = !roomy_slots.empty() && random_.below(2) ? one_of(roomy_slots) : begin + random_.below(span);
  if (draft.sheet().at(m, t) != nowhere) {  // what m does there goes into a slot that is free
    if (!exchange_slots(draft, m, t, one_of(free_slots)) || draft.sheet().at(m, t) != nowhere) return false;
  }
  if (draft.sheet().room(s, t) < 1) {  // somebody makes way and may come back later
    ++mark_now_;
    const int other = somebody_at(draft, s, t);
    if (other < 0) return false;
    set(draft, other, t, nowhere);
  }
  set(draft, m, t, s);
  return true;
}

bool Moves::add_visit_at(Draft& draft, int m, StationIndex s, int t, int free_slot, bool alone) {
  ++mark_now_;
  alone_ = alone;
  if (t != free_slot && (!exchange_slots(draft, m, t, free_slot) || draft.sheet().at(m, t) != nowhere))
    return false;
  set(draft, m, t, s);
  return true;
}

/// In one slot m works another station it misses, or nothing.
bool Moves::replace_visit(Draft& draft, int m) {
  const int t = slot_of(draft, m);
  const auto& list = p_.required[ix(m)];
  const StationIndex s = list[ix(random_.below(static_cast<int>(list.size())))];
  const StationIndex was = draft.sheet().at(m, t);
  if (was == s) return false;
  if (draft.sheet().visits(m, s) < p_.laps) {
    if (draft.sheet().room(s, t) < 1) {
      const int other = somebody_at(draft, s, t);
      if (other < 0) return false;
      const bool takes =
          was != nowhere && p_.work(other, was).required && draft.sheet().visits(other, was) < p_.laps;
      set(draft, other, t, takes ? was : nowhere);
    }
    set(draft, m, t, s);
    return true;
  }
  return exchange_slots(draft, m, t, slot_of(draft, m));
}

/// In a repair: m is again where the earlier sheet has it in some slot, by a change with another slot.
bool Moves::restore(Draft& draft, int m) {
  const int begin = std::max(p_.from, p_.first[ix(m)]);
  const int span = p_.last[ix(m)] - begin + 1;
  const int offset = random_.below(span);
  for (int i = 0; i < span; ++i) {
    const int t = begin + (i + offset) % span;
    const StationIndex s = p_.old(m, t);
    if (draft.sheet().at(m, t) == s) continue;
    for (int u = begin; u < begin + span; ++u)
      if (u != t && draft.sheet().at(m, u) == s && p_.old(m, u) != s) return exchange_slots(draft, m, t, u);
    if (s == nowhere || draft.sheet().visits(m, s) >= p_.laps) continue;
    if (draft.sheet().room(s, t) < 1) {
      const int other = somebody_at(draft, s, t);
      if (other < 0) return false;
      set(draft, other, t, nowhere);
    }
    set(draft, m, t, s);
    return true;
  }
  return false;
}

}  // namespace floorwheel
