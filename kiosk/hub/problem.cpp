// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/problem.h"

#include <algorithm>

#include "scheduler/rotation/audit.h"

namespace floorwheel::hub {
namespace json = boost::json;
using wire::Audience;
using wire::ClassView;
using wire::MemberView;
using wire::Role;
using wire::StationView;
namespace {

constexpr Audience everybody{Role::wall, Role::touch, Role::instructor, Role::desk, Role::tool};
constexpr Audience teacher{Role::instructor, Role::tool};
constexpr Audience hands{Role::touch, Role::instructor, Role::tool};

bool among(const std::vector<std::string>& all, const std::string& id) {
  return std::find(all.begin(), all.end(), id) != all.end();
}

const StationSpec* base_station(const ClassSpec& base, const std::string& id) {
  for (const StationSpec& s : base.stations)
    if (s.id == id) return &s;
  return nullptr;
}

/// The station of the class file that now stands at `v`: its own where the exercise is the same, else (after
/// a swap) the first with that exercise; null where something else was laid out.
const StationSpec* origin_of(const ClassSpec& base, const StationView& v) {
  const StationSpec* own = base_station(base, v.id);
  if (own && own->exercise == v.exercise) return own;
  for (const StationSpec& s : base.stations)
    if (s.exercise == v.exercise) return &s;
  return nullptr;
}

StationSpec station_now(const ClassSpec& base, const StationView& v) {
  StationSpec s;
  s.id = v.id;
  s.exercise = v.exercise;
  s.capacity = v.capacity;
  s.x_cm = v.x_cm;
  s.y_cm = v.y_cm;
  s.offers_hg = v.offers_hg;
  s.reps = v.reps;
  s.rir = v.rir;
  s.closed = v.closed;
  if (const StationSpec* origin = origin_of(base, v)) {
    s.substitutes = origin->substitutes;
    s.equipment = origin->equipment;
  } else if (const auto e = base.exercises.find(v.exercise); e != base.exercises.end()) {
    for (const std::string& id : e->second.substitutes)
      if (base.exercises.contains(id)) s.substitutes.push_back(id);
  }
  return s;
}

/// Required stations and planned loads follow what stands at a station, not its letter.
void follow_the_floor(MemberSpec& m, const ClassSpec& base, const ClassView& view) {
  const std::map<std::string, int, std::less<>> loads = std::move(m.loads_hg);
  const std::optional<std::vector<std::string>> required = std::move(m.required);
  m.loads_hg.clear();
  m.required.reset();
  if (required) m.required.emplace();
  for (const StationView& v : view.stations) {
    const StationSpec* origin = origin_of(base, v);
    if (origin)
      if (const auto load = loads.find(origin->id); load != loads.end()) m.loads_hg[v.id] = load->second;
    if (required && among(*required, origin ? origin->id : v.id)) m.required->push_back(v.id);
  }
}

template <class Set>
void add_all(Set& into, const Set& more) {
  for (const std::string& id : more)
    if (!among(into, id)) into.push_back(id);
}

MemberSpec member_now(const ClassSpec& base, const ClassView& view, const MemberView& v,
                      const FindMember& find) {
  MemberSpec m;
  const auto named = std::find_if(base.members.begin(), base.members.end(),
                                  [&v](const MemberSpec& b) { return b.id == v.id; });
  const std::optional<MemberSpec> kept = v.guest ? std::nullopt : find(v.id);
  if (named != base.members.end()) {
    m = *named;
    follow_the_floor(m, base, view);
    if (kept) {
      m.excluded_groups |= kept->excluded_groups;
      m.excluded_features |= kept->excluded_features;
      add_all(m.excluded_exercises, kept->excluded_exercises);
      add_all(m.allowed_exercises, kept->allowed_exercises);
    }
  } else if (kept) {
    m = *kept;
  }
  m.id = v.id;
  m.shown_as = v.shown_as;
  m.guest = v.guest;
  if (named == base.members.end() && !kept) m.level = v.level;
  if (v.present != SlotRange{}) {
    // A late arrival is there from then on, whatever the file said; a leaver is gone for good.
    if (v.present.first > 1) m.present.first = v.present.first;
    m.present.last = std::min(m.present.last, v.present.last);
  }
  if (v.today && v.today->answer == "hurts")
    if (const auto group = group_from(v.today->spot)) m.excluded_groups.insert(*group);
  return m;
}

bool comes(const ClassView& view, const MemberView& m) {
  if (view.heads_counted) return m.here;
  if (m.guest) return true;
  const bool anybody =
      std::any_of(view.members.begin(), view.members.end(), [](const MemberView& v) { return v.here; });
  return anybody ? m.here : m.expected;
}

std::vector<const MemberView*> people(const ClassView& view, People who,
                                      const std::vector<std::string>& added) {
  std::vector<const MemberView*> out;
  if (who == People::here) {
    for (const MemberView& m : view.members)
      if (comes(view, m)) out.push_back(&m);
    return out;
  }
  for (const RunSheetRow& r : view.sheet.rows)
    if (const MemberView* m = wire::find_member(view, r.member)) out.push_back(m);
  for (const std::string& id : added)
    if (const MemberView* m = wire::find_member(view, id);
        m && std::find(out.begin(), out.end(), m) == out.end())
      out.push_back(m);
  return out;
}

/// What hurts today must not make an explicit list impossible: a station without an exercise leaves it.
void drop_impossible(ClassSpec& c, const ClassView& view) {
  for (std::size_t i = 0; i < c.members.size(); ++i) {
    MemberSpec& m = c.members[i];
    const MemberView* v = wire::find_member(view, m.id);
    if (!m.required || !v || !v->today || v->today->answer != "hurts") continue;
    std::erase_if(*m.required, [&](const std::string& id) {
      for (std::size_t s = 0; s < c.stations.size(); ++s)
        if (c.stations[s].id == id)
          return audited_exercise(c, static_cast<int>(i), static_cast<StationIndex>(s)) == nullptr;
      return true;
    });
  }
}

std::string station_id(const ClassSpec& c, StationIndex s) {
  return s == nowhere ? std::string() : c.stations[static_cast<std::size_t>(s)].id;
}

}  // namespace

void put_exercise(StationView& v, const Exercise& e) {
  v.exercise = e.id;
  v.exercise_name = e.name;
  v.offers_hg = e.loads_hg;
  v.reps = e.reps[1];
  v.rir = (e.rir[0] + e.rir[1]) / 2;
  v.hold = e.hold;
}

std::vector<StationView> stations_of(const ClassSpec& c) {
  std::vector<StationView> out;
  const std::vector<std::string> letters = wall_letters(c);
  for (std::size_t i = 0; i < c.stations.size(); ++i) {
    const StationSpec& s = c.stations[i];
    StationView v;
    v.exercise = v.exercise_name = s.exercise;
    if (const auto e = c.exercises.find(s.exercise); e != c.exercises.end()) put_exercise(v, e->second);
    v.id = s.id;
    v.letter = letters[i];
    v.capacity = s.capacity;
    v.x_cm = s.x_cm;
    v.y_cm = s.y_cm;
    if (!s.offers_hg.empty()) v.offers_hg = s.offers_hg;
    v.reps = s.reps.value_or(v.reps);
    v.rir = s.rir.value_or(v.rir);
    v.closed = s.closed;
    out.push_back(std::move(v));
  }
  return out;
}

ClassSpec spec_now(const ClassSpec& base, const ClassView& view, const FindMember& find, People who,
                   const std::vector<std::string>& added) {
  ClassSpec c = base;
  c.stations.clear();
  for (const StationView& v : view.stations) c.stations.push_back(station_now(base, v));
  c.members.clear();
  for (const MemberView* v : people(view, who, added)) {
    MemberSpec m = member_now(base, view, *v, find);
    if (m.present.first <= m.present.last) c.members.push_back(std::move(m));
  }
  // Guests stand after the named members, as in a class file.
  std::stable_partition(c.members.begin(), c.members.end(), [](const MemberSpec& m) { return !m.guest; });
  std::erase_if(c.pairs, [&c](const PairSpec& p) {
    const auto is_here = [&c](const std::string& id) {
      return std::any_of(c.members.begin(), c.members.end(),
                         [&id](const MemberSpec& m) { return m.id == id; });
    };
    return !is_here(p.a) || !is_here(p.b);
  });
  drop_impossible(c, view);
  return c;
}

EarlierSheet earlier_of(const wire::RunSheet& s) {
  return {.slots = s.timing.slots, .style = s.style, .ring = s.ring, .rows = s.rows, .at_slot = s.at_slot};
}

json::object notes_of(const ClassSpec& c) {
  json::object out;
  const auto alias = [&c](const std::string& id) {
    for (const MemberSpec& m : c.members)
      if (m.id == id) return m.shown_as;
    return id;
  };
  const auto name = [&c](const std::string& id) {
    const auto e = c.exercises.find(id);
    return e == c.exercises.end() ? id : e->second.name;
  };
  for (const MemberSpec& m : c.members) {
    json::array notes;
    for (const PairSpec& p : c.pairs)
      if (p.a == m.id || p.b == m.id)
        notes.emplace_back((p.rule == PairRule::together ? "together with " : "apart from ") +
                           alias(p.a == m.id ? p.b : p.a));
    for (int g = 0; g < group_count; ++g)
      if (m.excluded_groups.contains(static_cast<Group>(g)))
        notes.emplace_back(std::string(id_of(static_cast<Group>(g))) + " left out");
    for (int f = 0; f < feature_count; ++f)
      if (m.excluded_features.contains(static_cast<Feature>(f)))
        notes.emplace_back(std::string(id_of(static_cast<Feature>(f))) + " left out");
    for (const std::string& e : m.excluded_exercises) notes.emplace_back(name(e) + " left out");
    for (const std::string& e : m.allowed_exercises) notes.emplace_back(name(e) + " agreed");
    if (!notes.empty()) out[m.id] = notes;
  }
  return out;
}

wire::RunSheet sheet_of(const ClassSpec& c, const Plan& plan, int version) {
  wire::RunSheet s;
  s.version = version;
  s.at_slot = plan.at_slot;
  s.style = plan.rotation.style;
  for (const StationIndex i : plan.rotation.ring) s.ring.push_back(station_id(c, i));
  s.timing = wire::timing_of(c, plan.rotation.slots);
  for (std::size_t m = 0; m < plan.rotation.at.size(); ++m) {
    RunSheetRow row{.member = c.members[m].id, .stations = {}};
    for (const StationIndex i : plan.rotation.at[m]) row.stations.push_back(station_id(c, i));
    s.rows.push_back(std::move(row));
  }
  s.cost = plan.cost;
  s.bound = plan.bound;
  s.proven = plan.proven;
  s.reasons = plan.reasons;
  return s;
}

std::vector<store::WordPart> words_of(const ClassSpec& c, const wire::RunSheet& sheet,
                                      const std::string& change) {
  std::vector<store::WordPart> out;
  json::object names;
  const auto name = [&](const std::string& id) {
    if (const auto e = c.exercises.find(id); e != c.exercises.end()) names[id] = e->second.name;
  };
  for (const StationSpec& s : c.stations) name(s.exercise);
  json::object substitute_names;
  std::vector<store::WordPart> personal;
  for (std::size_t m = 0; m < c.members.size(); ++m) {
    json::object exercises;
    for (std::size_t s = 0; s < c.stations.size(); ++s) {
      const Exercise* e = audited_exercise(c, static_cast<int>(m), static_cast<StationIndex>(s));
      if (!e || e->id == c.stations[s].exercise) continue;
      exercises[c.stations[s].id] = e->id;
      substitute_names[e->id] = e->name;
    }
    json::object loads;
    for (const auto& [station, hg] : c.members[m].loads_hg) loads[station] = hg;
    json::object words;
    const std::string& id = c.members[m].id;
    if (!loads.empty()) words["loads_hg"] = json::object{{id, loads}};
    if (!exercises.empty()) words["exercises"] = json::object{{id, exercises}};
    if (!words.empty()) personal.push_back({.audience = hands, .member = id, .json = json::serialize(words)});
  }
  out.push_back({.audience = everybody,
                 .member = {},
                 .json = json::serialize(json::object{{"exercise_names", names}})});
  if (!substitute_names.empty())
    out.push_back({.audience = hands,
                   .member = {},
                   .json = json::serialize(json::object{{"exercise_names", substitute_names}})});
  out.insert(out.end(), personal.begin(), personal.end());
  json::object teaching = wire::sheet_words(sheet, change);
  json::object sentences{{"reasons", teaching["reasons"]}, {"change", teaching["change"]}};
  teaching.erase("reasons");
  teaching.erase("change");
  out.push_back({.audience = teacher, .member = {}, .json = json::serialize(teaching)});
  out.push_back({.audience = teacher, .member = "*", .json = json::serialize(sentences)});
  return out;
}

json::object merged(const std::vector<store::WordPart>& parts) {
  json::object all;
  for (const store::WordPart& p : parts) wire::merge(all, wire::object_from(p.json));
  return all;
}

std::optional<Rotation> rotation_of(const ClassSpec& c, const wire::RunSheet& sheet) {
  const auto index = [&c](const std::string& id) {
    for (std::size_t s = 0; s < c.stations.size(); ++s)
      if (c.stations[s].id == id) return static_cast<StationIndex>(s);
    return StationIndex{-2};
  };
  Rotation r;
  r.slots = sheet.timing.slots;
  r.style = sheet.style;
  for (const std::string& id : sheet.ring) r.ring.push_back(index(id));
  if (std::find(r.ring.begin(), r.ring.end(), -2) != r.ring.end()) return {};
  for (const MemberSpec& m : c.members) {
    const auto row = std::find_if(sheet.rows.begin(), sheet.rows.end(),
                                  [&m](const RunSheetRow& s) { return s.member == m.id; });
    if (row == sheet.rows.end() || static_cast<int>(row->stations.size()) != r.slots) return {};
    std::vector<StationIndex> at;
    for (const std::string& id : row->stations) at.push_back(id.empty() ? nowhere : index(id));
    if (std::find(at.begin(), at.end(), -2) != at.end()) return {};
    r.at.push_back(std::move(at));
  }
  return r;
}

}  // namespace floorwheel::hub
