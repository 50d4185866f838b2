// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/play/script.h"

#include <array>
#include <optional>

namespace floorwheel::play {
namespace {

constexpr std::array<std::string_view, 7> verb_ids = {"say", "tap", "type", "await", "shot", "start", "end"};

std::string_view trimmed(std::string_view s) {
  constexpr std::string_view blank = " \t\r";
  const auto first = s.find_first_not_of(blank);
  if (first == std::string_view::npos) return {};
  return s.substr(first, s.find_last_not_of(blank) - first + 1);
}

/// Cuts the first word off `s`.
std::string_view take_word(std::string_view& s) {
  const auto end = s.find_first_of(" \t");
  const std::string_view word = s.substr(0, end);
  s = end == std::string_view::npos ? std::string_view{} : trimmed(s.substr(end));
  return word;
}

std::optional<Verb> verb_from(std::string_view id) {
  for (std::size_t i = 0; i < verb_ids.size(); ++i)
    if (verb_ids[i] == id) return static_cast<Verb>(i);
  return std::nullopt;
}

bool takes_text(Verb v) { return v != Verb::start && v != Verb::end; }

}  // namespace

std::string_view id_of(Verb v) { return verb_ids[static_cast<std::size_t>(v)]; }

files::OrFileError<std::vector<Step>> parse_script(std::string_view text, const std::string& file) {
  std::vector<Step> steps;
  int number = 0;
  const auto wrong = [&](std::string what, std::string right) {
    files::FileError error;
    error.file = file;
    error.line = number;
    error.column = 1;
    error.what = std::move(what);
    error.right = std::move(right);
    return error;
  };
  while (!text.empty()) {
    const auto end = text.find('\n');
    std::string_view line = trimmed(text.substr(0, end));
    text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
    ++number;
    if (line.empty() || line.front() == '#') continue;
    Step step;
    step.line = number;
    const std::string_view who = take_word(line);
    if (who == "say") {
      step.rest = line;
      steps.push_back(step);
      continue;
    }
    const auto role = wire::role_from(who);
    if (!role || *role == wire::Role::tool)
      return wrong("'" + std::string(who) + "' is no screen", "say, wall, touch, instructor or desk");
    const std::string_view what = take_word(line);
    const auto verb = verb_from(what);
    if (!verb || *verb == Verb::say)
      return wrong("a screen cannot '" + std::string(what) + "'", "tap, type, await, shot, start or end");
    if (takes_text(*verb) == line.empty())
      return wrong(line.empty() ? "'" + std::string(what) + "' needs a name after it"
                                : "'" + std::string(what) + "' takes nothing after it",
                   "ROLE tap NAME, ROLE type TEXT, ROLE await NAME, ROLE shot FILE, ROLE start, ROLE end");
    step.role = *role;
    step.verb = *verb;
    step.rest = line;
    steps.push_back(step);
  }
  return steps;
}

}  // namespace floorwheel::play
