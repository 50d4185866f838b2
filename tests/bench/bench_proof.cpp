// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of proofs: regular classes (tests/support/regular.h) planned free and as the planner chooses, with
// their certificates checked; median of 5 seeds a line, on one core.
//   time   plan(), its own check included: processor time, so that other work on the machine does not count
//   gap    of walk_cm, where all before it is proven; 'all': every component is proven
// Use: bench_proof [MEMBERS STATIONS SLOTS CAPACITY]
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <vector>

#include "scheduler/rotation/certificate.h"
#include "scheduler/rotation/solve.h"
#include "tests/support/regular.h"

namespace {

using namespace floorwheel;

struct Size {
  int members, stations, slots, capacity;
  double limit_ms;
  long long effort = 400'000'000;
};

void measure(const Size& z, Style style) {
  std::vector<double> ms, check_ms, gap;
  int all_proven = 0;
  int held = 0;
  for (std::uint64_t seed = 1; seed <= 5; ++seed) {
    ClassSpec c = floors::regular(z.members, z.stations, z.capacity, seed);
    c.style = style;
    Certificate certificate;
    PlanOptions options;
    options.certificate = &certificate;
    options.proof_effort = z.effort;
    const auto now = [] { return static_cast<double>(std::clock()) * 1000 / CLOCKS_PER_SEC; };
    const auto start = now();
    const OrRefusal<Plan> answer = plan(c, z.slots, options);
    const auto planned = now();
    const CertificateVerdict v = check_certificate(c, z.slots, certificate);
    const auto checked = now();
    ms.push_back(planned - start);
    check_ms.push_back(checked - planned);
    const Plan& p = std::get<Plan>(answer);
    if (std::getenv("BENCH_VERBOSE")) {
      for (Component k : components) std::printf(" %lld/%lld", (long long)p.bound[k], (long long)p.cost[k]);
      std::printf("  proven %d  %.1f ms\n", p.proven, ms.back());
    }
    const auto walk = static_cast<double>(p.cost[Component::walk_cm]);
    gap.push_back(p.proven >= 6 ? 100 * (walk - static_cast<double>(p.bound[Component::walk_cm])) / walk
                                : 100);
    all_proven += p.proven == 8 ? 1 : 0;
    held += v.holds() && std::none_of(v.claims.begin(), v.claims.end(),
                                      [](const ClaimVerdict& one) { return one.verdict != Verdict::holds; })
                ? 1
                : 0;
  }
  for (auto* list : {&ms, &check_ms, &gap}) std::sort(list->begin(), list->end());
  std::printf(
      "%3d x %2d x %2d  capacity %d  %-4s  time %8.1f ms (worst %8.1f, limit %6.0f)  check %7.1f ms  "
      "all proven %d of 5, rechecked %d  gap %.3f %% (worst %.3f)\n",
      z.members, z.stations, z.slots, z.capacity, std::string(id_of(style)).c_str(), ms[2], ms[4], z.limit_ms,
      check_ms[2], all_proven, held, gap[2], gap[4]);
  std::fflush(stdout);
}

}  // namespace

int main(int argc, char** argv) {
  std::vector<Size> sizes = {{8, 8, 8, 1, 30},
                             {12, 10, 12, 1, 1000},
                             {20, 12, 12, 2, 1000},
                             {28, 14, 14, 2, 4000, 3'000'000'000},
                             {40, 20, 20, 2, 5000, 4'000'000'000}};
  if (argc >= 5)
    sizes = {{std::atoi(argv[1]), std::atoi(argv[2]), std::atoi(argv[3]), std::atoi(argv[4]), 0,
              argc > 5 ? std::atoll(argv[5]) : 400'000'000}};
  for (const Size& z : sizes)
    for (Style style : {Style::free, Style::automatic}) measure(z, style);
}
