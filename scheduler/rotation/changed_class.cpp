// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/changed_class.h"

#include <algorithm>
#include <numeric>
#include <tuple>

#include "scheduler/rotation/problem.h"

namespace floorwheel {
namespace {

int units_of(const ClassSpec& c, const std::string& kind) {
  for (const EquipmentSpec& e : c.equipment)
    if (e.id == kind) return e.units;
  return 0;
}

bool is_used(const ClassSpec& c, const std::string& exercise) {
  return std::any_of(c.stations.begin(), c.stations.end(),
                     [&](const StationSpec& s) { return s.exercise == exercise; });
}

/// A station id that no station has.
std::string free_id(const ClassSpec& c, const std::string& wanted) {
  const auto taken = [&](const std::string& id) {
    return std::any_of(c.stations.begin(), c.stations.end(),
                       [&](const StationSpec& s) { return s.id == id; });
  };
  std::string id = wanted;
  for (int n = 2; taken(id); ++n) id = wanted + "-" + std::to_string(n);
  return id;
}

void leave_out(ClassSpec& c, const std::string& id) {
  std::erase_if(c.stations, [&](const StationSpec& s) { return s.id == id; });
  for (MemberSpec& m : c.members) {
    if (m.required) std::erase(*m.required, id);
    m.loads_hg.erase(id);
  }
}

void add_station(ClassSpec& c, const std::string& exercise) {
  StationSpec s;
  s.id = free_id(c, exercise);
  s.exercise = exercise;
  std::int64_t x = 0;
  std::int64_t y = 0;
  for (const StationSpec& other : c.stations) {
    x += other.x_cm;
    y += other.y_cm;
  }
  const auto n = std::max<std::int64_t>(1, static_cast<std::int64_t>(c.stations.size()));
  s.x_cm = static_cast<int>(x / n);
  s.y_cm = static_cast<int>(y / n);
  for (MemberSpec& m : c.members)
    if (m.required && may_do(m, c.exercises.at(exercise))) m.required->push_back(s.id);
  c.stations.push_back(std::move(s));
}

/// The index of the first of those held together with each member, over chains too.
std::vector<std::size_t> teams(const ClassSpec& c) {
  std::vector<std::size_t> team(c.members.size());
  std::iota(team.begin(), team.end(), std::size_t{0});
  const auto find = [&](const std::string& id) {
    const auto at =
        std::find_if(c.members.begin(), c.members.end(), [&](const MemberSpec& m) { return m.id == id; });
    return static_cast<std::size_t>(at - c.members.begin());
  };
  for (const PairSpec& pair : c.pairs) {
    if (pair.rule != PairRule::together) continue;
    const std::size_t a = team[find(pair.a)];
    const std::size_t b = team[find(pair.b)];
    for (std::size_t& t : team)
      if (t == std::max(a, b)) t = std::min(a, b);
  }
  return team;
}

}  // namespace

int people_at_once(const ClassSpec& c) {
  const int last = c.slots.value_or(SlotRange::to_the_end);
  int most = 0;
  for (const MemberSpec& come : c.members) {  // the most are there when somebody has just come
    if (come.present.first > last) continue;
    const auto here = std::count_if(c.members.begin(), c.members.end(), [&](const MemberSpec& m) {
      return m.present.contains(come.present.first);
    });
    most = std::max(most, static_cast<int>(here));
  }
  return most;
}

int places_in_all(const ClassSpec& c) {
  return std::accumulate(c.stations.begin(), c.stations.end(), 0,
                         [](int sum, const StationSpec& s) { return sum + s.capacity; });
}

bool can_share(const ClassSpec& c, const StationSpec& s) {
  std::vector<std::string> needed = s.equipment;
  if (const auto e = c.exercises.find(s.exercise); e != c.exercises.end())
    needed.insert(needed.end(), e->second.equipment.begin(), e->second.equipment.end());
  return std::all_of(needed.begin(), needed.end(),
                     [&](const std::string& kind) { return units_of(c, kind) >= 2 * s.capacity; });
}

std::optional<std::string> station_to_add(const ClassSpec& c) {
  std::optional<std::string> best;
  std::tuple<std::ptrdiff_t, std::ptrdiff_t> least;
  for (const auto& entry : c.exercises) {
    const std::string& id = entry.first;
    const Exercise& e = entry.second;
    if (!e.equipment.empty() || is_used(c, id)) continue;
    const auto kept_out =
        std::count_if(c.members.begin(), c.members.end(), [&](const MemberSpec& m) { return !may_do(m, e); });
    const auto alike = std::count_if(c.stations.begin(), c.stations.end(), [&](const StationSpec& s) {
      return c.exercises.at(s.exercise).primary.meets(e.primary);
    });
    const auto rank = std::tuple(kept_out, alike);
    if (best && rank >= least) continue;
    best = id;
    least = rank;
  }
  return best;
}

ClassSpec changed(const ClassSpec& spec, const Change& change) {
  ClassSpec c = spec;
  const auto station = [&]() -> StationSpec& {
    return *std::find_if(c.stations.begin(), c.stations.end(),
                         [&](const StationSpec& s) { return s.id == change.id; });
  };
  switch (change.kind) {
    case Change::Kind::as_it_is:
    case Change::Kind::two_waves:
      break;
    case Change::Kind::one_more_place:
      ++station().capacity;
      break;
    case Change::Kind::one_more_unit:
      for (EquipmentSpec& e : c.equipment)
        if (e.id == change.id) ++e.units;
      break;
    case Change::Kind::left_out:
      leave_out(c, change.id);
      break;
    case Change::Kind::more_slots:
      c.slots.reset();
      c.length_s.reset();
      break;
    case Change::Kind::one_more_station:
      add_station(c, change.id);
      break;
    case Change::Kind::two_to_a_place:
      for (StationSpec& s : c.stations)
        if (can_share(spec, s)) s.capacity *= 2;
      break;
  }
  return c;
}

std::pair<ClassSpec, ClassSpec> waves_of(const ClassSpec& c) {
  std::pair<ClassSpec, ClassSpec> waves{c, c};
  waves.first.members.clear();
  waves.second.members.clear();
  const std::vector<std::size_t> team = teams(c);
  for (std::size_t first = 0; first < team.size(); ++first) {
    if (team[first] != first) continue;
    ClassSpec& wave = waves.second.members.size() < waves.first.members.size() ? waves.second : waves.first;
    for (std::size_t m = first; m < team.size(); ++m)
      if (team[m] == first) wave.members.push_back(c.members[m]);
  }
  for (ClassSpec* wave : {&waves.first, &waves.second})
    std::erase_if(wave->pairs, [&](const PairSpec& pair) {
      const auto here = [&](const std::string& id) {
        return std::any_of(wave->members.begin(), wave->members.end(),
                           [&](const MemberSpec& m) { return m.id == id; });
      };
      return !here(pair.a) || !here(pair.b);
    });
  return waves;
}

}  // namespace floorwheel
