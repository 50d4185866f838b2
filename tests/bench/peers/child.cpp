// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/peers/child.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <sstream>

namespace floorwheel::peers {
namespace {

using Clock = std::chrono::steady_clock;

double seconds_since(Clock::time_point start) {
  return std::chrono::duration<double>(Clock::now() - start).count();
}

double seconds(const timeval& t) {
  return static_cast<double>(t.tv_sec) + 1e-6 * static_cast<double>(t.tv_usec);
}

[[noreturn]] void become(const std::vector<std::string>& words, int output, int memory_mib) {
  ::setpgid(0, 0);
  if (memory_mib > 0) {
    const rlim_t bytes = static_cast<rlim_t>(memory_mib) << 20U;
    const rlimit most{bytes, bytes};
    ::setrlimit(RLIMIT_AS, &most);
  }
  const int nothing = ::open("/dev/null", O_RDWR);
  ::dup2(nothing, STDIN_FILENO);
  ::dup2(output, STDOUT_FILENO);
  ::dup2(nothing, STDERR_FILENO);
  std::vector<char*> argv;
  for (const std::string& w : words) argv.push_back(const_cast<char*>(w.c_str()));
  argv.push_back(nullptr);
  ::execvp(argv[0], argv.data());
  _exit(127);
}

}  // namespace

Finished run_child(const std::vector<std::string>& words, double limit_s, const std::string& marker,
                   int memory_mib) {
  Finished out;
  std::array<int, 2> ends{};
  if (::pipe2(ends.data(), O_CLOEXEC) != 0) return out;
  const auto start = Clock::now();
  const pid_t pid = ::fork();
  if (pid == 0) become(words, ends[1], memory_mib);
  ::close(ends[1]);
  if (pid < 0) {
    ::close(ends[0]);
    return out;
  }
  ::setpgid(pid, pid);
  std::array<char, 1 << 16> some{};
  for (;;) {
    const double left = limit_s - seconds_since(start);
    pollfd waiting{ends[0], POLLIN, 0};
    const int ready = left > 0 ? ::poll(&waiting, 1, static_cast<int>(left * 1000) + 1) : 0;
    if (ready <= 0) {
      if (ready < 0 || seconds_since(start) < limit_s) continue;
      out.stopped = true;
      ::kill(-pid, SIGKILL);
      break;
    }
    const ssize_t n = ::read(ends[0], some.data(), some.size());
    if (n <= 0) break;
    const std::size_t from = out.printed.size() - std::min(out.printed.size(), marker.size());
    out.printed.append(some.data(), static_cast<std::size_t>(n));
    if (!marker.empty() && out.marker_s < 0 && out.printed.find(marker, from) != std::string::npos)
      out.marker_s = seconds_since(start);
  }
  ::close(ends[0]);
  int status = 0;
  rusage used{};
  ::wait4(pid, &status, 0, &used);
  out.wall_s = seconds_since(start);
  out.cpu_s = seconds(used.ru_utime) + seconds(used.ru_stime);
  out.peak_kib = used.ru_maxrss;
  out.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  out.started = out.code != 127;
  return out;
}

bool on_path(const std::string& program) {
  const char* path = std::getenv("PATH");
  std::istringstream folders(path != nullptr ? path : "/usr/local/bin:/usr/bin:/bin");
  for (std::string folder; std::getline(folders, folder, ':');)
    if (::access((folder + "/" + program).c_str(), X_OK) == 0) return true;
  return false;
}

}  // namespace floorwheel::peers
