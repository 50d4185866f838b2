// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/outcome.h"

namespace floorwheel {
namespace {

std::string counted(std::int64_t n, const char* one, const char* many) {
  return std::to_string(n) + " " + (n == 1 ? one : many);
}

/// The first three components in words.
std::string in_words(const Cost& cost) {
  return counted(cost[Component::missed], "missed visit", "missed visits") + ", unevenness " +
         std::to_string(cost[Component::uneven]) + " and " +
         counted(cost[Component::back_to_back], "back-to-back", "back-to-backs");
}

std::string style_reason(const Problem& p, const Answer& answer, Style wished) {
  const bool ring = answer.found.style == Style::ring;
  if (p.is_repair) {
    if (ring) return "The ring goes on as it was: everybody moves one on.";
    if (wished == Style::ring && answer.ring)
      return "A free rotation from here on: keeping the ring would cost " + in_words(answer.ring->cost) +
             "; this one has " + in_words(answer.free->cost) + ".";
    return "A free rotation stays free.";
  }
  if (wished != Style::automatic)
    return ring ? "A ring, as asked: everybody moves one on." : "A free rotation, as asked.";
  if (ring) return "A ring: everybody moves one on, and no free rotation found does better.";
  if (leading_equal(answer.ring->cost, answer.free->cost))
    return "A free rotation: the best ring found would leave people idle for " +
           counted(answer.ring->cost[Component::idle], "slot", "slots") + ", this one for " +
           std::to_string(answer.free->cost[Component::idle]) + ".";
  return "A free rotation: the best ring found has " + in_words(answer.ring->cost) + ", this one " +
         in_words(answer.free->cost) + ".";
}

}  // namespace

std::vector<std::string> reasons(const ClassSpec&, const Problem& p, const Answer& answer, Style wished) {
  std::vector<std::string> out{style_reason(p, answer, wished)};
  out.insert(out.end(), p.notes.begin(), p.notes.end());
  return out;
}

}  // namespace floorwheel
