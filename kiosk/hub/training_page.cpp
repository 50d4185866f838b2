// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/training_page.h"

#include <algorithm>
#include <map>

#include "kiosk/store/training_sets.h"
#include "scheduler/training/dose.h"
#include "scheduler/training/next_load.h"
#include "scheduler/training/strength.h"

namespace floorwheel::hub {
namespace json = boost::json;
using training::Day;
using training::Mass;
using training::SetRecord;
namespace {

constexpr int weeks_looked_at = 12;
constexpr std::size_t trends_shown = 3;
using ByExercise = std::map<std::string, std::vector<SetRecord>>;

/// Kilograms to the gram, for screens.
double kg(Mass m) { return static_cast<double>(m.units / (Mass::per_kg / 1000)) / 1000; }

/// Where it hurt on a day: exercises done that load the group were painful, whether done that day or not. A
/// day without working sets is a visit for pain alone.
void note_pain(Room& room, const std::string& member, ByExercise& sets) {
  for (const auto& [id, c] : room.hall.classes) {
    const wire::MemberView* m = wire::find_member(c, member);
    if (m == nullptr || !m->today || m->today->answer != "hurts") continue;
    const auto day = store::day_of_check_in(room.database, id_of_class(c), member);
    if (!day) continue;
    const auto spot = group_from(m->today->spot);
    for (auto& [exercise, records] : sets) {
      const Exercise& e = room.exercises.at(exercise);
      if (spot && !e.primary.contains(*spot) && !e.assisting.contains(*spot)) continue;
      SetRecord r;
      r.member = member;
      r.exercise = exercise;
      r.day = *day;
      r.kind = training::SetKind::warm_up;
      r.pain = true;
      records.push_back(r);
    }
  }
}

/// Records of the last weeks by exercise; what the exercise table lacks is left out.
ByExercise lately(Room& room, const std::string& member, Day today) {
  const std::int64_t from_ms = (std::int64_t{today.number} - 7 * weeks_looked_at) * 86'400'000;
  ByExercise sets;
  for (SetRecord& r : store::sets_of_member(room.database, member, from_ms))
    if (room.exercises.contains(r.exercise)) sets[r.exercise].push_back(std::move(r));
  note_pain(room, member, sets);
  return sets;
}

training::NextQuestion question(const Exercise& e, const std::vector<SetRecord>& sets, Day today) {
  training::NextQuestion q;
  q.reps = e.reps;
  q.today = today;
  q.hold = e.hold;
  q.substitutes = e.substitutes;
  for (int hg : e.loads_hg) q.loads.push_back({Mass::grams(std::int64_t{100} * hg)});
  if (q.loads.empty()) q.loads.push_back({});
  const training::Visits visits = training::visits_of(sets, today);
  q.sets = visits.worked.empty() ? 1 : static_cast<int>(visits.worked.back().at_load.size());
  return q;
}

}  // namespace

json::array next_loads(Room& room, const std::string& member, Day today) {
  json::array out;
  for (const auto& [id, sets] : lately(room, member, today)) {
    const Exercise& e = room.exercises.at(id);
    const training::NextAnswer a = training::next_load(sets, question(e, sets, today));
    if (a.rule == training::NextRule::first) continue;  // nothing done up to this day
    out.push_back({{"exercise", id},
                   {"name", e.name},
                   {"load_kg", a.load ? json::value(kg(a.load->mass)) : json::value()},
                   {"reps", json::array{a.reps[0], a.reps[1]}},
                   {"sets", a.sets},
                   {"change", training::id_of(a.change)},
                   {"rule", training::id_of(a.rule)},
                   {"reason", a.reason},
                   {"ask_instructor", a.ask_instructor},
                   {"substitute", a.substitute.empty() ? json::value() : json::value(a.substitute)}});
  }
  return out;
}

json::array trends(Room& room, const std::string& member, Day today) {
  // The equation with the widest range: circuits are done with more than ten repetitions.
  const auto wathan = std::ranges::find(training::equations(), "wathan", &training::Equation::id);
  std::vector<std::pair<std::string, training::Trend>> all;
  for (const auto& [id, sets] : lately(room, member, today))
    if (auto trend = training::trend_of(training::visits_of(sets, today), *wathan); trend.per_week)
      all.emplace_back(id, std::move(trend));
  std::ranges::stable_sort(all, std::ranges::greater(), [](const auto& t) { return t.second.points.size(); });
  json::array out;
  for (const auto& [id, trend] : all) {
    if (out.size() == trends_shown) break;
    json::array points;
    for (const auto& p : trend.points)
      points.push_back({{"day", text_of(p.day)}, {"one_rm_kg", kg(p.one_rm)}});
    out.push_back({{"exercise", id},
                   {"name", room.exercises.at(id).name},
                   {"equation", wathan->id},
                   {"points", points},
                   {"per_week_kg", kg(*trend.per_week)}});
  }
  return out;
}

json::array dose_rows(Room& room, training::IsoWeek week, const std::string& member) {
  std::vector<SetRecord> sets = member.empty() ? store::sets_of_week(room.database, text_of(week))
                                               : store::sets_of_member(room.database, member);
  std::erase_if(sets, [&](const SetRecord& r) { return !room.exercises.contains(r.exercise); });
  json::array out;
  for (const training::DoseRow& r : training::dose(sets, room.exercises, {.week = week}))
    out.push_back({{"member", r.member},
                   {"week", text_of(r.week)},
                   {"group", id_of(r.group)},
                   {"sets", r.primary_sets},
                   {"assisting_sets", r.assisting_sets},
                   {"days", r.days},
                   {"band", training::id_of(training::band_of(r.counted))}});
  return out;
}

}  // namespace floorwheel::hub
