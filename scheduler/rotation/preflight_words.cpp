// SPDX-License-Identifier: GPL-3.0-or-later
// The cut in words, for an instructor.
#include <algorithm>
#include <map>
#include <utility>

#include "scheduler/rotation/preflight.h"
#include "scheduler/rotation/words.h"

namespace floorwheel {
namespace {

constexpr std::size_t clauses_most = 4;

/// One more than six is said as it is: "and 1 more" would be no shorter.
std::string some(std::vector<std::string> words) { return listed(std::move(words), 6, 7); }

class Words {
 public:
  Words(const ClassSpec& spec, const Problem& p) : spec_(spec), p_(p) {}

  void windows(std::vector<std::string>& out) const {
    std::vector<std::string> brief;
    std::int64_t forced = 0;
    for (int m = 0; m < p_.members; ++m)
      if (p_.forced_missed(m) > 0) {
        brief.push_back(spec_.members[ix(m)].shown_as);
        forced += p_.forced_missed(m);
      }
    if (forced == 0) return;
    if (static_cast<int>(brief.size()) == p_.members && p_.members > 1)
      out.push_back("everybody is here for fewer slots than there are visits to make, " +
                    counted(forced, "visit", "visits") + " fewer in all");
    else
      out.push_back(some(brief) + (brief.size() == 1 ? " has " : " have ") +
                    counted(forced, "visit", "visits") + " more to make than slots to make them in");
  }

  [[nodiscard]] std::string cut(const VisitCut& c) const {
    switch (c.why) {
      case VisitCut::Why::places:
        return room(c) + required(c);
      case VisitCut::Why::closed:
        return stations(c) + (c.stations.size() == 1 ? " is" : " are") + " not open for long enough while " +
               members(c) + (c.members.size() == 1 ? " is" : " are") + " here, " +
               counted(c.required - c.room, "visit", "visits") + " fewer";
      case VisitCut::Why::team:
        return names(c) + " are held together, and " + stations(c) +
               (c.stations.size() == 1 ? " has" : " have") +
               " too few places or units for all of them at once: " + "not all of them can go there, " +
               counted(c.required - c.room, "visit", "visits") + " fewer";
    }
    return {};
  }

 private:
  [[nodiscard]] std::string members(const VisitCut& c) const {
    if (static_cast<int>(c.members.size()) == p_.members && p_.members > 1) return "everybody";
    return names(c);
  }
  [[nodiscard]] std::string names(const VisitCut& c) const {
    std::vector<std::string> ids;
    for (int m : c.members) ids.push_back(spec_.members[ix(m)].shown_as);
    return some(ids);
  }
  [[nodiscard]] std::string stations(const VisitCut& c) const {
    std::vector<std::string> ids;
    for (int s : c.stations) ids.push_back(spec_.stations[ix(s)].id);
    return some(ids);
  }
  [[nodiscard]] std::string required(const VisitCut& c) const {
    return "; " + std::to_string(c.required) + (c.required == 1 ? " is" : " are") + " required of " +
           members(c);
  }

  /// " in slots 1 to 3 and 7", nothing where it is all slots that are planned.
  [[nodiscard]] std::string in_slots(const std::vector<int>& slots) const {
    if (slots.empty()) return {};
    std::vector<std::string> runs;
    for (std::size_t i = 0; i < slots.size();) {
      std::size_t j = i;
      while (j + 1 < slots.size() && slots[j + 1] == slots[j] + 1) ++j;
      runs.push_back(std::to_string(slots[i] + 1));
      if (j > i) runs.back() += (j == i + 1 ? " and " : " to ") + std::to_string(slots[j] + 1);
      i = j + 1;
    }
    if (runs.size() == 1 && slots.size() == 1) return " in slot " + runs[0];
    return " in slots " + some(runs);
  }

  /// "the 2 places at A can take 24 visits in slots 1 to 12".
  [[nodiscard]] std::string room(const VisitCut& c) const {
    std::string who;
    if (c.kinds.empty()) {
      int places = 0;
      bool held_back = false;
      for (int s : c.stations) {
        places += p_.capacity[ix(s)];
        for (int e : p_.takes[ix(s)]) held_back = held_back || p_.units[ix(e)] < p_.capacity[ix(s)];
      }
      who = places == 1 ? "the place at " : "the " + std::to_string(places) + " places at ";
      who += stations(c);
      if (held_back) who += " with the equipment there is";
    } else {
      std::vector<std::string> units;
      for (int e : c.kinds)
        units.push_back(std::to_string(p_.units[ix(e)]) + " × " + spec_.equipment[ix(e)].id);
      who = stations(c) + " with " + some(units);
    }
    return who + " can take " + counted(c.room, "visit", "visits") + in_slots(c.slots);
  }

  const ClassSpec& spec_;
  const Problem& p_;
};

/// What is said of one team or one kind of members at several stations is said once.
std::vector<VisitCut> merged(const std::vector<VisitCut>& cuts) {
  std::vector<VisitCut> out;
  for (const VisitCut& cut : cuts) {
    const auto same = std::find_if(out.begin(), out.end(), [&](const VisitCut& o) {
      return o.why == cut.why && o.why == VisitCut::Why::team && o.members == cut.members;
    });
    if (same == out.end()) {
      out.push_back(cut);
      continue;
    }
    same->stations.insert(same->stations.end(), cut.stations.begin(), cut.stations.end());
    same->required += cut.required;
    same->room += cut.room;
  }
  return out;
}

}  // namespace

std::vector<std::string> why_missed(const ClassSpec& spec, const Problem& p, const VisitBound& bound) {
  const Words words(spec, p);
  std::vector<std::string> out;
  words.windows(out);
  for (const VisitCut& cut : merged(bound.cuts)) out.push_back(words.cut(cut));
  if (out.size() > clauses_most) {
    const std::size_t more = out.size() - clauses_most + 1;
    out.resize(clauses_most - 1);
    out.push_back("and so in " + std::to_string(more) + " more ways");
  }
  return out;
}

OrRefusal<Preflight> preflight(const ClassSpec& spec, int slots) {
  const auto made = make_problem(spec, slots);
  if (const auto* refusal = std::get_if<Refusal>(&made)) return *refusal;
  const Problem& p = std::get<Problem>(made);
  const VisitBound bound = cut_visits(p);
  Preflight out{slots, bound.flow, {}};
  for (const std::string& clause : why_missed(spec, p, bound))
    out.reason +=
        (out.reason.empty() ? "Missed at least " + std::to_string(bound.flow.missed) + ": " : "; ") + clause;
  if (!out.reason.empty()) out.reason += ".";
  return out;
}

}  // namespace floorwheel
