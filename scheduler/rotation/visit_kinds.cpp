// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/visit_kinds.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace floorwheel {
namespace {

VisitKind kind_of(const Problem& p, int m) {
  VisitKind kind;
  kind.room.assign(ix(p.stations), 0);
  kind.begin = std::max(p.from, p.first[ix(m)]);
  kind.last = p.last[ix(m)];
  for (int s : p.required[ix(m)]) kind.room[ix(s)] = p.laps;
  for (int t = 0; t < p.from; ++t)
    if (const StationIndex s = p.history(m, t); s != nowhere && p.work(m, s).required)
      kind.room[ix(s)] = std::max(0, kind.room[ix(s)] - 1);
  for (int s : p.required[ix(m)]) {  // no more visits than open slots while m is present
    int open = 0;
    for (int t = kind.begin; t <= kind.last; ++t) open += p.places(s, t) > 0 ? 1 : 0;
    kind.room[ix(s)] = std::min(kind.room[ix(s)], open);
  }
  const int to_come = p.visits_wanted(m) - p.visits_made(m);
  kind.beyond = to_come - p.forced_missed(m);
  kind.least = kind.beyond - std::clamp(to_come, 0, std::max(0, kind.last - kind.begin + 1));
  return kind;
}

bool works_before(const Problem& p, int m, int s) {
  for (int t = 0; t < p.from; ++t)
    if (p.history(m, t) == s) return true;
  return false;
}

/// Two who are held together: one of them may go alone where the other never goes, or each while the other
/// is away.
std::int64_t pair_room(const Problem& p, int a, int b, int s, int room_a, int room_b) {
  int alone_a = 0;
  int alone_b = 0;
  for (int t = p.from; t < p.slots; ++t) {
    if (p.places(s, t) == 0) continue;
    if (p.present(a, t) && p.present(b, t)) {
      if (p.places(s, t) >= 2) return -1;
      continue;
    }
    alone_a += p.present(a, t) ? 1 : 0;
    alone_b += p.present(b, t) ? 1 : 0;
  }
  const int only_a = works_before(p, b, s) ? 0 : room_a;
  const int only_b = works_before(p, a, s) ? 0 : room_b;
  return std::max({only_a, only_b, std::min(room_a, alone_a) + std::min(room_b, alone_b)});
}

}  // namespace

std::int64_t team_room(const Problem& p, const std::vector<int>& team, int s, const std::vector<int>& room) {
  std::int64_t sum = 0;
  std::vector<int> who;  // of the team, those who may still go there
  for (std::size_t i = 0; i < team.size(); ++i)
    if (room[i] > 0) {
      sum += room[i];
      who.push_back(static_cast<int>(i));
    }
  if (who.size() < 2) return -1;
  std::int64_t most = 0;
  if (team.size() == 2) {
    most = pair_room(p, team[0], team[1], s, room[0], room[1]);
  } else {
    // A larger team, all there from the same slot to the same slot: those who go there and are mates go at
    // once, so not all can go; of mates with each other, as many as there are places.
    int places = 0;
    bool mates = true;
    for (std::size_t i = 1; i < team.size(); ++i)
      if (p.first[ix(team[i])] != p.first[ix(team[0])] || p.last[ix(team[i])] != p.last[ix(team[0])])
        return -1;
    for (int t = std::max(p.from, p.first[ix(team[0])]); t <= p.last[ix(team[0])]; ++t)
      places = std::max(places, p.places(s, t));
    if (who.size() < team.size() || places >= static_cast<int>(team.size())) return -1;
    for (int a : team)
      for (int b : team) {
        const auto& list = p.mates[ix(a)];
        mates = mates && (a == b || std::find(list.begin(), list.end(), b) != list.end());
      }
    const int go = mates ? places : static_cast<int>(team.size()) - 1;
    most = std::int64_t{go} * *std::max_element(room.begin(), room.end());
  }
  return most < 0 || most >= sum ? -1 : most;
}

std::vector<VisitKind> visit_kinds(const Problem& p) {
  std::vector<VisitKind> kinds;
  std::map<std::tuple<std::vector<int>, int, int, int, int>, int> index;
  for (int m = 0; m < p.members; ++m) {
    VisitKind kind = kind_of(p, m);
    if (!p.mates[ix(m)].empty()) {
      kind.members.push_back(m);
      kinds.push_back(std::move(kind));
      continue;
    }
    const auto [it, is_new] =
        index.try_emplace(std::tuple(kind.room, kind.begin, kind.last, kind.beyond, kind.least),
                          static_cast<int>(kinds.size()));
    if (is_new) kinds.push_back(std::move(kind));
    kinds[ix(it->second)].members.push_back(m);
  }
  return kinds;
}

std::int64_t visits_to_come(const Problem& p) {
  std::int64_t sum = 0;
  for (int m = 0; m < p.members; ++m) sum += p.visits_wanted(m) - p.visits_made(m);
  return sum;
}

}  // namespace floorwheel
