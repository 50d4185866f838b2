// SPDX-License-Identifier: GPL-3.0-or-later
// A program started beside us, with a pipe to its input and one from its output; it ends when we end, however
// we end. POSIX; used by one thread.
#pragma once

#include <sys/types.h>

#include <chrono>
#include <optional>
#include <string>
#include <vector>

namespace floorwheel::play {

class Child {
 public:
  Child() = default;
  /// Starts `arguments[0]` with our environment and `more` ("NAME=value") before it, its errors going to
  /// `log`. Throws std::system_error.
  Child(const std::vector<std::string>& arguments, const std::string& log,
        const std::vector<std::string>& more = {});
  ~Child();
  Child(Child&& other) noexcept;
  Child& operator=(Child&& other) noexcept;
  Child(const Child&) = delete;
  Child& operator=(const Child&) = delete;

  [[nodiscard]] bool running() const { return pid_ > 0; }
  [[nodiscard]] pid_t pid() const { return pid_; }
  /// False when the program is gone.
  bool send(const std::string& line);
  /// The next line of its output; nothing when it is gone, or the limit has passed, or `interrupt_fd` is
  /// readable.
  std::optional<std::string> next_line(std::chrono::milliseconds limit, int interrupt_fd = -1);
  /// Asks it to end (SIGTERM), waits, and ends it (SIGKILL) where it does not listen; its exit code, or 128 +
  /// the signal's number.
  int end(std::chrono::milliseconds patience = std::chrono::seconds(5));

 private:
  void close_pipes();
  void collect();
  pid_t pid_ = -1;
  int in_ = -1;
  int out_ = -1;
  int exit_code_ = 0;
  std::string unread_;
};

}  // namespace floorwheel::play
