// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/week_simplex.h"

#include <algorithm>
#include <cmath>

namespace floorwheel::training {
namespace {

constexpr double broken = 1e-7;       // a bound is broken by more than this
constexpr double small = 1e-9;        // no pivot below this
constexpr double flat = 1e-10;        // a reduced cost of no sign
constexpr int unit_bits = 20;         // multipliers become whole 2^-20
constexpr int exchanges_most = 1500;  // then the table is begun anew

/// A cost of its own for each column, so that ties are few; it moves the bound by less than the rounding up
/// takes back.
double nudge(std::size_t column) {
  return 1e-6 * (1.0 + static_cast<double>(column * 2654435761u % 1009u) / 1009.0);
}

}  // namespace

BoundedSimplex::BoundedSimplex(const WholeProgram& p)
    : p_(p),
      n_(static_cast<std::size_t>(p.columns)),
      m_(p.rows.size()),
      x_(n_ + m_),
      weight_(n_ + m_, 1.0),
      at_high_(n_) {
  for (std::size_t i = 0; i < m_; ++i) {
    double square = 1;
    for (const auto& [column, factor] : p.rows[i].terms) square += factor * factor;
    weight_[n_ + i] = 1 / std::sqrt(square);
  }
  begin();
}

void BoundedSimplex::begin() {
  table_.assign(n_ * m_, 0);
  reduced_.resize(n_);
  outside_.resize(n_);
  basic_.resize(m_);
  for (std::size_t j = 0; j < n_; ++j) {
    outside_[j] = j;
    reduced_[j] = p_.cost[j] + nudge(j);
    at_high_[j] = 0;
  }
  for (std::size_t i = 0; i < m_; ++i) {
    basic_[i] = n_ + i;
    for (const auto& [column, factor] : p_.rows[i].terms)
      table_[i * n_ + static_cast<std::size_t>(column)] += factor;
  }
  exchanges_ = 0;
}

void BoundedSimplex::place(const std::vector<int>& low, const std::vector<int>& high) {
  low_ = low;
  high_ = high;
  for (std::size_t j = 0; j < n_; ++j) {
    const std::size_t v = outside_[j];
    if (reduced_[j] > flat) at_high_[j] = 0;
    if (reduced_[j] < -flat) at_high_[j] = 1;
    x_[v] = at_high_[j] ? high_[v] : low_[v];
  }
  compute_basic();
}

void BoundedSimplex::compute_basic() {
  std::vector<double> at(n_);
  for (std::size_t j = 0; j < n_; ++j) at[j] = x_[outside_[j]];
  for (std::size_t i = 0; i < m_; ++i) {
    const double* row = table_row(i);
    double sum = 0;
    for (std::size_t j = 0; j < n_; ++j) sum += row[j] * at[j];
    x_[basic_[i]] = sum;
  }
  work_ += static_cast<std::int64_t>(n_ * m_);
}

double BoundedSimplex::cost() const {
  double sum = 0;
  for (std::size_t j = 0; j < n_; ++j) sum += reduced_[j] * x_[outside_[j]];
  return sum;
}

/// The basic variable that breaks a bound most.
bool BoundedSimplex::choose_row() {
  missing_ = broken;
  bool found = false;
  double missing = 0;
  for (std::size_t i = 0; i < m_; ++i) {
    const std::size_t v = basic_[i];
    const double under = low_[v] - x_[v], over = x_[v] - high_[v];
    const double off = std::max(under, over) * weight_[v];
    if (off <= missing_) continue;
    missing_ = off;
    missing = std::max(under, over);
    row_ = i;
    rises_ = under > over ? 1 : -1;
    found = true;
  }
  missing_ = missing;
  return found;
}

/// Goes along the breaks of the dual cost while it still rises; variables passed change their bound.
bool BoundedSimplex::choose_column() {
  const double* row = table_row(row_);
  breaks_.clear();
  for (std::size_t j = 0; j < n_; ++j) {
    const std::size_t v = outside_[j];
    const double slope = rises_ * row[j];
    if (low_[v] == high_[v] || std::abs(slope) < small) continue;
    if ((slope > 0) == (at_high_[j] != 0)) continue;
    breaks_.push_back({std::abs(reduced_[j]) / std::abs(slope), std::abs(slope), j});
  }
  std::ranges::sort(breaks_, [](const Break& a, const Break& b) {
    return a.ratio != b.ratio ? a.ratio < b.ratio : a.column < b.column;
  });
  double slope = missing_;
  std::size_t last = 0;
  for (; last < breaks_.size(); ++last) {
    const std::size_t v = outside_[breaks_[last].column];
    slope -= breaks_[last].size * (high_[v] - low_[v]);
    if (slope <= broken) break;
  }
  if (last == breaks_.size()) return false;
  // Of those about as near, the largest entry keeps the table sound.
  std::size_t best = last;
  for (std::size_t b = last; b-- > 0 && breaks_[b].ratio > breaks_[last].ratio - 1e-9;)
    if (breaks_[b].size > breaks_[best].size) best = b;
  for (std::size_t b = last + 1; b < breaks_.size() && breaks_[b].ratio < breaks_[last].ratio + 1e-9; ++b)
    if (breaks_[b].size > breaks_[best].size) best = b;
  column_ = breaks_[best].column;
  const std::size_t passed = std::min(best, last);
  for (std::size_t b = 0; b < passed; ++b) {
    const std::size_t j = breaks_[b].column, v = outside_[j];
    const double by = at_high_[j] ? low_[v] - high_[v] : high_[v] - low_[v];
    at_high_[j] ^= 1;
    x_[v] += by;
    for (std::size_t i = 0; i < m_; ++i) x_[basic_[i]] += table_[i * n_ + j] * by;
  }
  work_ += static_cast<std::int64_t>(n_ + passed * m_);
  return true;
}

/// The basic variable of row_ goes to its bound and out, the one of column_ comes in.
void BoundedSimplex::exchange() {
  double* row = table_row(row_);
  const std::size_t leaves = basic_[row_], enters = outside_[column_];
  const double pivot = row[column_];
  const double bound = rises_ > 0 ? low_[leaves] : high_[leaves];
  const double by = (bound - x_[leaves]) / pivot;
  for (std::size_t i = 0; i < m_; ++i) x_[basic_[i]] += table_[i * n_ + column_] * by;
  x_[enters] += by;
  x_[leaves] = bound;

  const double inverse = 1 / pivot;
  filled_.clear();
  for (std::size_t j = 0; j < n_; ++j) {
    if (j == column_ || row[j] == 0) continue;
    row[j] *= -inverse;
    filled_.push_back(j);
  }
  row[column_] = inverse;
  const auto add = [&](double* to, double factor) {
    if (filled_.size() * 3 > n_)
      for (std::size_t j = 0; j < n_; ++j) to[j] += factor * row[j];
    else
      for (const std::size_t j : filled_) to[j] += factor * row[j];
  };
  for (std::size_t i = 0; i < m_; ++i) {
    double* to = table_row(i);
    const double factor = to[column_];
    if (i == row_ || std::abs(factor) < 1e-12) {
      if (i != row_) to[column_] = 0;
      continue;
    }
    to[column_] = 0;
    add(to, factor);
    to[column_] = factor * inverse;
    work_ += static_cast<std::int64_t>(std::min(n_, 3 * filled_.size()));
  }
  const double price = reduced_[column_];
  reduced_[column_] = 0;
  add(reduced_.data(), price);
  reduced_[column_] = price * inverse;
  basic_[row_] = enters;
  outside_[column_] = leaves;
  at_high_[column_] = rises_ > 0 ? 0 : 1;
  ++exchanges_;
}

BoundedSimplex::End BoundedSimplex::solve(const std::vector<int>& low, const std::vector<int>& high,
                                          double enough) {
  if (exchanges_ > exchanges_most) begin();
  place(low, high);
  for (std::size_t i = 0; i < n_ + m_; ++i)
    if (low_[i] > high_[i]) return end_ = End::infeasible;
  const std::size_t steps_most = 200 + 10 * (n_ + m_);
  for (std::size_t step = 0; step < steps_most; ++step) {
    if (!choose_row()) return end_ = End::optimal;
    if (!choose_column()) return end_ = End::infeasible;
    exchange();
    if (step % 8 == 7 && cost() > enough) return end_ = End::above;
  }
  begin();
  place(low, high);
  return end_ = End::tired;
}

std::vector<double> BoundedSimplex::multipliers(std::size_t i) const {
  std::vector<double> y(m_, 0.0);
  if (basic_[i] >= n_) y[basic_[i] - n_] = 1;
  for (std::size_t j = 0; j < n_; ++j)
    if (outside_[j] >= n_) y[outside_[j] - n_] = -table_[i * n_ + j];
  return y;
}

/// On every solution row - terms is 0, so that cost + multipliers · (row - terms) is the cost; its least
/// value between the bounds is a bound of it, in 2^-bits. Whole numbers from here on; large multipliers take
/// coarser units, so that no sum overflows.
BoundedSimplex::Bound BoundedSimplex::certificate(const std::vector<double>& multipliers,
                                                  bool with_cost) const {
  double largest = 1;
  for (const double m : multipliers) largest = std::max(largest, std::abs(m));
  int bits = unit_bits;
  for (; largest > 1 && bits > 0; largest /= 2) --bits;
  if (!(largest <= 1)) return {-nothing, 0};
  const auto unit = static_cast<double>(std::int64_t{1} << bits);
  std::vector<std::int64_t> price(n_);
  if (with_cost)
    for (std::size_t j = 0; j < n_; ++j) price[j] = std::int64_t{p_.cost[j]} * (std::int64_t{1} << bits);
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < m_; ++i) {
    const std::int64_t y = std::llround(multipliers[i] * unit);
    if (y == 0) continue;
    sum += y * (y > 0 ? low_[n_ + i] : high_[n_ + i]);
    for (const auto& [column, factor] : p_.rows[i].terms)
      price[static_cast<std::size_t>(column)] -= y * factor;
  }
  for (std::size_t j = 0; j < n_; ++j) sum += price[j] * (price[j] > 0 ? low_[j] : high_[j]);
  return {sum, bits};
}

std::int64_t BoundedSimplex::proven() const {
  for (std::size_t v = 0; v < n_ + m_; ++v)
    if (low_[v] > high_[v]) return nothing;
  std::vector<double> y(m_, 0.0);
  for (std::size_t j = 0; j < n_; ++j)
    if (outside_[j] >= n_) y[outside_[j] - n_] = reduced_[j];
  const auto [scaled, bits] = certificate(y, true);
  const std::int64_t one = std::int64_t{1} << bits;
  const std::int64_t bound = scaled <= 0 ? -(-scaled / one) : (scaled + one - 1) / one;
  if (end_ != End::infeasible) return bound;
  // The row that cannot be mended contradicts its bounds.
  y = multipliers(row_);
  for (double& m : y) m *= rises_;
  return certificate(y, false).scaled > 0 ? nothing : bound;
}

}  // namespace floorwheel::training
