// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/dose.h"

#include <algorithm>
#include <array>
#include <bitset>
#include <cassert>
#include <unordered_map>

namespace floorwheel::training {
namespace {

struct Work {
  int primary = 0;
  int assisting = 0;
  std::bitset<7> days;
};
using WeekOfWork = std::array<Work, group_count>;

/// Weeks of one member by the Monday's day number.
using Weeks = std::unordered_map<std::int32_t, WeekOfWork>;

void count(WeekOfWork& week, const Exercise& e, int weekday) {
  for (int g = 0; g < group_count; ++g) {
    Work& work = week[static_cast<std::size_t>(g)];
    if (e.primary.contains(static_cast<Group>(g))) {
      ++work.primary;
      work.days.set(static_cast<std::size_t>(weekday - 1));
    } else if (e.assisting.contains(static_cast<Group>(g))) {
      ++work.assisting;
    }
  }
}

void add_rows(std::vector<DoseRow>& rows, std::string_view member, std::int32_t monday,
              const WeekOfWork& week, int assisting_percent) {
  for (int g = 0; g < group_count; ++g) {
    const Work& work = week[static_cast<std::size_t>(g)];
    if (work.primary == 0 && work.assisting == 0) continue;
    rows.push_back({std::string(member), iso_week_of({monday}), static_cast<Group>(g), work.primary,
                    work.assisting, static_cast<int>(work.days.count()),
                    100 * work.primary + assisting_percent * work.assisting});
  }
}

}  // namespace

std::vector<DoseRow> dose(std::span<const SetRecord> records, const ExerciseTable& table,
                          const DoseOptions& options) {
  std::unordered_map<std::string_view, const Exercise*> exercises;
  for (const auto& [id, e] : table) exercises.emplace(id, &e);
  std::unordered_map<std::string_view, Weeks> members;
  for (const SetRecord& r : records) {
    if (r.kind != SetKind::working) continue;
    if (!options.member.empty() && r.member != options.member) continue;
    if (options.week && iso_week_of(r.day) != *options.week) continue;
    const auto e = exercises.find(r.exercise);
    assert(e != exercises.end());
    const int weekday = weekday_of(r.day);
    count(members[r.member][r.day.number - (weekday - 1)], *e->second, weekday);
  }

  std::vector<DoseRow> rows;
  std::vector<std::string_view> names;
  for (const auto& [member, weeks] : members) names.push_back(member);
  std::sort(names.begin(), names.end());
  for (std::string_view member : names) {
    const Weeks& weeks = members[member];
    std::vector<std::int32_t> mondays;
    for (const auto& [monday, week] : weeks) mondays.push_back(monday);
    std::sort(mondays.begin(), mondays.end());
    for (std::int32_t monday : mondays)
      add_rows(rows, member, monday, weeks.at(monday), options.assisting_percent);
  }
  return rows;
}

DoseBand band_of(Centisets sets) {
  if (sets < 300) return DoseBand::under_3;
  if (sets < 1000) return DoseBand::from_3_to_9;
  return sets <= 1500 ? DoseBand::from_10_to_15 : DoseBand::over_15;
}

std::string_view id_of(DoseBand band) {
  constexpr std::array<std::string_view, 4> ids = {"under_3", "3_to_9", "10_to_15", "over_15"};
  return ids[static_cast<std::size_t>(band)];
}

std::string_view class_by_schoenfeld_2017(Centisets sets) {
  if (sets < 500) return "low";
  return sets < 1000 ? "middle" : "high";
}

std::string_view class_by_baz_valle_2022(Centisets sets) {
  if (sets < 1200) return "low";
  return sets <= 2000 ? "moderate" : "high";
}

}  // namespace floorwheel::training
