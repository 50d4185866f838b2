// SPDX-License-Identifier: GPL-3.0-or-later
// The sentences beside a rotation, for an instructor: why this style, why a component cannot be 0, and what
// could not be kept. They say no more than what the bounds say.
#include <algorithm>

#include "scheduler/rotation/bounds.h"
#include "scheduler/rotation/outcome.h"
#include "scheduler/rotation/preflight.h"
#include "scheduler/rotation/words.h"

namespace floorwheel {
namespace {

std::string in_plain(std::string_view id) {
  std::string out(id);
  std::replace(out.begin(), out.end(), '_', ' ');
  return out;
}

/// The first three components in words.
std::string in_words(const Cost& cost) {
  return counted(cost[Component::missed], "missed visit", "missed visits") + ", unevenness " +
         std::to_string(cost[Component::uneven]) + " and " +
         counted(cost[Component::back_to_back], "back-to-back", "back-to-backs");
}

class Reasons {
 public:
  Reasons(const ClassSpec& spec, const Problem& p, const Answer& answer, Style wished)
      : spec_(spec), p_(p), answer_(answer), found_(answer.found), wished_(wished) {}

  std::vector<std::string> list() const {
    std::vector<std::string> out{style()};
    for (Component c : ranking(p_)) {
      if (found_.bound[c] > 0) out.push_back(why(c, found_.bound[c]));
      if (c == Component::idle) break;
    }
    out.insert(out.end(), p_.notes.begin(), p_.notes.end());
    return out;
  }

 private:
  std::string style() const {
    if (p_.is_repair) return style_of_repair();
    const bool ring = found_.style == Style::ring;
    if (wished_ != Style::automatic)
      return ring ? "A ring, as asked: everybody moves one on." : "A free rotation, as asked.";
    if (ring)
      return answer_.ring_is_best ? "A ring: everybody moves one on, and no free rotation does better."
                                  : "A ring: everybody moves one on, and no free rotation found does better.";
    const Cost& best_ring = answer_.ring->cost;
    if (leading_equal(best_ring, found_.cost))
      return "A free rotation: on the best ring found people wait " +
             counted(best_ring[Component::idle], "slot", "slots") + " in all, here " +
             std::to_string(found_.cost[Component::idle]) + ".";
    return "A free rotation: the best ring found has " + in_words(best_ring) + "; this one has " +
           in_words(found_.cost) + ".";
  }

  std::string style_of_repair() const {
    if (found_.style == Style::ring) return "The ring goes on in the same order: everybody moves one on.";
    if (wished_ != Style::ring) return "A free rotation stays free.";
    return "A free rotation from slot " + std::to_string(p_.from + 1) + " on: keeping the ring would mean " +
           in_words(answer_.ring->cost) + "; this one has " + in_words(found_.cost) + ".";
  }

  std::string why(Component c, std::int64_t least) const {
    const std::string n = std::to_string(least);
    switch (c) {
      case Component::missed:
        return "Missed at least " + n + ": " + why_missed();
      case Component::uneven:
        return "Uneven at least " + n +
               ": the visits that have to be missed cannot be shared out more evenly.";
      case Component::back_to_back:
        return "Back-to-back at least " + n + ": " + why_back_to_back();
      case Component::moved:
        return "Moved at least " + n + ": " + why_moved();
      case Component::short_rest:
        return "Short rest at least " + n + ": " + searched_or_past(c);
      case Component::idle:
        return "Idle at least " + n + ": " + searched_or_past(c);
      default:
        return {};
    }
  }

  std::string why_moved() const {
    const std::int64_t counted =
        std::max(bound_moved(p_),
                 bound_moved_by_shares(p_, found_.cost[Component::missed], found_.cost[Component::uneven]));
    if (counted >= found_.bound[Component::moved])
      return "so many entries of the earlier run sheet cannot stay as they were.";
    return found_.style == Style::ring
               ? "every way to go on in the same order with the same cost before it was looked at, and none "
                 "has fewer."
               : by_search;
  }

  /// Components that only history or an exhaustive search bounds.
  std::string searched_or_past(Component c) const {
    if (priced(c)) return by_prices;
    if (p_.from > 0 && price_history(p_)[c] == found_.bound[c]) return "that is history.";
    return by_search;
  }

  std::string why_missed() const {
    const VisitBound bound = cut_visits(p_);
    std::string out;
    for (const std::string& cause : floorwheel::why_missed(spec_, p_, bound))
      out += (out.empty() ? "" : "; ") + cause;
    if (bound.flow.missed >= found_.bound[Component::missed] && !out.empty()) return out + ".";
    if (!out.empty())
      out += ", which makes " + std::to_string(bound.flow.missed) + "; the rest only a search shows: ";
    return out + "every rotation was looked at, and none misses fewer.";
  }

  static constexpr const char* by_search =
      "every rotation with the same cost before it was looked at, and none has less.";
  static constexpr const char* by_prices =
      "places and slots do not let everybody have less; the certificate has the reckoning.";
  bool priced(Component c) const { return (found_.priced >> static_cast<unsigned>(c) & 1U) != 0; }

  std::string why_back_to_back() const {
    if (priced(Component::back_to_back)) return by_prices;
    if (p_.from > 0 && price_history(p_)[Component::back_to_back] == found_.bound[Component::back_to_back])
      return "that is history.";
    for (int g = 0; g < group_count; ++g) {
      std::vector<std::string> alike;
      for (const StationSpec& s : spec_.stations)
        if (const auto e = spec_.exercises.find(s.exercise);
            e != spec_.exercises.end() && e->second.primary.contains(static_cast<Group>(g)))
          alike.push_back(s.id);
      if (2 * static_cast<int>(alike.size()) > p_.stations)
        return listed(alike, 6, 6) + " all train " + in_plain(id_of(static_cast<Group>(g))) +
               ", more than half of the stations.";
    }
    return found_.exhausted >= 3
               ? "every rotation with the same cost before it was looked at, and none has fewer."
               : "no order of these stations keeps those that share a group apart.";
  }

  const ClassSpec& spec_;
  const Problem& p_;
  const Answer& answer_;
  const Found& found_;
  const Style wished_;
};

}  // namespace

std::vector<std::string> reasons(const ClassSpec& spec, const Problem& p, const Answer& answer,
                                 Style wished) {
  return Reasons(spec, p, answer, wished).list();
}

}  // namespace floorwheel
