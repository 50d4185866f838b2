// SPDX-License-Identifier: GPL-3.0-or-later
// Builds the indexed problem from a class, and refuses what the model refuses: rules 3 and 5.
#include "scheduler/rotation/problem.h"

#include <algorithm>
#include <map>
#include <string_view>

#include "scheduler/rotation/words.h"

namespace floorwheel {
namespace {

using Index = std::map<std::string, int, std::less<>>;

template <class Range>
Index index_by_id(const Range& range) {
  Index index;
  int i = 0;
  for (const auto& item : range) index.emplace(item.id, i++);
  return index;
}

bool contains(const std::vector<std::string>& list, std::string_view id) {
  return std::find(list.begin(), list.end(), id) != list.end();
}

/// The distance in whole centimetres, halves up; the square root stays in integers.
int distance_cm(const StationSpec& a, const StationSpec& b) {
  const std::int64_t dx = std::int64_t{a.x_cm} - b.x_cm;
  const std::int64_t dy = std::int64_t{a.y_cm} - b.y_cm;
  const std::int64_t square = dx * dx + dy * dy;
  std::int64_t low = 0;
  std::int64_t high = std::int64_t{1} << 31;
  while (low + 1 < high) {
    const std::int64_t middle = (low + high) / 2;
    (middle * middle <= square ? low : high) = middle;
  }
  return static_cast<int>(square > low * low + low ? low + 1 : low);
}

}  // namespace

bool may_do(const MemberSpec& m, const Exercise& e) {
  if (contains(m.allowed_exercises, e.id)) return true;
  return !contains(m.excluded_exercises, e.id) && !m.excluded_features.meets(e.features) &&
         !m.excluded_groups.meets(e.primary) && !m.excluded_groups.meets(e.assisting);
}

int Problem::visits_made(int m) const {
  int made = 0;
  for (int t = 0; t < from; ++t)
    if (const StationIndex s = history(m, t); s != nowhere && work(m, s).required) ++made;
  return made;
}

int Problem::places_always() const {
  int least = members;
  for (int s = 0; s < stations; ++s)
    for (int t = 0; t < slots; ++t) least = std::min(least, places(s, t));
  return least;
}

class ProblemBuilder {
 public:
  ProblemBuilder(const ClassSpec& c, int slots, const EarlierSheet* earlier, int at_slot)
      : c_(c),
        earlier_(earlier),
        member_index_(index_by_id(c.members)),
        station_index_(index_by_id(c.stations)) {
    p_.members = static_cast<int>(c.members.size());
    p_.stations = static_cast<int>(c.stations.size());
    p_.kinds = static_cast<int>(c.equipment.size());
    p_.slots = slots;
    p_.laps = c.laps;
    p_.is_repair = earlier != nullptr;
    p_.from = earlier ? std::clamp(at_slot - 1, 0, slots) : 0;
  }

  OrRefusal<Problem> build() {
    floor();
    clock();
    for (int m = 0; m < p_.members; ++m) {
      window(m);
      if (auto refusal = exercises(m)) return *refusal;
    }
    pairs();
    if (auto refusal = apart_within_team()) return *refusal;
    if (auto refusal = team_without_station()) return *refusal;
    if (earlier_) sheet_before();
    return std::move(p_);
  }

 private:
  const StationSpec& station(int s) const { return c_.stations[ix(s)]; }
  const MemberSpec& member(int m) const { return c_.members[ix(m)]; }

  void floor() {
    const Index equipment = index_by_id(c_.equipment);
    for (const EquipmentSpec& e : c_.equipment) p_.units.push_back(e.units);
    p_.open = Grid<std::uint8_t>(p_.stations, p_.slots, 1);
    p_.places_ = Grid<int>(p_.stations, p_.slots);
    p_.walk_cm = Grid<int>(p_.stations, p_.stations);
    p_.takes.resize(ix(p_.stations));
    for (int s = 0; s < p_.stations; ++s) {
      p_.capacity.push_back(station(s).capacity);
      for (const std::string& id : station(s).equipment) {
        const auto found = equipment.find(id);
        auto& takes = p_.takes[ix(s)];
        if (found != equipment.end() && std::find(takes.begin(), takes.end(), found->second) == takes.end())
          takes.push_back(found->second);
      }
      for (const SlotRange& range : station(s).closed)
        for (int t = std::max(range.first, 1); t <= std::min(range.last, p_.slots); ++t)
          p_.open(s, t - 1) = 0;
      int places = p_.capacity[ix(s)];
      for (int k : p_.takes[ix(s)]) places = std::min(places, p_.units[ix(k)]);
      for (int t = 0; t < p_.slots; ++t) p_.places_(s, t) = p_.open(s, t) ? places : 0;
      for (int other = 0; other < p_.stations; ++other)
        p_.walk_cm(s, other) = distance_cm(station(s), station(other));
    }
  }

  /// rest_from(level, t): the earliest slot u whose gap to t is shorter than that level's recovery time.
  void clock() {
    std::vector<int> pause(ix(p_.slots), 0);  // break after slot t
    for (const BreakSpec& b : c_.breaks)
      if (b.after_slot >= 1 && b.after_slot < p_.slots) pause[ix(b.after_slot - 1)] += b.seconds;
    p_.rest_from = Grid<int>(level_count, p_.slots);
    for (int level = 0; level < level_count; ++level)
      for (int t = 0; t < p_.slots; ++t) {
        int u = t;
        std::int64_t gap = -c_.work_s;
        while (u > 0) {
          gap += c_.work_s + c_.change_s + pause[ix(u - 1)];
          if (gap >= c_.recovery_s[ix(level)]) break;
          --u;
        }
        p_.rest_from(level, t) = u;
      }
  }

  void window(int m) {
    p_.first.push_back(std::max(member(m).present.first, 1) - 1);
    p_.last.push_back(std::min(member(m).present.last, p_.slots) - 1);
    p_.level.push_back(static_cast<int>(member(m).level));
  }

  /// The exercise by rule 3, or null; `own`: it is the station's.
  const Exercise* exercise(int m, int s, bool& own) const {
    own = true;
    const auto& table = c_.exercises;
    if (auto e = table.find(station(s).exercise); e != table.end() && may_do(member(m), e->second))
      return &e->second;
    own = false;
    for (const std::string& id : station(s).substitutes)
      if (auto e = table.find(id); e != table.end() && may_do(member(m), e->second)) return &e->second;
    return nullptr;
  }

  std::optional<Refusal> exercises(int m) {
    if (m == 0) p_.work_ = Grid<Work>(p_.members, p_.stations);
    p_.required.emplace_back();
    const MemberSpec& who = member(m);
    for (int s = 0; s < p_.stations; ++s) {
      Work& work = p_.work_(m, s);
      bool own = true;
      const Exercise* e = exercise(m, s, own);
      work.may = e != nullptr;
      const auto its_own = c_.exercises.find(station(s).exercise);
      if (!e && its_own != c_.exercises.end()) e = &its_own->second;
      if (e) {
        work.primary = e->primary.bits();
        work.assisting = e->assisting.bits();
      }
      if (auto load = who.loads_hg.find(station(s).id); load != who.loads_hg.end() && (own || !work.may)) {
        work.load_hg = load->second;
        p_.has_loads = true;
      }
      const bool asked = !who.required || contains(*who.required, station(s).id);
      if (asked && work.may) {
        work.required = true;
        p_.required[ix(m)].push_back(s);
      } else if (asked && who.required) {
        if (!p_.is_repair)
          return Refusal{
              3,
              {who.id},
              {station(s).id},
              {},
              who.shown_as + " is to visit " + station(s).id +
                  " but may do neither its exercise nor any of its "
                  "substitutes; take it from the list, allow an exercise or name another substitute."};
        p_.notes.push_back(station(s).id + " drops out for " + who.shown_as +
                           ", who may do neither its exercise nor any of its substitutes.");
      }
    }
    if (p_.required[ix(m)].empty())
      return Refusal{
          3,
          {who.id},
          {},
          {},
          who.shown_as +
              " has no station left; allow an exercise, name a substitute or ask for another station."};
    return std::nullopt;
  }

  void pairs() {
    p_.mates.resize(ix(p_.members));
    p_.foes.resize(ix(p_.members));
    for (const PairSpec& pair : c_.pairs) {
      const auto a = member_index_.find(pair.a);
      const auto b = member_index_.find(pair.b);
      if (a == member_index_.end() || b == member_index_.end() || a->second == b->second) continue;
      auto& lists = pair.rule == PairRule::together ? p_.mates : p_.foes;
      lists[ix(a->second)].push_back(b->second);
      lists[ix(b->second)].push_back(a->second);
    }
    p_.team_of.assign(ix(p_.members), -1);
    for (int m = 0; m < p_.members; ++m) {
      if (p_.team_of[ix(m)] >= 0) continue;
      const int team = static_cast<int>(p_.teams.size());
      std::vector<int> joined{m};
      p_.team_of[ix(m)] = team;
      for (std::size_t i = 0; i < joined.size(); ++i)
        for (int mate : p_.mates[ix(joined[i])])
          if (p_.team_of[ix(mate)] < 0) {
            p_.team_of[ix(mate)] = team;
            joined.push_back(mate);
          }
      p_.teams.push_back(std::move(joined));
    }
  }

  std::optional<Refusal> apart_within_team() const {
    for (int m = 0; m < p_.members; ++m)
      for (int foe : p_.foes[ix(m)])
        if (p_.team_of[ix(m)] == p_.team_of[ix(foe)])
          return Refusal{5,
                         {member(m).id, member(foe).id},
                         {},
                         {},
                         member(m).shown_as + " and " + member(foe).shown_as +
                             " are to be together and apart at once; drop one of the two."};
    return std::nullopt;
  }

  /// Members held together who share a slot need one common station with places and units for all of them.
  std::optional<Refusal> team_without_station() const {
    for (const auto& team : p_.teams) {
      if (team.size() < 2) continue;
      std::vector<int> starts;
      starts.reserve(team.size());
      for (int m : team) starts.push_back(p_.first[ix(m)]);
      for (int t : starts) {  // the most are present when somebody has just come
        std::vector<int> here;
        for (int m : team)
          if (p_.present(m, t)) here.push_back(m);
        if (here.size() < 2 || common_station(here)) continue;
        Refusal refusal{5, {}, {}, {t + 1}, {}};
        std::vector<std::string> names;
        for (int m : here) {
          refusal.members.push_back(member(m).id);
          names.push_back(member(m).shown_as);
        }
        refusal.reason = listed(names) +
                         " are held together, but no station that all of them are to visit "
                         "has " +
                         std::to_string(here.size()) + " places and as many units of its equipment.";
        return refusal;
      }
    }
    return std::nullopt;
  }

  bool common_station(const std::vector<int>& here) const {
    for (int s = 0; s < p_.stations; ++s) {
      int places = p_.capacity[ix(s)];
      for (int k : p_.takes[ix(s)]) places = std::min(places, p_.units[ix(k)]);
      if (places >= static_cast<int>(here.size()) &&
          std::all_of(here.begin(), here.end(), [&](int m) { return p_.work_(m, s).required; }))
        return true;
    }
    return false;
  }

  /// History and the entries that `moved` compares with.
  void sheet_before() {
    p_.history = Grid<StationIndex>(p_.members, p_.slots, nowhere);
    p_.old = Grid<StationIndex>(p_.members, p_.slots, nowhere);
    p_.counts.assign(ix(p_.members), 0);
    for (const RunSheetRow& row : earlier_->rows) {
      const auto found = member_index_.find(row.member);
      if (found == member_index_.end()) continue;
      const int m = found->second;
      p_.counts[ix(m)] = 1;
      for (int t = 0; t < static_cast<int>(row.stations.size()); ++t) {
        const std::string& id = row.stations[ix(t)];
        if (id.empty() || t >= p_.slots) continue;  // a dropped slot is outside nobody's window
        const bool here = member(m).present.contains(t + 1);
        if (!here) p_.counts[ix(m)] = 0;
        const auto s = station_index_.find(id);
        if (s == station_index_.end()) continue;
        p_.old(m, t) = s->second;
        if (t < p_.from && here) p_.history(m, t) = s->second;
      }
    }
  }

  const ClassSpec& c_;
  const EarlierSheet* earlier_;
  Index member_index_;
  Index station_index_;
  Problem p_;
};

OrRefusal<Problem> make_problem(const ClassSpec& c, int slots, const EarlierSheet* earlier, int at_slot) {
  return ProblemBuilder(c, slots, earlier, at_slot).build();
}

}  // namespace floorwheel
