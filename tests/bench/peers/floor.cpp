// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/peers/floor.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>

#include "tests/support/builders.h"
#include "tests/support/tiny_cases.h"

namespace floorwheel::peers {
namespace {

constexpr int groups_in_use = 9;

std::size_t ix(int i) { return static_cast<std::size_t>(i); }

GroupSet some_groups(tiny::Draw& d) {
  GroupSet out{static_cast<Group>(d.below(groups_in_use))};
  if (d.one_in(2)) out.insert(static_cast<Group>(d.below(groups_in_use)));
  return out;
}

/// Groups along the hidden ring: drawn until each station differs from the one before, the last also from
/// the first.
std::vector<GroupSet> groups_on_a_ring(tiny::Draw& d, int stations) {
  std::vector<GroupSet> out;
  while (static_cast<int>(out.size()) < stations) {
    const GroupSet next = some_groups(d);
    const bool last = static_cast<int>(out.size()) + 1 == stations;
    if (!out.empty() && (out.back().meets(next) || (last && out.front().meets(next)))) continue;
    out.push_back(next);
  }
  return out;
}

std::vector<int> shuffled(tiny::Draw& d, int n) {
  std::vector<int> out;
  for (int i = 0; i < n; ++i) out.insert(out.begin() + d.below(i + 1), i);
  return out;
}

const Exercise& exercise_at(const ClassSpec& c, std::size_t s) {
  return c.exercises.at(c.stations[s].exercise);
}

void check_regular(const ClassSpec& c) {
  const auto refuse = [](const std::string& what) { throw std::invalid_argument("not regular: " + what); };
  if (c.laps != 1 || !c.pairs.empty() || !c.breaks.empty()) refuse("laps, pairs or breaks");
  if (c.stations.empty() || c.members.empty()) refuse("nothing there");
  for (const StationSpec& s : c.stations)
    if (s.capacity != c.stations[0].capacity || !s.closed.empty() || !s.equipment.empty()) refuse(s.id);
  MemberSpec first = c.members[0];
  if (2 * c.change_s + c.work_s < c.recovery_s[static_cast<std::size_t>(first.level)]) refuse("short rests");
  if (first.present != SlotRange{} || !first.excluded_groups.empty() || !first.excluded_features.empty() ||
      !first.excluded_exercises.empty() || first.required || !first.loads_hg.empty())
    refuse(first.id);
  for (const MemberSpec& m : c.members) {
    first.id = m.id;
    first.shown_as = m.shown_as;
    if (m != first) refuse(m.id);
  }
}

}  // namespace

std::string name_of(const Size& z) {
  return std::to_string(z.members) + "x" + std::to_string(z.stations) + "x" + std::to_string(z.slots) + " c" +
         std::to_string(z.capacity);
}

ClassSpec regular_class(const Size& z, std::uint64_t seed, Layout layout) {
  tiny::Draw d(seed);
  ClassSpec c;
  c.name = name_of(z);
  const std::vector<GroupSet> primary = groups_on_a_ring(d, z.stations);
  const std::vector<int> ring = shuffled(d, z.stations);
  const std::vector<int> spots = shuffled(d, z.stations);
  for (int s = 0; s < z.stations; ++s) {
    const GroupSet own = primary[ix(ring[ix(s)])];
    Group assisting{};
    do assisting = static_cast<Group>(d.below(groups_in_use));
    while (own.contains(assisting));
    const bool row = layout == Layout::in_a_row;
    const int x = row ? 100 * spots[ix(s)] : d.below(1200);
    const int y = row ? 0 : d.below(800);
    build::station(c, "S" + std::to_string(s), own, x, y, {assisting}).capacity = z.capacity;
  }
  for (int m = 0; m < z.members; ++m) build::member(c, "m" + std::to_string(m), Level::novice);
  return c;
}

Floor floor_of(const ClassSpec& c, int slots) {
  check_regular(c);
  const std::size_t n = c.stations.size();
  Floor f;
  f.size = {static_cast<int>(c.members.size()), static_cast<int>(n), slots, c.stations[0].capacity};
  f.clash.assign(n, std::vector<bool>(n));
  f.assist = f.clash;
  f.walk.assign(n, std::vector<int>(n));
  int unit = 0;
  for (std::size_t a = 0; a < n; ++a)
    for (std::size_t b = 0; b < n; ++b) {
      const Exercise& one = exercise_at(c, a);
      const Exercise& other = exercise_at(c, b);
      f.clash[a][b] = one.primary.meets(other.primary);
      f.assist[a][b] =
          !f.clash[a][b] && (one.primary.meets(other.assisting) || other.primary.meets(one.assisting));
      f.walk[a][b] = static_cast<int>(std::lround(
          std::hypot(c.stations[a].x_cm - c.stations[b].x_cm, c.stations[a].y_cm - c.stations[b].y_cm)));
      unit = std::gcd(unit, f.walk[a][b]);
    }
  f.walk_unit_cm = std::max(1, unit);
  for (auto& row : f.walk)
    for (int& w : row) w /= f.walk_unit_cm;
  for (int g = 0; g < group_count; ++g) {
    std::vector<int> of_group;
    for (std::size_t s = 0; s < n; ++s)
      if (exercise_at(c, s).primary.contains(static_cast<Group>(g))) of_group.push_back(static_cast<int>(s));
    if (of_group.size() > 1) f.groups.push_back(of_group);
  }
  return f;
}

Weights weights_of(const Floor& f) {
  int longest = 0;
  for (const auto& row : f.walk) longest = std::max(longest, *std::max_element(row.begin(), row.end()));
  const std::int64_t legs = std::int64_t{f.size.members} * (f.size.stations - 1);
  Weights w;
  w.assist = legs * longest + 1;
  w.idle = (legs + 1) * w.assist;
  return w;
}

std::int64_t weighed(const Floor& f, const Cost& cost) {
  const Weights w = weights_of(f);
  return w.idle * cost[Component::idle] + w.assist * cost[Component::assist_overlap] +
         w.walk * (cost[Component::walk_cm] / f.walk_unit_cm);
}

int choice(const Floor& f, int m, int t, int s) { return 1 + (m * f.size.slots + t) * f.size.stations + s; }

int choices(const Floor& f) { return f.size.members * f.size.slots * f.size.stations; }

std::optional<Rotation> rotation_of(const Floor& f, const std::vector<bool>& chosen) {
  Rotation r;
  r.slots = f.size.slots;
  r.at.assign(ix(f.size.members), std::vector<StationIndex>(ix(r.slots), nowhere));
  for (int m = 0; m < f.size.members; ++m)
    for (int t = 0; t < r.slots; ++t)
      for (int s = 0; s < f.size.stations; ++s) {
        if (!chosen.at(ix(choice(f, m, t, s)))) continue;
        StationIndex& at = r.at[ix(m)][ix(t)];
        if (at != nowhere) return std::nullopt;
        at = s;
      }
  return r;
}

}  // namespace floorwheel::peers
