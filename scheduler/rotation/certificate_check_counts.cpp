// SPDX-License-Identifier: GPL-3.0-or-later
// Claims that are settled by counting: Hall's condition (P. Hall 1935) for visits and the room for them, and
// a majority of one group in a list.
#include <algorithm>
#include <map>
#include <set>

#include "scheduler/rotation/certificate_facts.h"

namespace floorwheel::certify {
namespace {

using Cells = std::vector<std::vector<std::uint8_t>>;  // [station or kind][slot]

/// Marks what a part covers; false: an entry does not exist or stands twice.
bool mark(const std::vector<HallPart::In>& list, Cells& cells) {
  for (const HallPart::In& in : list)
    for (int t : in.slots) {
      if (in.what < 0 || in.what >= static_cast<int>(cells.size())) return false;
      auto& row = cells[at(in.what)];
      if (t < 1 || t > static_cast<int>(row.size()) || row[at(t - 1)]) return false;
      row[at(t - 1)] = 1;
    }
  return true;
}

/// Visits of two held together at s, both counted: where no slot has room for both while both are there, one
/// goes alone and the other never does, or each while the other is away. Nothing: no such pair.
std::optional<std::int64_t> pair_at(const Facts& f, const HallPart::Together& pair) {
  if (pair.members.size() != 2 || pair.station < 0 || pair.station >= f.stations) return std::nullopt;
  const int a = pair.members[0];
  const int b = pair.members[1];
  for (int m : {a, b})
    if (m < 0 || m >= static_cast<int>(f.people.size())) return std::nullopt;
  const std::string& one = f.spec.members[at(a)].id;
  const std::string& other = f.spec.members[at(b)].id;
  const bool held =
      a != b && std::any_of(f.spec.pairs.begin(), f.spec.pairs.end(), [&](const PairSpec& p) {
        return p.rule == PairRule::together && ((p.a == one && p.b == other) || (p.a == other && p.b == one));
      });
  if (!held) return std::nullopt;
  const std::int64_t laps = f.spec.laps;
  const auto there = [&](int m, int t) { return f.people[at(m)].there(t); };
  std::int64_t open_a = 0, open_b = 0, alone_a = 0, alone_b = 0;
  for (int t = 0; t < f.slots; ++t) {
    if (f.places(pair.station, t) == 0) continue;
    const bool both = there(a, t) && there(b, t);
    if (both && f.places(pair.station, t) >= 2) return 2 * laps;
    open_a += there(a, t) ? 1 : 0;
    open_b += there(b, t) ? 1 : 0;
    alone_a += there(a, t) && !both ? 1 : 0;
    alone_b += there(b, t) && !both ? 1 : 0;
  }
  return std::max(
      {std::min(laps, open_a), std::min(laps, open_b), std::min(laps, alone_a) + std::min(laps, alone_b)});
}

/// What m can work outside the places and units covered and the stations in `apart`, counted by themselves:
/// no station more often than laps, no slot twice.
std::int64_t elsewhere(const Facts& f, const Person& p, const Cells& places, const Cells& units,
                       const std::set<int>& apart) {
  std::int64_t by_station = 0;
  std::set<int> slots;
  for (int s : p.list) {
    if (apart.contains(s)) continue;
    std::int64_t open = 0;
    for (int t = p.first; t <= p.last; ++t) {
      if (f.places(s, t) == 0 || places[at(s)][at(t)]) continue;
      const auto covered = [&](int e) { return units[at(e)][at(t)] != 0; };
      if (std::any_of(f.takes[at(s)].begin(), f.takes[at(s)].end(), covered)) continue;
      ++open;
      slots.insert(t);
    }
    by_station += std::min<std::int64_t>(f.spec.laps, open);
  }
  return std::min(by_station, static_cast<std::int64_t>(slots.size()));
}

/// The least sum over the part's members of max(0, u - level); below 0 where the part says nothing.
std::optional<std::int64_t> least_beyond(const Facts& f, const HallPart& part) {
  Cells places(at(f.stations), std::vector<std::uint8_t>(at(f.slots), 0));
  Cells units(at(f.kinds), std::vector<std::uint8_t>(at(f.slots), 0));
  if (part.level < 0 || part.level > f.slots || !mark(part.places, places) || !mark(part.units, units))
    return std::nullopt;
  std::int64_t sum = 0;
  std::map<int, std::set<int>> apart;  // member -> stations of pairs
  for (const HallPart::Together& pair : part.together) {
    const auto room = pair_at(f, pair);
    if (!room) return std::nullopt;
    sum -= *room;
    for (int m : pair.members) apart[m].insert(pair.station);
  }
  std::set<int> seen;
  for (int m : part.members) {
    if (m < 0 || m >= static_cast<int>(f.people.size()) || !seen.insert(m).second) return std::nullopt;
    const Person& p = f.people[at(m)];
    sum += f.wanted(p) - f.forced(p) - part.level - elsewhere(f, p, places, units, apart[m]);
  }
  for (int s = 0; s < f.stations; ++s)
    for (int t = 0; t < f.slots; ++t) sum -= places[at(s)][at(t)] ? f.places(s, t) : 0;
  for (int e = 0; e < f.kinds; ++e)
    for (int t = 0; t < f.slots; ++t) sum -= units[at(e)][at(t)] ? f.spec.equipment[at(e)].units : 0;
  return sum;
}

}  // namespace

/// u² = u + 2 · (the sum over j >= 1 of max(0, u - j)), so levels add up to the squares.
ClaimVerdict check_hall(const Facts& f, const Certificate& all, const Claim& claim) {
  if (claim.component != Component::missed && claim.component != Component::uneven)
    return {Verdict::fails, "a hall proof is of missed or uneven only"};
  const bool squares = claim.component == Component::uneven;
  std::int64_t least = squares ? all.cost[Component::missed] - f.forced() : f.forced();
  if (squares && least < 0) return {Verdict::fails, "no rotation misses as few as the cost says"};
  std::set<int> levels;
  for (const HallPart& part : claim.proof.hall) {
    const auto beyond = least_beyond(f, part);
    if (!beyond)
      return {Verdict::fails, "a member, station, slot or level of it does not exist or stands twice"};
    if (!levels.insert(part.level).second) return {Verdict::fails, "a level stands twice"};
    if (squares != (part.level > 0)) return {Verdict::fails, "a level that says nothing of this component"};
    least += std::max<std::int64_t>(0, *beyond) * (squares ? 2 : 1);
  }
  return reached(claim, least);
}

/// With k of a list of n sharing a group and v visits, at least v - L(n - k) are of the group, and between
/// two of them lies one of the at most L(n - k) others, or a slot not worked, or nothing: a back-to-back.
ClaimVerdict check_majority(const Facts& f, const Certificate& all, const Claim& claim) {
  if (claim.component != Component::back_to_back)
    return {Verdict::fails, "a majority proves back_to_back only"};
  if (all.cost[Component::missed] != f.forced())
    return {Verdict::fails, "a majority says nothing where visits are missed that no window forces"};
  std::int64_t sum = 0;
  for (const Person& p : f.people) {
    const std::int64_t visits = f.wanted(p) - f.forced(p);
    std::int64_t most = 0;
    for (int g = 0; g < group_count; ++g) {
      std::int64_t others = 0;
      for (int s : p.list) others += (p.primary[at(s)] >> g & 1U) ? 0 : f.spec.laps;
      most = std::max(most, visits - 2 * others - 1 - (p.slots() - visits));
    }
    sum += most;
  }
  return reached(claim, sum);
}

}  // namespace floorwheel::certify
