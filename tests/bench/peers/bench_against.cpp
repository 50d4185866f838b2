// SPDX-License-Identifier: GPL-3.0-or-later
// Our planner beside general solvers on the same floors. Ours runs in this process, the median of several
// runs; a peer's time is that of its process from start to its answer, reading the floor included and writing
// its file excluded.
#include <algorithm>
#include <cstdio>

#include "scheduler/rotation/audit.h"
#include "tests/bench/peers/bench_rows.h"
#include "tests/bench/peers/solvers.h"

namespace floorwheel::peers {
namespace {

void print_ours(const char* name, const Ours& our) {
  std::printf("  %-11s wall %9.4f s (worst %.4f)  cpu %9.4f s (worst %.4f)  %s\n", name, median(our.wall_s),
              worst(our.wall_s), median(our.cpu_s), worst(our.cpu_s),
              our.holds ? words_of(our.cost).c_str() : "BREAKS A RULE");
}

/// What the auditor says of a peer's answer; printed, and true if it is one that counts.
bool print_peer(const ClassSpec& c, Peer peer, Goal goal, const Asked& it, double limit_s, Cost& cost) {
  std::string text =
      it.answer.impossible ? "says there is none" : "none in " + std::to_string(int(limit_s)) + " s";
  bool good = false;
  if (it.answer.rotation && it.in_time) {
    const Audit a = audit(c, *it.answer.rotation);
    cost = a.cost;
    good = a.holds() && cost[Component::missed] == 0 && cost[Component::back_to_back] == 0;
    text = (a.holds() ? words_of(cost) : "breaks a rule: " + a.breaches.front().text) +
           (goal == Goal::cheapest && it.answer.optimal ? "; says it is the least" : "");
  }
  std::string first = "first      -   ";
  if (it.first_s >= 0) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "first %8.3f s", it.first_s);
    first = buffer;
  }
  std::printf("  %-11s wall %9.3f s  %s  cpu %9.3f s  %s\n", name_of(peer), it.wall_s, first.c_str(),
              it.cpu_s, text.c_str());
  std::fflush(stdout);
  return good;
}

bool asked_for(Peer peer, const Settings& settings) {
  return is_installed(peer) && (settings.only.empty() || settings.only == name_of(peer));
}

/// The best peer's seconds, or the limit that none of them kept.
struct Best {
  double wall_s;
  double cpu_s;
  bool any = false;
  void take(const Asked& it, bool good) {
    if (!good) return;
    wall_s = any ? std::min(wall_s, it.wall_s) : it.wall_s;
    cpu_s = any ? std::min(cpu_s, it.cpu_s) : it.cpu_s;
    any = true;
  }
};

struct FirstRow {
  Size size;
  double limit_s = 0;     // ours; 0: none stated
  double ratio = 0;       // at least so many times the best peer; 0: none stated
  bool no_clasp = false;  // clasp is to have none
};

bool first_row(const FirstRow& row, const Settings& settings) {
  const ClassSpec c = regular_class(row.size, settings.seed);
  const Floor f = floor_of(c, row.size.slots);
  head_line("first rotation without back-to-back, " + name_of(row.size));
  const Ours our = ours(c, row.size.slots, Ask::first, 7);
  print_ours("ours", our);
  Best best{settings.limit_s, settings.limit_s};
  bool clasp_has = false;
  for (Peer peer : peers_for(Goal::any)) {
    if (!asked_for(peer, settings)) continue;
    const Asked it = ask(peer, f, Goal::any, settings.limit_s, settings.folder);
    Cost cost;
    const bool good = print_peer(c, peer, Goal::any, it, settings.limit_s, cost);
    best.take(it, good);
    clasp_has = clasp_has || (peer == Peer::clasp && good);
  }
  const double ratio = best.cpu_s / std::max(1e-9, median(our.cpu_s));
  std::printf("  ratio       %s%.0f by wall, %.0f by cpu\n", best.any ? "" : "more than ",
              best.wall_s / std::max(1e-9, median(our.wall_s)), ratio);
  bool kept =
      verdict("nothing missed, no back-to-back, rules kept",
              our.holds && our.cost[Component::missed] == 0 && our.cost[Component::back_to_back] == 0);
  if (row.limit_s > 0)
    kept = verdict("ours within " + std::to_string(static_cast<int>(1000 * row.limit_s)) + " ms",
                   median(our.cpu_s) <= row.limit_s) &&
           kept;
  if (row.ratio > 0)
    kept = verdict("at least " + std::to_string(static_cast<int>(row.ratio)) + " times the best peer",
                   ratio >= row.ratio) &&
           kept;
  if (row.no_clasp) kept = verdict("clasp has none", !clasp_has) && kept;
  return kept;
}

bool cheapest_row(const Size& z, const Settings& settings) {
  ClassSpec c = regular_class(z, settings.seed, Layout::in_a_row);
  c.style = Style::free;
  const Floor f = floor_of(c, z.slots);
  const Weights w = weights_of(f);
  head_line("cheapest rotation, " + name_of(z) + ": " + std::to_string(w.idle) + " an idle slot, " +
            std::to_string(w.assist) + " an overlap, " + std::to_string(w.walk) + " for " +
            std::to_string(f.walk_unit_cm) + " cm; back-to-backs forbidden");
  // As people get it, and with more effort: the planner stops long before a peer's limit by itself.
  Ours our;
  for (const auto& [name, times] : {std::pair{"ours", 1}, {"ours x16", 16}, {"ours x256", 256}}) {
    const Ours more = ours(c, z.slots, Ask::plan, times > 16 ? 1 : 5, times);
    print_ours(name, more);
    if (our.cpu_s.empty() || (more.holds && more.cost < our.cost)) our = more;
  }
  std::printf("  the best of ours is proven in the first %d of %d components\n", our.proven,
              component_count - 1);
  bool beaten = false;
  for (Peer peer : peers_for(Goal::cheapest)) {
    if (!asked_for(peer, settings)) continue;
    Cost cost;
    const Asked it = ask(peer, f, Goal::cheapest, settings.limit_s, settings.folder);
    if (print_peer(c, peer, Goal::cheapest, it, settings.limit_s, cost)) beaten = beaten || cost < our.cost;
  }
  return verdict("no peer is cheaper", our.holds && !beaten);
}

}  // namespace

bool first_rotations(const Settings& settings) {
  const std::vector<FirstRow> rows{{{8, 8, 8, 1}},
                                   {{12, 10, 12, 1}},
                                   {{20, 12, 12, 2}},
                                   {{40, 20, 20, 2}, 0.005, 50},
                                   {{200, 50, 50, 4}, 0.05, 0, true}};
  bool kept = true;
  for (const FirstRow& row : rows) kept = first_row(row, settings) && kept;
  return kept;
}

bool cheapest(const Settings& settings) {
  bool kept = true;
  for (const Size& z : {Size{8, 8, 8, 1}, Size{12, 10, 12, 1}}) kept = cheapest_row(z, settings) && kept;
  return kept;
}

}  // namespace floorwheel::peers
