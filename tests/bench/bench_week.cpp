// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of `floorwheel week` as a person waits for it: the whole process for each week of
// config/demo/weeks, five times; limit 10 s each, and every goal proven. Use: bench_week FOLDER_OF_PROGRAMS
// SOURCE_FOLDER
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

constexpr double limit_s = 10;
constexpr int runs = 5;

/// Seconds from start to exit with the output in a file; below 0 where the program fails.
double seconds_of(const std::string& program, const std::string& week, const std::string& output) {
  const auto start = std::chrono::steady_clock::now();
  std::fflush(stdout);  // or the child would print it once more
  const pid_t pid = ::fork();
  if (pid == 0) {
    if (!std::freopen(output.c_str(), "w", stdout)) _exit(126);
    ::execl(program.c_str(), program.c_str(), "week", week.c_str(), "--json", nullptr);
    _exit(127);
  }
  int status = 0;
  ::waitpid(pid, &status, 0);
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
  return WIFEXITED(status) && WEXITSTATUS(status) == 0 ? took.count() : -1;
}

bool all_proven(const std::string& output) {
  std::ifstream in(output);
  const std::string json((std::istreambuf_iterator<char>(in)), {});
  return json.find(R"("proven": ["shortfall", "excess", "clashes", "loss", "change"])") != std::string::npos;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) {
    std::fprintf(stderr, "bench_week FOLDER_OF_PROGRAMS SOURCE_FOLDER\n");
    return 2;
  }
  const std::string program = std::string(argv[1]) + "/floorwheel";
  const fs::path output = fs::temp_directory_path() / ("bench_week." + std::to_string(::getpid()));
  std::vector<fs::path> weeks;
  for (const auto& entry : fs::directory_iterator(std::string(argv[2]) + "/config/demo/weeks"))
    if (entry.path().string().ends_with(".week.toml")) weeks.push_back(entry.path());
  std::sort(weeks.begin(), weeks.end());
  bool good = weeks.size() >= 10;
  for (const fs::path& week : weeks) {
    std::vector<double> s;
    for (int i = 0; i < runs; ++i) s.push_back(seconds_of(program, week, output));
    std::sort(s.begin(), s.end());
    const bool proven = all_proven(output);
    const bool fine = s.front() >= 0 && s.back() < limit_s && proven;
    std::printf("%-30s median %6.2f s  worst %6.2f s  limit %2.0f s  %-10s  %s\n", week.filename().c_str(),
                s[runs / 2], s.back(), limit_s, proven ? "proven" : "NOT PROVEN", fine ? "ok" : "MISSED");
    good = good && fine;
  }
  std::error_code ignored;
  fs::remove(output, ignored);
  return good ? 0 : 1;
}
