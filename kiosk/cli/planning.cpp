// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/cli/planning.h"

#include <unistd.h>

#include <csignal>
#include <cstdio>

#include "kiosk/cli/class_input.h"
#include "kiosk/cli/command.h"
#include "kiosk/cli/plan_text.h"
#include "kiosk/cli/text.h"

namespace floorwheel::cli {
namespace {

using Clock = std::chrono::steady_clock;

volatile std::sig_atomic_t interrupted = 0;
void on_interrupt(int) { interrupted = 1; }

/// The first Ctrl-C ends the search with the best so far, a second one ends the program.
void listen_for_interrupt() {
  struct sigaction action {};
  action.sa_handler = on_interrupt;
  action.sa_flags = static_cast<int>(SA_RESETHAND);
  sigaction(SIGINT, &action, nullptr);
}

void show(const Progress& p) {
  const std::int64_t percent = p.steps_max > 0 ? p.steps * 100 / p.steps_max : 0;
  std::fprintf(
      stderr,
      "\r\033[Kplanning %3d %%: missed %lld, back-to-back %lld (at least %lld); Ctrl-C takes this one",
      static_cast<int>(percent), static_cast<long long>(p.best[Component::missed]),
      static_cast<long long>(p.best[Component::back_to_back]),
      static_cast<long long>(p.bound[Component::back_to_back]));
}

template <class T>
std::string as_json(const ClassSpec& c, const T& found, std::optional<long> ms) {
  return files::to_json(c, found, ms);
}
std::string as_json(const ClassSpec&, const WhatIf& found, std::optional<long> ms) {
  return files::to_json(found, ms);
}
template <class T>
std::string as_text(const ClassSpec& c, const T& found) {
  return plan_text(c, found);
}
std::string as_text(const ClassSpec& c, const WhatIf& found) { return what_if_text(c, found); }

}  // namespace

std::vector<Option> planning_options() {
  return {
      {"--json", "", "machine-readable, one member a line"},
      {"--seed", "N", "another seed may find another of equal cost (default 1)"},
      {"--effort", "N", "search N times as hard as usual (default 1)"},
      {"--seconds", "S", "take the best after so long; the answer may then differ between machines"},
      {"--timing", "", "say how long it took"},
      exercises_option,
  };
}

Planning::Planning(const Args& args)
    : args_(args), start_(Clock::now()), shows_progress_(::isatty(STDERR_FILENO) == 1) {
  if (const auto seconds = args.positive("--seconds"))
    deadline_ = start_ + std::chrono::duration_cast<Clock::duration>(
                             std::chrono::duration<double>(std::min(*seconds, 86'400.0)));
  static_cast<void>(args.whole("--seed", 0, INT64_MAX));
  static_cast<void>(args.whole("--effort", 1, 1000));
  listen_for_interrupt();
}

Planning::~Planning() { std::signal(SIGINT, SIG_DFL); }

PlanOptions Planning::options() const {
  PlanOptions options;
  options.seed = static_cast<std::uint64_t>(args_.whole("--seed", 0, INT64_MAX).value_or(1));
  options.effort_times = args_.whole("--effort", 1, 1000).value_or(1);
  options.stop = [deadline = deadline_] {
    return interrupted != 0 || (deadline && Clock::now() >= *deadline);
  };
  if (shows_progress_) options.progress = show;
  return options;
}

WhatIfOptions Planning::for_what_if() const {
  WhatIfOptions options;
  options.plan = this->options();
  options.plan.progress = {};
  if (shows_progress_)
    options.next = [](const Change& change, int done, int all) {
      std::fprintf(stderr, "\r\033[K%d of %d: %s; Ctrl-C ends here", done + 1, all, in_words(change).c_str());
    };
  return options;
}

std::optional<long> Planning::elapsed_ms() const {
  if (!args_.has("--timing")) return std::nullopt;
  return std::chrono::duration_cast<std::chrono::milliseconds>(Clock::now() - start_).count();
}

template <class T>
int Planning::finish_any(const ClassSpec& c, const std::string& class_file,
                         const OrRefusal<T>& result) const {
  if (shows_progress_) std::fputs("\r\033[K", stderr);
  const auto ms = elapsed_ms();
  if (const auto* refusal = std::get_if<Refusal>(&result)) {
    if (args_.has("--json"))
      print(files::to_json(*refusal));
    else
      std::fprintf(stderr, "%s\n", refusal_text(*refusal, class_file).c_str());
    return exit_holds_not;
  }
  const T& found = std::get<T>(result);
  if (args_.has("--json")) {
    print(as_json(c, found, ms));
  } else {
    print(as_text(c, found));
    if (ms) print("\nPlanned in " + std::to_string(*ms) + " ms.\n");
  }
  return exit_done;
}

int Planning::finish(const ClassSpec& c, const std::string& file, const OrRefusal<Plan>& result) const {
  return finish_any(c, file, result);
}
int Planning::finish(const ClassSpec& c, const std::string& file, const OrRefusal<SlotTable>& result) const {
  return finish_any(c, file, result);
}
int Planning::finish(const ClassSpec& c, const std::string& file, const OrRefusal<WhatIf>& result) const {
  return finish_any(c, file, result);
}

}  // namespace floorwheel::cli
