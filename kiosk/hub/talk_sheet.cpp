// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/talk_sheet.h"

#include <algorithm>

#include "kiosk/hub/training_page.h"
#include "kiosk/store/local_day.h"
#include "kiosk/store/talk.h"
#include "kiosk/store/training_sets.h"
#include "scheduler/training/dose.h"
#include "scheduler/training/visits.h"

namespace floorwheel::hub {
namespace json = boost::json;
using training::Day;
using training::SetRecord;
namespace {

constexpr int four_weeks = 28;  // days, today the last

/// Sets that run sheets place, in all and by group.
struct Planned {
  int sets = 0;
  std::array<int, group_count> by_group{};
};

void add_sheet(Planned& planned, const Room& room, const wire::ClassView& c, const std::string& member) {
  const auto row = std::ranges::find(c.sheet.rows, member, &RunSheetRow::member);
  const wire::MemberView* m = wire::find_member(c, member);
  if (row == c.sheet.rows.end() || m == nullptr) return;
  for (const std::string& id : row->stations) {
    const wire::StationView* station = id.empty() ? nullptr : wire::find_station(c, id);
    if (station == nullptr) continue;
    const auto substitute = m->exercises.find(id);
    const auto exercise =
        room.exercises.find(substitute == m->exercises.end() ? station->exercise : substitute->second);
    if (exercise == room.exercises.end()) continue;
    ++planned.sets;
    for (int g = 0; g < group_count; ++g)
      if (exercise->second.primary.contains(static_cast<Group>(g)))
        ++planned.by_group[static_cast<std::size_t>(g)];
  }
}

Planned planned_in(Room& room, const std::string& member, const std::vector<store::Uuid>& classes) {
  Planned planned;
  for (const store::Uuid& id : classes)
    if (const auto c = room.hall.classes.find(store::text_of(id)); c != room.hall.classes.end())
      add_sheet(planned, room, c->second, member);
  return planned;
}

/// Groups with a set done or planned, in the order of the vocabulary.
json::array groups(std::span<const training::DoseRow> dose, const Planned& planned) {
  json::array out;
  for (int g = 0; g < group_count; ++g) {
    const auto row = std::ranges::find(dose, static_cast<Group>(g), &training::DoseRow::group);
    const int done = row == dose.end() ? 0 : row->primary_sets;
    const int asked = planned.by_group[static_cast<std::size_t>(g)];
    if (done == 0 && asked == 0) continue;
    out.push_back({{"group", id_of(static_cast<Group>(g))},
                   {"done", done},
                   {"planned", asked},
                   {"band", training::id_of(training::band_of(100 * done))}});
  }
  return out;
}

/// The exercises of the member's trends with the load and repetitions of each visit.
json::array loads(const json::array& trends, const std::vector<SetRecord>& sets, Day today) {
  json::array out;
  for (const json::value& trend : trends) {
    std::vector<SetRecord> own;
    const std::string exercise(trend.at("exercise").as_string());
    const Day since = *training::day_from(trend.at("points").at(0).at("day").as_string());
    std::ranges::copy_if(sets, std::back_inserter(own),
                         [&](const SetRecord& r) { return r.exercise == exercise && r.day >= since; });
    json::array points;
    for (const training::Visit& v : training::visits_of(own, today).worked)
      points.push_back({{"day", text_of(v.day)}, {"load_kg", kg_of(v.load)}, {"reps", v.first_reps}});
    out.push_back({{"exercise", exercise},
                   {"name", trend.at("name")},
                   {"points", points},
                   {"per_week_kg", trend.at("per_week_kg")}});
  }
  return out;
}

json::value day_of(const Room& room, const store::SaidWords& said) {
  if (said.text.empty()) return nullptr;
  return json::value(store::local_day(said.civil_ms, room.now.utc_offset_s).date);
}

}  // namespace

json::object talk_sheet(Room& room, const std::string& member, Day today) {
  const training::IsoWeek week = training::iso_week_of(today);
  const Day monday = training::monday_of(week);
  const Day since{today.number - four_weeks + 1};
  const auto this_week = store::classes_between(room.database, member, text_of(monday), text_of(today));
  const auto lately = store::classes_between(room.database, member, text_of(since), text_of(today));
  std::vector<SetRecord> sets = store::sets_of_member(room.database, member);
  std::erase_if(sets, [&](const SetRecord& r) { return r.day > today; });
  const auto sets_since = [&](Day first) {
    return std::ranges::count_if(sets, [&](const SetRecord& r) { return r.day >= first; });
  };
  json::object counts{{"week", sets_since(monday)}, {"four_weeks", sets_since(since)}};
  std::erase_if(sets, [&](const SetRecord& r) { return !room.exercises.contains(r.exercise); });
  const Planned planned = planned_in(room, member, this_week);
  counts["planned"] = planned.sets;
  const store::TalkWords words = store::talk_words(room.database, member);
  return {{"day", text_of(today)},
          {"week", text_of(week)},
          {"visits", {{"week", this_week.size()}, {"four_weeks", lately.size()}}},
          {"sets", counts},
          {"groups", groups(training::dose(sets, room.exercises, {.week = week}), planned)},
          {"loads", loads(trends(room, member, today), sets, today)},
          {"goal", words.goal.text},
          {"goal_day", day_of(room, words.goal)},
          {"agreed", words.agreed.text},
          {"agreed_day", day_of(room, words.agreed)}};
}

}  // namespace floorwheel::hub
