// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/play/stage.h"

#include <poll.h>

#include <algorithm>
#include <array>
#include <boost/json.hpp>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace floorwheel::play {
namespace {

constexpr std::array all_screens{wire::Role::wall, wire::Role::touch, wire::Role::instructor,
                                 wire::Role::desk};

std::string name_of(wire::Role role) { return std::string(wire::id_of(role)); }

}  // namespace

Stage::Stage(StageOptions options, int interrupt_fd)
    : options_(std::move(options)), interrupt_fd_(interrupt_fd) {}

std::string Stage::log_of(std::string_view who) const {
  return options_.pictures + "/" + std::string(who) + ".log";
}

bool Stage::interrupted() const {
  pollfd fd{interrupt_fd_, POLLIN, 0};
  return poll(&fd, 1, 0) > 0;
}

bool Stage::open(const std::string& class_file) {
  std::ostringstream speed;
  speed << options_.speed;
  hub_ = Child({options_.programs + "/floorwheel", "hub", "--data", options_.data, "--listen", "127.0.0.1:0",
                "--speed", speed.str()},
               log_of("hub"));
  const auto first = hub_.next_line(std::chrono::seconds(20), interrupt_fd_);
  boost::system::error_code error;
  const boost::json::value said = boost::json::parse(first.value_or(""), error);
  if (error || !said.is_object() || !said.as_object().contains("listening")) {
    std::fprintf(stderr, "The hub did not start; what it says is in %s\n", log_of("hub").c_str());
    return false;
  }
  address_ = said.at("listening").as_string().c_str();
  std::printf("hub         listens at %s (process %d)\n", address_.c_str(), static_cast<int>(hub_.pid()));

  std::ifstream in(class_file);
  std::ostringstream toml;
  toml << in.rdbuf();
  int exit_code = 0;
  const std::string receipt = run(
      {"tell", "class.add", boost::json::serialize(boost::json::object{{"toml", toml.str()}})}, exit_code);
  if (exit_code != 0) {
    std::fprintf(stderr, "The hub did not take the class: %s\n", receipt.c_str());
    return false;
  }
  return std::all_of(all_screens.begin(), all_screens.end(),
                     [this](wire::Role r) { return start_screen(r); });
}

bool Stage::start_screen(wire::Role role) {
  std::vector<std::string> arguments{options_.programs + "/floorwheel-screen",
                                     name_of(role),
                                     "--hub",
                                     hub_url(),
                                     "--hands",
                                     "-",
                                     "--patience",
                                     std::to_string(options_.step_limit_s),
                                     "--state",
                                     options_.data + "/screen-" + name_of(role)};
  const bool shown = std::find(options_.shown.begin(), options_.shown.end(), role) != options_.shown.end();
  std::vector<std::string> environment;
  if (!shown) environment.emplace_back("QT_QPA_PLATFORM=offscreen");
  screens_[role] = Child(arguments, log_of(name_of(role)), environment);
  std::printf("%-11s %s (process %d)\n", name_of(role).c_str(), shown ? "opens a window" : "draws off-screen",
              static_cast<int>(screens_[role].pid()));
  return screens_[role].running();
}

int Stage::play(const std::vector<Step>& steps) {
  int failed = 0;
  for (const Step& step : steps) {
    if (interrupted()) return failed;
    if (step.verb == Verb::say) {
      std::printf("\n%s\n", step.rest.c_str());
    } else {
      const bool done = do_step(step);
      if (interrupted()) return failed;
      if (!done) ++failed;
    }
    std::fflush(stdout);
  }
  return failed;
}

bool Stage::do_step(const Step& step) {
  const std::string who = name_of(step.role);
  if (step.verb == Verb::start) return start_screen(step.role);
  Child& screen = screens_[step.role];
  if (step.verb == Verb::end) {
    screen.end();
    std::printf("  %-11s is switched off\n", who.c_str());
    return true;
  }
  std::string rest = step.rest;
  if (step.verb == Verb::shot) {
    rest = options_.pictures + "/" + step.rest;
    std::filesystem::create_directories(std::filesystem::path(rest).parent_path());
  }
  const std::string line = std::string(id_of(step.verb)) + " " + rest;
  if (!screen.send(line)) {
    std::printf("  %-11s is gone: left out: %s %s\n", who.c_str(), id_of(step.verb).data(),
                step.rest.c_str());
    return false;
  }
  const auto until = std::chrono::steady_clock::now() + std::chrono::seconds(options_.step_limit_s + 5);
  for (;;) {
    const auto left =
        std::chrono::duration_cast<std::chrono::milliseconds>(until - std::chrono::steady_clock::now());
    const auto said = screen.next_line(left, interrupt_fd_);
    if (!said) {
      if (!interrupted())
        std::printf("  %-11s %s: %s %s\n", who.c_str(),
                    screen.running() ? "did not come to it" : "is gone: left out", id_of(step.verb).data(),
                    step.rest.c_str());
      return false;
    }
    if (*said == "done " + line) break;
  }
  if (step.verb == Verb::shot) taken_.push_back(rest);
  if (step.verb != Verb::await)
    std::printf("  %-11s %s %s\n", who.c_str(), id_of(step.verb).data(), step.rest.c_str());
  return true;
}

std::string Stage::run(std::vector<std::string> arguments, int& exit_code) {
  arguments.insert(arguments.begin(), options_.programs + "/floorwheel");
  arguments.emplace_back("--hub");
  arguments.push_back(hub_url());
  Child command(arguments, log_of("commands"));
  std::string out;
  while (const auto line = command.next_line(std::chrono::seconds(options_.step_limit_s), interrupt_fd_))
    out += *line + "\n";
  exit_code = command.end();
  return out;
}

void Stage::close() {
  for (auto& [role, screen] : screens_) screen.end();
  screens_.clear();
  if (hub_.running()) hub_.end();
}

}  // namespace floorwheel::play
