// SPDX-License-Identifier: GPL-3.0-or-later
// Short makers of set records for tests: one member, one exercise, dates and sets.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <vector>

#include "scheduler/training/set_record.h"

namespace floorwheel::build {

struct SetOf {
  int reps;
  std::optional<int> rir;
};

/// Records of member m01 and one exercise, a set every three minutes.
class SetLog {
 public:
  explicit SetLog(std::string exercise = "goblet-squat") : exercise_(std::move(exercise)) {}

  SetLog& visit(const char* date, training::Mass load, std::initializer_list<SetOf> sets) {
    for (const SetOf& s : sets) add(date, load, s);
    return *this;
  }
  training::SetRecord& add(const char* date, training::Mass load, SetOf set,
                           training::SetKind kind = training::SetKind::working) {
    training::SetRecord r;
    r.member = "m01";
    r.exercise = exercise_;
    r.day = training::day_from(date).value();
    r.instant_us = std::int64_t{r.day.number} * 86'400'000'000 + std::int64_t(records.size()) * 180'000'000;
    r.kind = kind;
    r.load = load;
    r.reps = set.reps;
    r.rir = set.rir;
    records.push_back(r);
    return records.back();
  }

  std::vector<training::SetRecord> records;

 private:
  std::string exercise_;
};

inline std::vector<training::Weight> floor_kg(std::initializer_list<double> kg) {
  std::vector<training::Weight> loads;
  for (double k : kg) loads.push_back({training::Mass::grams(static_cast<std::int64_t>(k * 1000 + 0.5))});
  return loads;
}

}  // namespace floorwheel::build
