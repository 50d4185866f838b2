// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/week_cuts.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

namespace floorwheel::training {
namespace {

constexpr double near = 1e-6;
// Long fractions and large factors make tables that no longer compute well.
constexpr std::int64_t denominator_most = 40;
constexpr std::int64_t factor_most = 60;
constexpr int rounds_most = 12;
constexpr std::size_t cuts_a_round = 40;

bool whole(double x) { return std::abs(x - std::round(x)) < near; }

/// The least number that makes all multipliers whole; nothing where it is large.
std::optional<std::int64_t> common_denominator(const std::vector<double>& multipliers) {
  std::int64_t d = 1;
  for (const double y : multipliers) {
    if (std::abs(y) > 1000) return {};
    std::int64_t q = 1;
    while (!whole(y * static_cast<double>(d * q)))
      if (d * ++q > denominator_most) return {};
    d *= q;
  }
  return d;
}

std::int64_t modulo(std::int64_t a, std::int64_t d) { return ((a % d) + d) % d; }

/// Each variable is low + t or high - t, from the bound it is nearer to. The sum of Y (row - terms) = 0 over
/// whole variables, rounded: with t >= 0 and fractions f of the factors and f0
/// of the right side, sum of min(f / f0, (1 - f) / (1 - f0)) t >= 1.
std::optional<Cut> rounded(const WholeProgram& p, const BoundedSimplex& lp,
                           const std::vector<double>& multipliers, std::int64_t d) {
  const auto n = static_cast<std::size_t>(p.columns);
  std::vector<std::int64_t> factor(n + p.rows.size());
  for (std::size_t i = 0; i < p.rows.size(); ++i) {
    const std::int64_t y = std::llround(multipliers[i] * static_cast<double>(d));
    if (y == 0) continue;
    factor[n + i] += y;
    for (const auto& [column, f] : p.rows[i].terms) factor[static_cast<std::size_t>(column)] -= y * f;
  }
  std::int64_t right = 0;
  std::vector<char> from_high(factor.size());
  for (std::size_t v = 0; v < factor.size(); ++v) {
    if (factor[v] == 0) continue;
    from_high[v] = 2 * lp.value(v) > p.low[v] + p.high[v] ? 1 : 0;
    right -= factor[v] * (from_high[v] ? p.high[v] : p.low[v]);
    if (from_high[v]) factor[v] = -factor[v];
  }
  const std::int64_t f0 = modulo(right, d);
  if (f0 == 0) return {};
  // In t, then in x, then in the columns alone.
  std::vector<std::int64_t> terms(n);
  std::int64_t low = f0 * (d - f0);
  for (std::size_t v = 0; v < factor.size(); ++v) {
    const std::int64_t f = modulo(factor[v], d);
    std::int64_t g = f <= f0 ? f * (d - f0) : f0 * (d - f);
    if (g == 0 || p.low[v] == p.high[v]) continue;
    low += from_high[v] ? -g * p.high[v] : g * p.low[v];
    if (from_high[v]) g = -g;
    if (v < n)
      terms[v] += g;
    else
      for (const auto& [column, a] : p.rows[v - n].terms) terms[static_cast<std::size_t>(column)] += g * a;
  }
  std::int64_t common = 0;
  for (const std::int64_t t : terms) common = std::gcd(common, t);
  if (common == 0) return {};
  Cut cut;
  double sum = 0, square = 0;
  for (std::size_t v = 0; v < n; ++v) {
    const std::int64_t t = terms[v] / common;
    if (t == 0) continue;
    if (std::abs(t) > factor_most) return {};
    cut.terms.emplace_back(static_cast<int>(v), static_cast<int>(t));
    sum += static_cast<double>(t) * lp.value(v);
    square += static_cast<double>(t * t);
  }
  // Whole columns add up to whole numbers: the right side is rounded up.
  const std::int64_t up = low > 0 ? (low + common - 1) / common : -(-low / common);
  if (std::abs(up) > 1'000'000) return {};
  cut.low = static_cast<int>(up);
  cut.depth = (static_cast<double>(up) - sum) / std::sqrt(square);
  return cut;
}

}  // namespace

std::vector<Cut> deepest_cuts(const WholeProgram& p, const BoundedSimplex& lp, std::size_t most) {
  std::vector<Cut> cuts;
  for (std::size_t i = 0; i < p.rows.size(); ++i) {
    if (whole(lp.value(lp.basic(i)))) continue;
    const std::vector<double> multipliers = lp.multipliers(i);
    const auto d = common_denominator(multipliers);
    if (!d || *d == 1) continue;
    auto cut = rounded(p, lp, multipliers, *d);
    if (cut && cut->depth > 0.01) cuts.push_back(std::move(*cut));
  }
  std::ranges::stable_sort(cuts, std::ranges::greater{}, &Cut::depth);
  if (cuts.size() > most) cuts.resize(most);
  return cuts;
}

std::int64_t tighten(WholeProgram& p, std::int64_t work_most) {
  std::int64_t work = 0;
  const std::size_t rows = p.rows.size();
  double before = -1e9;
  int idle = 0;
  for (int round = 0; round <= rounds_most && work < work_most; ++round) {
    BoundedSimplex lp(p);
    const auto end = lp.solve(p.low, p.high, 1e12);
    work += lp.work();
    if (end != BoundedSimplex::End::optimal) break;
    // Rows that do not hold the bound only cost time.
    const auto n = static_cast<std::size_t>(p.columns);
    for (std::size_t i = p.rows.size(); i-- > rows;)
      if (lp.value(n + i) > p.low[n + i] + 0.5) p.remove_row(i);
    const double cost = lp.cost();
    idle = cost > before + 0.01 ? 0 : idle + 1;
    if (idle == 3 || round == rounds_most) break;
    before = std::max(before, cost);
    // The solution in lp is of the rows before any were dropped; those dropped had no part in it.
    BoundedSimplex again(p);
    if (again.solve(p.low, p.high, 1e12) != BoundedSimplex::End::optimal) break;
    work += again.work();
    const std::vector<Cut> cuts = deepest_cuts(p, again, cuts_a_round);
    if (cuts.empty()) break;
    for (const Cut& c : cuts) p.add_row(c.terms, c.low, most_of_any_row, 0);
  }
  return work;
}

}  // namespace floorwheel::training
