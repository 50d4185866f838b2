// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/training_page.h"

#include <algorithm>
#include <map>

#include "kiosk/store/decisions.h"
#include "kiosk/store/training_sets.h"
#include "scheduler/training/dose.h"
#include "scheduler/training/next_load.h"
#include "scheduler/training/standstill.h"
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

/// What the store holds of a member's last weeks, read once; exercises that the table lacks are left out.
struct Lately {
  std::vector<SetRecord> sets;
  ByExercise by_exercise;  // the same, with where it hurt
  std::map<std::string, std::vector<training::Override>> decisions;
};

Lately lately(Room& room, const std::string& member, Day today) {
  const std::int64_t from_ms = (std::int64_t{today.number} - std::int64_t{7} * weeks_looked_at) * 86'400'000;
  Lately l;
  l.sets = store::sets_of_member(room.database, member, from_ms);
  std::erase_if(l.sets, [&](const SetRecord& r) { return !room.exercises.contains(r.exercise); });
  for (const SetRecord& r : l.sets) l.by_exercise[r.exercise].push_back(r);
  note_pain(room, member, l.by_exercise);
  for (training::Override& o : store::decisions_of_member(room.database, member)) {
    o.decided_by = o.decided_by == wire::id_of(wire::Role::touch) ? "The member" : "The instructor";
    l.decisions[o.exercise].push_back(std::move(o));
  }
  return l;
}

/// Of the last set up to this day, or of the pain noted after it.
Day last_day(const std::vector<SetRecord>& sets, Day today) {
  Day last;
  for (const SetRecord& r : sets)
    if (r.day <= today) last = std::max(last, r.day);
  return last;
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

training::Decided decided(const Lately& l, const Exercise& e, Day today) {
  const auto sets = l.by_exercise.find(e.id);
  const std::vector<SetRecord> none;
  const std::vector<SetRecord>& done = sets == l.by_exercise.end() ? none : sets->second;
  const auto decisions = l.decisions.find(e.id);
  return training::next_load(
      done, question(e, done, today),
      decisions == l.decisions.end() ? std::span<const training::Override>() : decisions->second);
}

json::array next_loads_of(Room& room, const Lately& l, Day today) {
  json::array out;
  for (const auto& [id, sets] : l.by_exercise) {
    const Exercise& e = room.exercises.at(id);
    const training::Decided d = decided(l, e, today);
    const training::NextAnswer& a = d.answer;
    if (a.rule == training::NextRule::first) continue;  // nothing done up to this day
    json::object row{{"exercise", id},
                     {"name", e.name},
                     {"hold", e.hold},
                     {"load_kg", a.load ? json::value(kg_of(a.load->mass)) : json::value()},
                     {"reps", json::array{a.reps[0], a.reps[1]}},
                     {"sets", a.sets},
                     {"change", training::id_of(a.change)},
                     {"rule", training::id_of(a.rule)},
                     {"reason", a.reason},
                     {"ask_instructor", a.ask_instructor},
                     {"substitute", a.substitute.empty() ? json::value() : json::value(a.substitute)},
                     {"last_day", text_of(last_day(sets, today))},
                     {"visits_without_progress",
                      training::visits_without_progress(training::visits_of(sets, today).worked)}};
    if (d.by)
      row["override"] = {{"decided_by", d.by->decided_by},
                         {"decided_on", text_of(d.by->day)},
                         {"suggested_kg", kg_of(d.by->suggested)}};
    out.push_back(std::move(row));
  }
  return out;
}

json::array trends_of(Room& room, const Lately& l, Day today) {
  // The equation with the widest range: circuits are done with more than ten repetitions.
  const auto wathan = std::ranges::find(training::equations(), "wathan", &training::Equation::id);
  std::vector<std::pair<std::string, training::Trend>> all;
  for (const auto& [id, sets] : l.by_exercise)
    if (auto trend = training::trend_of(training::visits_of(sets, today), *wathan); trend.per_week)
      all.emplace_back(id, std::move(trend));
  std::ranges::stable_sort(all, std::ranges::greater(), [](const auto& t) { return t.second.points.size(); });
  json::array out;
  for (const auto& [id, trend] : all) {
    if (out.size() == trends_shown) break;
    json::array points;
    for (const auto& p : trend.points)
      points.push_back({{"day", text_of(p.day)}, {"one_rm_kg", kg_of(p.one_rm)}});
    out.push_back({{"exercise", id},
                   {"name", room.exercises.at(id).name},
                   {"equation", wathan->id},
                   {"points", points},
                   {"per_week_kg", kg_of(*trend.per_week)}});
  }
  return out;
}

json::array rows_of(std::span<const SetRecord> sets, const ExerciseTable& exercises, training::IsoWeek week) {
  json::array out;
  for (const training::DoseRow& r : training::dose(sets, exercises, {.week = week}))
    out.push_back({{"member", r.member},
                   {"week", text_of(r.week)},
                   {"group", id_of(r.group)},
                   {"sets", r.primary_sets},
                   {"assisting_sets", r.assisting_sets},
                   {"days", r.days},
                   {"band", training::id_of(training::band_of(r.counted))}});
  return out;
}

}  // namespace

json::array next_loads(Room& room, const std::string& member, Day today) {
  return next_loads_of(room, lately(room, member, today), today);
}

json::array trends(Room& room, const std::string& member, Day today) {
  return trends_of(room, lately(room, member, today), today);
}

double kg_of(Mass m) { return static_cast<double>(m.whole_grams()) / 1000; }

json::object training_of(Room& room, const std::string& member, Day today) {
  const Lately l = lately(room, member, today);
  const training::IsoWeek week = training::iso_week_of(today);
  const auto of_week = [&](const SetRecord& r) { return training::iso_week_of(r.day) == week; };
  return {{"working_sets", std::ranges::count_if(l.sets, of_week)},
          {"dose", rows_of(l.sets, room.exercises, week)},
          {"next", next_loads_of(room, l, today)},
          {"trends", trends_of(room, l, today)}};
}

Suggestion suggestion_for(Room& room, const std::string& member, const Exercise& e, Day today) {
  const Lately l = lately(room, member, today);
  const training::NextAnswer a = decided(l, e, today).suggested;
  if (a.load) return {a.load->mass, a.change};
  return {training::visits_of(l.by_exercise.at(e.id), today).worked.back().load, a.change};
}

json::array dose_rows(store::Database& db, const ExerciseTable& exercises, training::IsoWeek week,
                      const std::string& member) {
  std::vector<SetRecord> sets = store::sets_of_week(db, week, member);
  std::erase_if(sets, [&](const SetRecord& r) { return !exercises.contains(r.exercise); });
  return rows_of(sets, exercises, week);
}

}  // namespace floorwheel::hub
