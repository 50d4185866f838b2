// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/sentences.h"

#include <algorithm>
#include <set>

namespace floorwheel::hub {
namespace {

using Count = std::int64_t;

std::string number(Count n) { return std::to_string(n); }
std::string several(Count n, const std::string& one, const std::string& many) {
  return number(n) + " " + (n == 1 ? one : many);
}

/// The components an instructor can act on, in words.
struct Worded {
  Component component;
  const char* one;
  const char* many;
};
constexpr Worded worded[] = {
    {Component::missed, "missed station", "missed stations"},
    {Component::back_to_back, "back-to-back", "back-to-backs"},
    {Component::short_rest, "short rest", "short rests"},
    {Component::idle, "wait", "waits"},
};

std::string cost_in_words(const Cost& c) {
  std::string out;
  for (const Worded& w : worded)
    if (c[w.component] > 0) out += (out.empty() ? "" : ", ") + several(c[w.component], w.one, w.many);
  return out.empty() ? "nothing missed and no back-to-back" : out;
}

std::string alias_of(const wire::ClassView& c, const std::string& id) {
  const wire::MemberView* m = wire::find_member(c, id);
  return m ? m->shown_as : id;
}

std::string joined(const std::vector<std::string>& all) {
  std::string out;
  for (std::size_t i = 0; i < all.size(); ++i)
    out += (i == 0 ? "" : i + 1 == all.size() ? " and " : ", ") + all[i];
  return out;
}

/// An alias may end in a full stop of its own.
std::string sentence_end(std::string text) {
  if (text.empty() || text.back() != '.') text += '.';
  return text;
}

const RunSheetRow* row_of(const wire::RunSheet& s, const std::string& member) {
  for (const RunSheetRow& r : s.rows)
    if (r.member == member) return &r;
  return nullptr;
}

std::string at(const RunSheetRow* r, int slot) {
  if (!r || slot < 1 || static_cast<std::size_t>(slot) > r->stations.size()) return {};
  return r->stations[static_cast<std::size_t>(slot) - 1];
}

}  // namespace

std::string gain_of(const SlotRow* before, const SlotRow& now) {
  if (!before) return "The shortest: " + cost_in_words(now.cost) + ".";
  std::vector<std::string> better;
  for (const Worded& w : worded) {
    const Count less = before->cost[w.component] - now.cost[w.component];
    if (less > 0) better.push_back(several(less, w.one, w.many) + " fewer");
    if (less < 0) better.push_back(several(-less, w.one, w.many) + " more");
  }
  if (before->cost[Component::uneven] > now.cost[Component::uneven] && better.empty())
    better.emplace_back("what is missed is shared more evenly");
  return better.empty() ? "Nothing better." : "With one more slot: " + joined(better) + ".";
}

std::vector<SlotChange> changes_between(const wire::RunSheet& before, const wire::RunSheet& after,
                                        int from_slot) {
  std::vector<SlotChange> out;
  const int last = std::max(before.timing.slots, after.timing.slots);
  for (int slot = std::max(from_slot, 1); slot <= last; ++slot) {
    SlotChange c{.slot = slot, .members = {}};
    for (const RunSheetRow& r : after.rows)
      if (at(row_of(before, r.member), slot) != at(&r, slot)) c.members.push_back(r.member);
    for (const RunSheetRow& r : before.rows)
      if (!row_of(after, r.member) && !at(&r, slot).empty()) c.members.push_back(r.member);
    if (!c.members.empty()) out.push_back(std::move(c));
  }
  return out;
}

std::vector<std::string> sentences_of(const wire::ClassView& before, const wire::ClassView& after,
                                      const wire::RunSheet& sheet, const std::string& what, int from_slot) {
  std::vector<std::string> out{what};
  std::set<std::string> concerned;
  int first = 0;
  for (const SlotChange& c : changes_between(before.sheet, sheet, from_slot)) {
    if (first == 0) first = c.slot;
    concerned.insert(c.members.begin(), c.members.end());
  }
  if (concerned.empty()) {
    out.emplace_back("Nobody's stations change.");
  } else {
    // In the order of the run sheet: named members first, then guests, then who is not on it any more.
    std::vector<std::string> aliases;
    for (const RunSheetRow& r : sheet.rows)
      if (concerned.erase(r.member) > 0) aliases.push_back(alias_of(after, r.member));
    for (const std::string& id : concerned) aliases.push_back(alias_of(after, id));
    if (aliases.size() > 4) {
      const auto more = static_cast<Count>(aliases.size()) - 3;
      aliases.resize(3);
      aliases.push_back(several(more, "other", "others"));
    }
    out.push_back("From slot " + number(first) + " on stations change for " + sentence_end(joined(aliases)));
  }
  const std::string now = cost_in_words(before.sheet.cost);
  const std::string then = cost_in_words(sheet.cost);
  out.push_back(now == then ? "The cost stays: " + now + "." : "Now: " + now + ". Then: " + then + ".");
  out.insert(out.end(), sheet.reasons.begin(), sheet.reasons.end());
  return out;
}

std::string late_sentence(const std::string& alias, int from_slot) {
  return alias + " joins from slot " + number(from_slot) + " on.";
}
std::string leave_sentence(const std::string& alias, int last_slot) {
  return last_slot < 1 ? alias + " leaves before the first slot."
                       : alias + " leaves after slot " + number(last_slot) + ".";
}

}  // namespace floorwheel::hub
