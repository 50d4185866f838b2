// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/play/child.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/prctl.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <system_error>
#include <utility>

namespace floorwheel::play {
namespace {

[[noreturn]] void fail(const char* what) { throw std::system_error(errno, std::generic_category(), what); }

int exit_code_of(int status) { return WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status); }

std::vector<char*> pointers(const std::vector<std::string>& texts) {
  std::vector<char*> out;
  for (const std::string& text : texts) out.push_back(const_cast<char*>(text.c_str()));
  return out;
}

}  // namespace

Child::Child(const std::vector<std::string>& arguments, const std::string& log,
             const std::vector<std::string>& more) {
  std::array<int, 2> to{};
  std::array<int, 2> from{};
  if (pipe2(to.data(), O_CLOEXEC) != 0 || pipe2(from.data(), O_CLOEXEC) != 0) fail("pipe");
  std::vector<char*> argv = pointers(arguments);
  argv.push_back(nullptr);
  std::vector<char*> environment = pointers(more);
  for (char** e = environ; *e != nullptr; ++e) environment.push_back(*e);
  environment.push_back(nullptr);
  const pid_t parent = getpid();
  // No signal between fork and exec: our own handler, run in the child, would write to our interrupt pipe.
  sigset_t all;
  sigset_t before;
  sigfillset(&all);
  sigprocmask(SIG_SETMASK, &all, &before);
  pid_ = fork();
  if (pid_ != 0) sigprocmask(SIG_SETMASK, &before, nullptr);
  if (pid_ < 0) fail("fork");
  if (pid_ == 0) {
    // Only calls that are safe after fork. The kernel ends the program when we end, even by SIGKILL.
    prctl(PR_SET_PDEATHSIG, SIGTERM);
    if (getppid() != parent) _exit(127);
    setpgid(0, 0);  // Ctrl-C reaches us alone; we end the others in order
    const int errors = open(log.c_str(), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
    if (errors >= 0) dup2(errors, STDERR_FILENO);
    dup2(to[0], STDIN_FILENO);
    dup2(from[1], STDOUT_FILENO);
    for (const int number : {SIGPIPE, SIGINT, SIGTERM}) signal(number, SIG_DFL);
    sigset_t none;
    sigemptyset(&none);
    sigprocmask(SIG_SETMASK, &none, nullptr);
    execve(argv[0], argv.data(), environment.data());
    _exit(127);
  }
  close(to[0]);
  close(from[1]);
  in_ = to[1];
  out_ = from[0];
}

Child::~Child() {
  if (running()) end();
  close_pipes();
}

Child::Child(Child&& other) noexcept { *this = std::move(other); }

Child& Child::operator=(Child&& other) noexcept {
  if (this == &other) return *this;
  if (running()) end();
  close_pipes();
  pid_ = std::exchange(other.pid_, -1);
  in_ = std::exchange(other.in_, -1);
  out_ = std::exchange(other.out_, -1);
  exit_code_ = other.exit_code_;
  unread_ = std::move(other.unread_);
  return *this;
}

bool Child::send(const std::string& line) {
  if (in_ < 0) return false;
  const std::string text = line + "\n";
  std::size_t done = 0;
  while (done < text.size()) {
    const ssize_t n = write(in_, text.data() + done, text.size() - done);
    if (n < 0 && errno == EINTR) continue;
    if (n <= 0) return false;
    done += static_cast<std::size_t>(n);
  }
  return true;
}

std::optional<std::string> Child::next_line(std::chrono::milliseconds limit, int interrupt_fd) {
  using clock = std::chrono::steady_clock;
  const auto until = clock::now() + limit;
  for (;;) {
    if (const auto end = unread_.find('\n'); end != std::string::npos) {
      std::string line = unread_.substr(0, end);
      unread_.erase(0, end + 1);
      return line;
    }
    if (out_ < 0) return std::nullopt;
    const auto left = std::chrono::duration_cast<std::chrono::milliseconds>(until - clock::now()).count();
    if (left <= 0) return std::nullopt;
    std::array<pollfd, 2> fds{pollfd{out_, POLLIN, 0}, pollfd{interrupt_fd, POLLIN, 0}};
    if (poll(fds.data(), fds.size(), static_cast<int>(left)) < 0) {
      if (errno == EINTR) continue;
      fail("poll");
    }
    if (fds[1].revents != 0) return std::nullopt;
    if (fds[0].revents == 0) continue;
    std::array<char, 4096> buffer{};
    const ssize_t n = read(out_, buffer.data(), buffer.size());
    if (n < 0 && errno == EINTR) continue;
    if (n <= 0) {
      collect();
      return std::nullopt;
    }
    unread_.append(buffer.data(), static_cast<std::size_t>(n));
  }
}

int Child::end(std::chrono::milliseconds patience) {
  if (!running()) return exit_code_;
  kill(pid_, SIGTERM);
  // A pidfd becomes readable when the process has ended: no waiting by the clock.
  const int watch = static_cast<int>(syscall(SYS_pidfd_open, pid_, 0));
  if (watch >= 0) {
    pollfd ended{watch, POLLIN, 0};
    const int n = poll(&ended, 1, static_cast<int>(patience.count()));
    close(watch);
    if (n <= 0) kill(pid_, SIGKILL);
  } else {
    kill(pid_, SIGKILL);
  }
  collect();
  return exit_code_;
}

void Child::collect() {
  if (running()) {
    int status = 0;
    while (waitpid(pid_, &status, 0) < 0 && errno == EINTR) {
    }
    exit_code_ = exit_code_of(status);
    pid_ = -1;
  }
  close_pipes();
}

void Child::close_pipes() {
  if (in_ >= 0) close(in_);
  if (out_ >= 0) close(out_);
  in_ = out_ = -1;
}

}  // namespace floorwheel::play
