// SPDX-License-Identifier: GPL-3.0-or-later
// Rows of the planner alone: growth with the floor, proofs, repairs, history.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <sstream>

#include "tests/bench/peers/bench_rows.h"
#include "tests/bench/peers/child.h"
#include "tests/support/cpu_clock.h"
#include "tests/support/planner_rows.h"

namespace floorwheel::peers {
namespace {

int of_hundred(int cases, int share) { return std::max(1, cases * share / 100); }

bool no_fault(const rows::Measured& row) {
  if (!row.fault.empty()) std::printf("  %s\n", row.fault.c_str());
  return row.fault.empty();
}

void print_times(const rows::Measured& row) {
  std::printf("  %d cases: cpu median %.1f ms, p99 %.1f ms, worst %.1f ms\n", row.cases,
              1e3 * median(row.cpu_s), 1e3 * percentile(row.cpu_s, 99), 1e3 * worst(row.cpu_s));
}

void print_moved(const rows::Repairs& row) {
  std::printf("  moved proven least in %d of %d, worst gap %lld", row.proven, row.cases,
              static_cast<long long>(row.worst_gap));
  if (row.worst_gap > 0) std::printf(" (--seed %llu)", static_cast<unsigned long long>(row.worst_seed));
  std::printf("\n");
}

/// The slope of the straight line through (x, y) by least squares.
double slope(const std::vector<double>& x, const std::vector<double>& y) {
  double mean_x = 0, mean_y = 0, above = 0, below = 0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    mean_x += x[i] / static_cast<double>(x.size());
    mean_y += y[i] / static_cast<double>(x.size());
  }
  for (std::size_t i = 0; i < x.size(); ++i) {
    above += (x[i] - mean_x) * (y[i] - mean_y);
    below += (x[i] - mean_x) * (x[i] - mean_x);
  }
  return above / below;
}

}  // namespace

bool growth(const Settings& settings) {
  const std::vector<Size> sizes{{12, 8, 8, 2},    {24, 12, 12, 2},  {40, 20, 20, 2},     {100, 33, 33, 4},
                                {200, 50, 50, 4}, {500, 75, 75, 7}, {1000, 100, 100, 10}};
  head_line("growth: first rotation, each size in a process of its own");
  std::vector<double> x, y;
  double last_s = 0, last_mib = 0;
  bool kept = true;
  for (const Size& z : sizes) {
    std::vector<std::string> words{settings.self, "--one"};
    for (int n : {z.members, z.stations, z.slots, z.capacity}) words.push_back(std::to_string(n));
    words.push_back(std::to_string(settings.seed));
    const Finished run = run_child(words, 600);
    std::istringstream in(run.printed);
    double wall_s = 0;
    std::int64_t missed = 0, back_to_back = 0;
    if (!(in >> last_s >> wall_s >> missed >> back_to_back) || run.code != 0)
      return verdict(name_of(z), false);
    last_mib = static_cast<double>(run.peak_kib) / 1024;
    std::printf("  %-18s cpu %8.4f s  wall %8.4f s  peak %6.1f MiB  missed %lld, back_to_back %lld\n",
                name_of(z).c_str(), last_s, wall_s, last_mib, static_cast<long long>(missed),
                static_cast<long long>(back_to_back));
    kept = kept && missed == 0 && back_to_back == 0;
    x.push_back(std::log(z.members * z.slots));
    y.push_back(std::log(last_s));
  }
  const double exponent = slope(x, y);
  std::printf("  time grows as (members x slots)^%.2f\n", exponent);
  kept = verdict("nothing missed, no back-to-back", kept);
  kept = verdict("exponent at most 1.3", exponent <= 1.3) && kept;
  return verdict("the largest within 1 s and 256 MiB", last_s <= 1 && last_mib <= 256) && kept;
}

bool hall_like(const Settings& settings) {
  head_line("hall-like, 24x12x14: proofs of missed, uneven, back_to_back within 2 s");
  const rows::HallLike row = rows::hall_like(settings.seed, of_hundred(200, settings.share), 2, thread_cpu_s);
  print_times(row);
  std::vector<double> gaps(row.short_rests.begin(), row.short_rests.end());
  std::printf("  proven %d of %d; short_rest above its bound: median %.0f, worst %.0f\n", row.proven,
              row.cases, median(gaps), worst(gaps));
  bool kept = verdict("rules and costs as stated", no_fault(row));
  kept = verdict("95 % proven", row.proven * 100 >= 95 * row.cases) && kept;
  return verdict("median gap 0", median(gaps) == 0) && kept;
}

bool repairs(const Settings& settings) {
  const int cases = of_hundred(1000, settings.share);
  head_line("repair at 40x20x20 c2");
  const rows::Repairs large = rows::repairs({40, 20, 20, 2, 2, 50}, settings.seed, cases, thread_cpu_s);
  print_times(large);
  print_moved(large);
  bool kept = verdict("rules, costs and history as stated", no_fault(large) && large.altered == 0);
  kept = verdict("p99 within 50 ms", percentile(large.cpu_s, 99) <= 0.05) && kept;
  head_line("repair at 12x10x12 c1 and c2");
  const rows::Repairs small = rows::repairs({}, settings.seed, cases, thread_cpu_s);
  print_times(small);
  print_moved(small);
  kept = verdict("rules, costs and history as stated", no_fault(small) && small.altered == 0) && kept;
  kept = verdict("95 % proven", small.proven * 100 >= 95 * small.cases) && kept;
  return verdict("worst gap at most 2", small.worst_gap <= 2) && kept;
}

bool history(const Settings& settings) {
  head_line("history: chains of changes, each repaired");
  const rows::History row = rows::history(settings.seed, of_hundred(1'000'000, settings.share), thread_cpu_s);
  print_times(row);
  std::printf("  %lld entries of history, %d repairs refused, %lld moved\n",
              static_cast<long long>(row.entries), row.refused, static_cast<long long>(row.altered));
  return verdict("no entry of history moved", no_fault(row) && row.altered == 0);
}

}  // namespace floorwheel::peers
