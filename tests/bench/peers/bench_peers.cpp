// SPDX-License-Identifier: GPL-3.0-or-later
// The rotation planner beside general solvers and against its own limits, on one core. Exit 1: a limit was
// missed. Peers that are not installed are left out, and it says so.
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <functional>

#include "tests/bench/peers/bench_rows.h"
#include "tests/bench/peers/solvers.h"

using namespace floorwheel;
using namespace floorwheel::peers;

namespace {

namespace fs = std::filesystem;

struct Row {
  const char* name;
  bool (*run)(const Settings&);
};
constexpr Row all_rows[] = {{"first", first_rotations}, {"cheapest", cheapest}, {"growth", growth},
                            {"hall", hall_like},        {"repair", repairs},    {"history", history}};

int usage() {
  std::fprintf(stderr,
               "bench_peers [--limit SECONDS] [--peer NAME] [--seed N] [--share PERCENT] [ROW...]\n"
               "  rows: first cheapest growth hall repair history; all of them by default\n"
               "  --limit  wall seconds that each peer gets (60)\n"
               "  --peer   this peer alone: clasp, cadical, gecode, 'gecode lns', cbc\n"
               "  --share  of the cases of hall, repair and history (100)\n");
  return 2;
}

/// One floor alone, for its peak memory: prints median seconds, cpu and wall, and what is missed.
int one(char** words) {
  const Size z{std::atoi(words[0]), std::atoi(words[1]), std::atoi(words[2]), std::atoi(words[3])};
  const ClassSpec c = regular_class(z, std::strtoull(words[4], nullptr, 10));
  const Ours our = ours(c, z.slots, Ask::first, 5);
  std::printf("%.9f %.9f %lld %lld\n", median(our.cpu_s), median(our.wall_s),
              static_cast<long long>(our.cost[Component::missed]),
              static_cast<long long>(our.cost[Component::back_to_back]));
  return our.holds ? 0 : 1;
}

const Row* row_named(const char* name) {
  for (const Row& row : all_rows)
    if (std::strcmp(row.name, name) == 0) return &row;
  return nullptr;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc == 7 && std::strcmp(argv[1], "--one") == 0) return one(argv + 2);
  Settings settings;
  std::vector<const Row*> wanted;
  for (int i = 1; i < argc; ++i) {
    const std::string word = argv[i];
    if (const Row* row = row_named(argv[i])) {
      wanted.push_back(row);
      continue;
    }
    if (++i == argc) return usage();
    if (word == "--limit")
      settings.limit_s = std::atof(argv[i]);
    else if (word == "--seed")
      settings.seed = std::strtoull(argv[i], nullptr, 10);
    else if (word == "--peer")
      settings.only = argv[i];
    else if (word == "--share")
      settings.share = std::atoi(argv[i]);
    else
      return usage();
  }
  if (settings.limit_s < 1 || settings.share < 1 || settings.share > 100) return usage();
  if (wanted.empty())
    for (const Row& row : all_rows) wanted.push_back(&row);

  const fs::path folder = fs::temp_directory_path() / ("bench_peers." + std::to_string(::getpid()));
  fs::create_directories(folder);
  settings.folder = folder;
  settings.self = fs::read_symlink("/proc/self/exe");
  double load[3] = {};
  if (::getloadavg(load, 3) < 1) load[0] = -1;
  std::printf("seed %llu, peers get %.0f s each; the machine's load is %.1f\n",
              static_cast<unsigned long long>(settings.seed), settings.limit_s, load[0]);
  for (Peer peer : {Peer::clasp, Peer::cadical, Peer::gecode, Peer::cbc})
    if (!is_installed(peer)) std::printf("%s is not installed and is left out\n", name_of(peer));
  bool kept = true;
  for (const Row* row : wanted) kept = row->run(settings) && kept;
  std::error_code ignored;
  fs::remove_all(folder, ignored);
  return kept ? 0 : 1;
}
