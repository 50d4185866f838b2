// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of `floorwheel plan` as a person waits for it: the whole process, from start to exit, on this
// machine.
//   plan_demo         config/demo/hall.class.toml                  limit 0.5 s
//   plan_24_16_16     24 members, 16 stations, 16 slots, features  limit 1.0 s
// The second plans classes made by chance from a printed seed, with windows, exclusions, closed stations,
// equipment, pairs, two laps of some and scarce places, and has each answer audited.
// Use: bench_plan FOLDER_OF_PROGRAMS SOURCE_FOLDER [SEED]
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

struct Run {
  double ms = 0;
  int code = -1;
};

/// Runs a program with its output in a file; the time includes start and exit.
Run timed(const std::vector<std::string>& words, const std::string& output) {
  const auto start = std::chrono::steady_clock::now();
  const pid_t pid = ::fork();
  if (pid == 0) {
    std::vector<char*> argv;
    for (const std::string& w : words) argv.push_back(const_cast<char*>(w.c_str()));
    argv.push_back(nullptr);
    if (!std::freopen(output.c_str(), "w", stdout) || !std::freopen("/dev/null", "w", stderr)) _exit(126);
    ::execv(argv[0], argv.data());
    _exit(127);
  }
  int status = 0;
  ::waitpid(pid, &status, 0);
  const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
  return {took.count(), WIFEXITED(status) ? WEXITSTATUS(status) : -1};
}

struct Figure {
  std::string name;
  double limit_ms;
  std::vector<double> ms{};
  int wrong = 0;
};

bool print(Figure f) {
  std::sort(f.ms.begin(), f.ms.end());
  if (f.ms.empty()) return false;
  const double worst = f.ms.back();
  const bool good = worst < f.limit_ms && f.wrong == 0;
  std::printf("%-16s runs %3zu  median %7.1f ms  worst %7.1f ms  limit %6.0f ms  wrong answers %d  %s\n",
              f.name.c_str(), f.ms.size(), f.ms[f.ms.size() / 2], worst, f.limit_ms, f.wrong,
              good ? "ok" : "MISSED");
  return good;
}

/// A class of 24 members, 16 stations and 16 slots with any features.
std::string class_by_chance(std::mt19937_64& random) {
  const auto below = [&](unsigned n) { return static_cast<unsigned>(random() % n); };
  const std::vector<std::string> exercises{"goblet-squat", "press-up",      "seated-row",  "split-squat",
                                           "bench-press",  "leg-curl",      "biceps-curl", "calf-raise",
                                           "side-plank",   "bent-over-row", "leg-press",   "plank",
                                           "face-pull",    "chest-press",   "lunge",       "crunch"};
  const std::vector<std::string> groups{"shoulders", "lower_back", "calves", "biceps"};
  const std::vector<std::string> features{"overhead", "floor", "balance", "deep-knee", "kneeling"};
  const std::vector<std::string> levels{"novice", "intermediate", "advanced"};
  std::ostringstream out;
  out << "[class]\nname = \"By chance\"\nlaps = " << 1 + below(2)
      << "\nwork_s = 40\nchange_s = 20\nslots = 16\n[[break]]\nafter_slot = 8\ns = 60\n"
      << "[[equipment]]\nid = \"kettlebell\"\nunits = " << 2 + below(4) << "\n";
  for (unsigned s = 0; s < 16; ++s) {
    out << "[[station]]\nid = \"s" << s << "\"\nexercise = \"" << exercises[(s + below(3)) % 16]
        << "\"\ncapacity = " << 1 + below(3) << "\nat = [" << s % 4 * 3 << ", " << s / 4 * 3 << "]\n";
    if (below(4) == 0) out << "equipment = [\"kettlebell\"]\n";
    if (below(5) == 0) out << "closed = [[" << 1 + below(8) << ", " << 9 + below(8) << "]]\n";
  }
  for (unsigned m = 0; m < 24; ++m) {
    out << "[[member]]\nid = \"m" << m << "\"\nshown_as = \"M" << m << "\"\nlevel = \"" << levels[below(3)]
        << "\"\n";
    if (below(5) == 0) out << "present = [" << 1 + below(6) << ", " << 10 + below(7) << "]\n";
    if (below(4) == 0) out << "excluded_groups = [\"" << groups[below(4)] << "\"]\n";
    if (below(4) == 0) out << "excluded_features = [\"" << features[below(5)] << "\"]\n";
    if (below(3) == 0) out << "loads_kg = { s0 = " << 4 + below(20) << ", s5 = 12.5 }\n";
  }
  if (below(2) == 0) out << "[[pair]]\nmembers = [\"m0\", \"m1\"]\nrule = \"apart\"\n";
  if (below(2) == 0) out << "[[pair]]\nmembers = [\"m2\", \"m3\"]\nrule = \"together\"\n";
  return out.str();
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) {
    std::fprintf(stderr, "bench_plan FOLDER_OF_PROGRAMS SOURCE_FOLDER [SEED]\n");
    return 2;
  }
  const std::string program = std::string(argv[1]) + "/floorwheel";
  const std::string demo = std::string(argv[2]) + "/config/demo/hall.class.toml";
  const unsigned long seed = argc > 3 ? std::strtoul(argv[3], nullptr, 10) : 1;
  const fs::path folder = fs::temp_directory_path() / ("bench_plan." + std::to_string(::getpid()));
  fs::create_directories(folder);
  const std::string class_file = folder / "x.class.toml";
  const std::string rotation = folder / "x.json";

  Figure demo_figure{"plan_demo", 500};
  for (int i = 0; i < 7; ++i) {
    const Run run = timed({program, "plan", demo}, "/dev/null");
    demo_figure.ms.push_back(run.ms);
    demo_figure.wrong += run.code == 0 ? 0 : 1;
  }

  Figure large{"plan_24_16_16", 1000};
  std::mt19937_64 random(seed);
  int refused = 0;
  while (large.ms.size() < 20 && refused < 200) {
    std::ofstream(class_file) << class_by_chance(random);
    const Run run = timed({program, "plan", class_file, "--json"}, rotation);
    if (run.code == 1) {  // such a class cannot hold; the next one
      ++refused;
      continue;
    }
    large.ms.push_back(run.ms);
    const Run audit = timed({program, "audit", class_file, rotation}, "/dev/null");
    large.wrong += run.code == 0 && audit.code == 0 ? 0 : 1;
  }
  std::error_code ignored;
  fs::remove_all(folder, ignored);

  const bool small_good = print(demo_figure);
  const bool large_good = print(large);
  std::printf("seed %lu, %d classes made by chance could not hold and were left out\n", seed, refused);
  return small_good && large_good ? 0 : 1;
}
