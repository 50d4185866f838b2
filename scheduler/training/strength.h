// SPDX-License-Identifier: GPL-3.0-or-later
// Strength estimates: the load that could be lifted once, from a load lifted several times. Published
// equations with the repetitions they hold for, a published chart of percentages, the effort scale by
// repetitions in reserve, and a trend. Sources stand beside each value in strength.cpp and in
// tests/reference. Nothing is decided by an estimate: it is shown.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "scheduler/training/visits.h"

namespace floorwheel::training {

struct Equation {
  std::string_view id;   // as in tests/reference/onerm_equations.csv
  std::string_view who;  // author and year
  std::array<int, 2> valid_reps;
  std::string_view exercise;  // the only one it holds for; "" for any
  bool shown = true;          // false: another form of one that is shown, kept for comparison
};
/// In the order they are shown.
std::span<const Equation> equations();
/// Kilograms by the formula as printed, outside its range too.
double as_printed(const Equation&, double load_kg, int reps);

/// Rounded to 10 µg. One repetition returns the load itself, whatever the equation. Nothing outside its
/// range.
std::optional<Mass> one_rm(const Equation&, Mass load, int reps);

struct Estimate {
  const Equation* equation;
  Mass one_rm;
};
/// Every equation that holds for these repetitions and, where bound to one, this exercise ("": any).
std::vector<Estimate> estimates(Mass load, int reps, std::string_view exercise = {});

/// Percent of one-repetition maximum by repetitions: the NSCA training load chart, 12 repetitions 70 %.
struct ChartRow {
  int reps;
  int percent;
};
std::span<const ChartRow> percent_chart();
std::optional<int> percent_for(int reps);

/// Repetitions in reserve that a mark of the effort scale stands for; the mark is in halves (17 is 8.5).
struct EffortMark {
  int halves;
  int rir_low;
  int rir_high;
};
std::span<const EffortMark> effort_scale();
std::optional<std::array<int, 2>> rir_of_effort(int halves);
/// The lowest and the highest mark that may stand for a reserve.
std::optional<std::array<int, 2>> effort_of_rir(int rir);

struct TrendPoint {
  Day day;
  Mass one_rm;  // the best estimate of the visit
};
struct Trend {
  std::vector<TrendPoint> points;  // in order of days
  std::optional<Mass> per_week;    // median of the slopes between all pairs; none under two points
};
/// By one equation over the last `most` visits that hold a set in its range; the set's recorded reserve
/// counts as repetitions that could have followed. Slope: Theil 1950, Sen 1968.
Trend trend_of(const Visits&, const Equation&, std::size_t most = 12);

}  // namespace floorwheel::training
