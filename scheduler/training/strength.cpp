// SPDX-License-Identifier: GPL-3.0-or-later
// Equations by their first authors as named below; seven of them were seen in a secondary page only, Reynolds
// in the abstract (tests/reference/onerm_equations.csv says which). Floating point serves the estimates
// alone.
#include "scheduler/training/strength.h"

#include <algorithm>
#include <cmath>

namespace floorwheel::training {
namespace {

constexpr std::array<Equation, 10> all_equations = {{
    {"epley", "Epley 1985", {1, 10}, ""},
    {"brzycki", "Brzycki 1993", {1, 10}, ""},
    {"brzycki_decimal", "Brzycki 1993", {1, 10}, "", false},
    {"lombardi", "Lombardi 1989", {1, 10}, ""},
    {"lander", "Lander 1985", {1, 10}, ""},
    {"mayhew", "Mayhew et al. 1992", {1, 15}, ""},
    {"oconner", "O'Conner et al. 1989", {1, 10}, ""},
    {"wathan", "Wathan 1994", {1, 15}, ""},
    {"reynolds_leg_press", "Reynolds et al. 2006", {5, 5}, "leg-press"},
    {"reynolds_chest_press", "Reynolds et al. 2006", {5, 5}, "chest-press"},
}};

// NSCA training load chart (National Strength and Conditioning Association), rows 1-10 and 12.
constexpr std::array<ChartRow, 11> chart = {
    {{1, 100}, {2, 95}, {3, 93}, {4, 90}, {5, 87}, {6, 85}, {7, 83}, {8, 80}, {9, 77}, {10, 75}, {12, 70}}};

// Zourdos et al. 2016, J Strength Cond Res 30(1):267-275; Helms et al. 2016, Strength Cond J 38(4):42-49. The
// anchors are from memory.
constexpr std::array<EffortMark, 9> scale = {{{20, 0, 0},
                                              {19, 0, 0},
                                              {18, 1, 1},
                                              {17, 1, 2},
                                              {16, 2, 2},
                                              {15, 2, 3},
                                              {14, 3, 3},
                                              {12, 4, 6},
                                              {10, 4, 6}}};

std::optional<Mass> best_of(const Visit& v, const Equation& equation) {
  std::optional<Mass> best;
  for (const DoneSet& s : v.at_load)
    if (const auto estimate = one_rm(equation, v.load, s.reps + s.rir.value_or(0)); estimate)
      if (!best || *estimate > *best) best = estimate;
  return best;
}

std::optional<Mass> median_slope(const std::vector<TrendPoint>& points) {
  std::vector<std::int64_t> slopes;
  for (std::size_t a = 0; a < points.size(); ++a)
    for (std::size_t b = a + 1; b < points.size(); ++b)
      slopes.push_back(7 * (points[b].one_rm - points[a].one_rm).units / (points[b].day - points[a].day));
  if (slopes.empty()) return std::nullopt;
  std::ranges::sort(slopes);
  const std::size_t middle = slopes.size() / 2;
  if (slopes.size() % 2 == 1) return Mass{slopes[middle]};
  return Mass{(slopes[middle - 1] + slopes[middle]) / 2};
}

}  // namespace

std::span<const Equation> equations() { return all_equations; }

double as_printed(const Equation& equation, double load_kg, int reps) {
  const std::string_view id = equation.id;
  const double w = load_kg;
  const double r = reps;
  if (id == "epley") return w * (1 + r / 30);
  if (id == "brzycki") return w * 36 / (37 - r);  // no result from 37 on
  if (id == "brzycki_decimal") return w / (1.0278 - 0.0278 * r);
  if (id == "lombardi") return w * std::pow(r, 0.10);
  if (id == "lander") return 100 * w / (101.3 - 2.67123 * r);  // none from 38 on
  if (id == "mayhew") return 100 * w / (52.2 + 41.9 * std::exp(-0.055 * r));
  if (id == "oconner") return w * (1 + 0.025 * r);
  if (id == "wathan") return 100 * w / (48.8 + 53.8 * std::exp(-0.075 * r));
  if (id == "reynolds_leg_press") return 1.0970 * w + 14.2546;
  return 1.1307 * w + 0.6999;  // reynolds_chest_press
}

std::optional<Mass> one_rm(const Equation& equation, Mass load, int reps) {
  if (reps < equation.valid_reps[0] || reps > equation.valid_reps[1]) return std::nullopt;
  if (reps == 1) return load;
  // A double holds 10 µg exactly up to 90 000 t, so only the formula itself is rounded.
  constexpr std::int64_t unit = 1000;
  const double w = static_cast<double>(load.units) / static_cast<double>(Mass::per_kg);
  const double tens = as_printed(equation, w, reps) * (static_cast<double>(Mass::per_kg) / unit);
  return Mass{unit * static_cast<std::int64_t>(std::llround(tens))};
}

std::vector<Estimate> estimates(Mass load, int reps, std::string_view exercise) {
  std::vector<Estimate> out;
  for (const Equation& e : all_equations) {
    if (!e.shown || (!e.exercise.empty() && e.exercise != exercise)) continue;
    if (const auto mass = one_rm(e, load, reps)) out.push_back({&e, *mass});
  }
  return out;
}

std::span<const ChartRow> percent_chart() { return chart; }

std::optional<int> percent_for(int reps) {
  const auto row = std::ranges::find(chart, reps, &ChartRow::reps);
  return row == chart.end() ? std::nullopt : std::optional(row->percent);
}

std::span<const EffortMark> effort_scale() { return scale; }

std::optional<std::array<int, 2>> rir_of_effort(int halves) {
  const auto mark = std::ranges::find(scale, halves, &EffortMark::halves);
  if (mark == scale.end()) return std::nullopt;
  return std::array{mark->rir_low, mark->rir_high};
}

std::optional<std::array<int, 2>> effort_of_rir(int rir) {
  std::optional<std::array<int, 2>> range;
  for (const EffortMark& mark : scale) {
    if (rir < mark.rir_low || rir > mark.rir_high) continue;
    if (!range) range = {mark.halves, mark.halves};
    (*range)[0] = mark.halves;  // the scale falls
  }
  return range;
}

Trend trend_of(const Visits& visits, const Equation& equation, std::size_t most) {
  Trend trend;
  for (auto v = visits.worked.rbegin(); v != visits.worked.rend() && trend.points.size() < most; ++v)
    if (const auto best = best_of(*v, equation)) trend.points.push_back({v->day, *best});
  std::ranges::reverse(trend.points);
  trend.per_week = median_slope(trend.points);
  return trend;
}

}  // namespace floorwheel::training
