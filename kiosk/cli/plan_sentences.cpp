// SPDX-License-Identifier: GPL-3.0-or-later
// Cost and proof in sentences an instructor understands.
#include "kiosk/cli/plan_text.h"
#include "kiosk/cli/text.h"

namespace floorwheel::cli {
namespace {

std::string sentence(const RecoveryTimes& recovery_s, Component k, std::int64_t n) {
  switch (k) {
    case Component::missed:
      return n == 0 ? "Nobody misses a station." : counted(n, "visit is missed.", "visits are missed.");
    case Component::uneven:
      return n == 0 ? "Nobody sits out for the others."
                    : "What is missed falls on some more than on others (" + std::to_string(n) + ").";
    case Component::back_to_back:
      return n == 0 ? "Nobody works the same muscle group twice in a row."
                    : counted(n, "time", "times") + " somebody works the same muscle group twice in a row.";
    case Component::moved:
      return n == 0 ? "Nothing announced is changed."
                    : counted(n, "announced entry is changed.", "announced entries are changed.");
    case Component::short_rest:
      return n == 0 ? "Every muscle group has its recovery time."
                    : counted(n, "time", "times") + " a muscle group comes again before its recovery time" +
                          (recovery_s ? " (" + std::to_string((*recovery_s)[0]) + ", " +
                                            std::to_string((*recovery_s)[1]) + " or " +
                                            std::to_string((*recovery_s)[2]) + " s by level)."
                                      : ".");
    case Component::idle:
      return n == 0 ? "Nobody waits before their last station."
                    : counted(n, "time", "times") + " somebody waits for a slot.";
    case Component::assist_overlap:
      return n == 0 ? "No group assists just before or after its own turn."
                    : counted(n, "time", "times") + " a group assists just before or after its own turn.";
    case Component::walk_cm:
      return "Together they walk " + decimal_text(n, 2) + " m between stations.";
    case Component::reload_hg:
      return "Loads change by " + decimal_text(n, 1) + " kg between one person and the next.";
  }
  return {};
}

std::string spoken(Component k) {
  switch (k) {
    case Component::missed:
      return "missed visits";
    case Component::uneven:
      return "unevenness";
    case Component::back_to_back:
      return "back-to-backs";
    case Component::moved:
      return "moved entries";
    case Component::short_rest:
      return "short rests";
    case Component::idle:
      return "idle slots";
    case Component::assist_overlap:
      return "assisting overlaps";
    case Component::walk_cm:
      return "walking";
    case Component::reload_hg:
      return "reloading";
  }
  return {};
}

/// A number of a component with its unit.
std::string amount(Component k, std::int64_t n) {
  if (k == Component::walk_cm) return decimal_text(n, 2) + " m";
  if (k == Component::reload_hg) return decimal_text(n, 1) + " kg";
  return std::to_string(n);
}

std::vector<Component> compared(const Plan& plan) {
  std::vector<Component> out;
  for (Component k : components)
    if (k != Component::moved || plan.at_slot > 0) out.push_back(k);
  return out;
}

}  // namespace

std::string cost_sentences(const Plan& plan, const RecoveryTimes& recovery_s) {
  std::string out;
  for (Component k : compared(plan)) {
    // Uneven only says something where visits are missed.
    if (k == Component::uneven && plan.cost[Component::missed] == 0) continue;
    out += "  " + sentence(recovery_s, k, plan.cost[k]) + "\n";
  }
  return out;
}

std::string proof_sentences(const Plan& plan) {
  const std::vector<Component> order = compared(plan);
  const std::string which = plan.rotation.style == Style::ring ? "ring" : "free rotation";
  const auto proven = static_cast<std::size_t>(plan.proven);
  std::vector<std::string> names;
  for (std::size_t i = 0; i < proven && i < order.size(); ++i) names.push_back(spoken(order[i]));
  std::string out;
  if (proven >= order.size()) return "  Proven the best: no " + which + " of this class costs less.\n";
  if (proven == 0)
    out += "  Nothing is proven yet.\n";
  else
    out += "  Proven: no " + which + " does better in " + listed(names) + ", compared in this order.\n";
  for (std::size_t i = proven; i < order.size(); ++i)
    if (const Component k = order[i]; plan.bound[k] < plan.cost[k])
      out += "  Not proven: " + spoken(k) + " " + amount(k, plan.cost[k]) + ", at least " +
             amount(k, plan.bound[k]) + ".\n";
  return out;
}

}  // namespace floorwheel::cli
