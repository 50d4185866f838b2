// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/first_visits.h"

namespace floorwheel::training {
namespace {

constexpr std::array<std::array<std::string_view, 3>, first_visits> sentences{{
    {"Show, and let them practise with light loads.", "Three or more repetitions in reserve in every set.",
     "Ask about pain and about what a licensed professional has advised."},
    {"Technique of what was new last time.", "Ask how the days after the first visit were.",
     "Loads stay light until the movement is right."},
    {"Find the loads: two or three in reserve.", "Write down the loads that fit.",
     "Let them set up a station and record a set themselves."},
    {"Talk: the goal in their words, what comes next.", "Look at the loads of the first visits together.",
     "Agree on how often they come; write it down."},
}};

}  // namespace

std::optional<FirstVisit> first_visit(int visits, bool here) {
  const int number = here ? visits : visits + 1;
  if (number < 1 || number > first_visits) return std::nullopt;
  return FirstVisit{number, sentences[static_cast<std::size_t>(number) - 1]};
}

}  // namespace floorwheel::training
