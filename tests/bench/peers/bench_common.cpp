// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <chrono>
#include <cstdio>

#include "scheduler/rotation/audit.h"
#include "scheduler/rotation/solve.h"
#include "tests/bench/peers/bench_rows.h"
#include "tests/support/cpu_clock.h"

namespace floorwheel::peers {

Ours ours(const ClassSpec& c, int slots, Ask ask, int runs, int effort_times) {
  Ours out;
  const PlanOptions options{.effort_times = effort_times};
  for (int i = 0; i < runs; ++i) {
    const auto start = std::chrono::steady_clock::now();
    const double cpu = thread_cpu_s();
    const OrRefusal<Plan> outcome = ask == Ask::first ? first_rotation(c, slots) : plan(c, slots, options);
    out.cpu_s.push_back(thread_cpu_s() - cpu);
    out.wall_s.push_back(std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
    const Plan* answer = std::get_if<Plan>(&outcome);
    if (answer == nullptr) return out;
    const Audit a = audit(c, answer->rotation);
    out.cost = a.cost;
    out.proven = answer->proven;
    out.holds = a.holds();
    if (!out.holds) return out;
  }
  return out;
}

double percentile(std::vector<double> values, int percent) {
  if (values.empty()) return 0;
  std::sort(values.begin(), values.end());
  const std::size_t at = (values.size() * static_cast<std::size_t>(percent) + 99) / 100;
  return values[std::clamp<std::size_t>(at, 1, values.size()) - 1];
}

double median(std::vector<double> values) { return percentile(std::move(values), 50); }

double worst(const std::vector<double>& values) { return percentile(values, 100); }

std::string words_of(const Cost& cost) {
  std::string out;
  for (Component c : {Component::missed, Component::back_to_back, Component::idle, Component::assist_overlap,
                      Component::walk_cm})
    out += (out.empty() ? "" : ", ") + std::string(id_of(c)) + " " + std::to_string(cost[c]);
  return out;
}

void head_line(const std::string& title) { std::printf("\n%s\n", title.c_str()); }

bool verdict(const std::string& what, bool kept) {
  std::printf("  %-74s %s\n", what.c_str(), kept ? "ok" : "MISSED");
  std::fflush(stdout);
  return kept;
}

}  // namespace floorwheel::peers
