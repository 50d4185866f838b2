// SPDX-License-Identifier: GPL-3.0-or-later
// Building a whole sheet, and taking one team out of it and putting it back.
#include "scheduler/rotation/placement.h"

#include <algorithm>
#include <numeric>

namespace floorwheel {

Track ring_track(std::vector<StationIndex> ring) {
  Track track;
  track.place.resize(ring.size());
  for (int i = 0; i < static_cast<int>(ring.size()); ++i) track.place[ix(ring[ix(i)])] = i;
  track.ring = std::move(ring);
  return track;
}

Placement::Placement(const Problem& p, Track track, int width, bool thorough, Random& random)
    : p_(p),
      track_(std::move(track)),
      width_(width),
      thorough_(thorough),
      random_(random),
      placed_(ix(p.members), 1) {}

void Placement::build(Sheet& sheet) {
  std::vector<int> order(p_.teams.size());
  std::iota(order.begin(), order.end(), 0);
  std::vector<int> slack(p_.teams.size(), p_.slots);
  for (std::size_t i = 0; i < order.size(); ++i)
    for (int m : p_.teams[i])
      slack[i] = std::min(slack[i], std::max(0, p_.slots_present(m) - p_.visits_wanted(m)));
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
    const auto size = [&](int team) { return p_.teams[ix(team)].size(); };
    return size(a) != size(b) ? size(a) > size(b) : slack[ix(a)] < slack[ix(b)];
  });
  for (int team : order) remove(sheet, team);
  for (int team : order) insert(sheet, team);
}

void Placement::build_from_old(Sheet& sheet) {
  std::vector<int> changed;
  for (int team = 0; team < static_cast<int>(p_.teams.size()); ++team) remove(sheet, team);
  for (int team = 0; team < static_cast<int>(p_.teams.size()); ++team)
    if (!put_old(sheet, team)) changed.push_back(team);
  for (int team : changed) {
    if (!holds(sheet, team)) remove(sheet, team);
    for (int m : p_.teams[ix(team)]) placed_[ix(m)] = 1;
  }
  for (int team : changed) {
    remove(sheet, team);
    insert(sheet, team);
  }
}

/// False: not all entries could stay, or rows are to be looked at again.
bool Placement::put_old(Sheet& sheet, int team) {
  bool all = true;
  for (int m : p_.teams[ix(team)]) {
    placed_[ix(m)] = 1;
    all = all && p_.counts[ix(m)];
    for (int t = p_.from; t < p_.slots; ++t) {
      const StationIndex s = p_.old(m, t);
      if (s == nowhere) continue;
      if (p_.present(m, t) && p_.work(m, s).required && sheet.room(s, t) > 0)
        sheet.put(m, t, s);
      else
        all = false;
    }
    if (!sheet.laps_hold(m) || (track_.is_ring() && !steps_hold(p_, track_.place, sheet.row(m)))) {
      sheet.clear(m);
      all = false;
    }
  }
  if (holds(sheet, team)) return all;
  remove(sheet, team);
  for (int m : p_.teams[ix(team)]) placed_[ix(m)] = 1;
  return false;
}

void Placement::remove(Sheet& sheet, int team) {
  for (int m : p_.teams[ix(team)]) {
    sheet.clear(m);
    placed_[ix(m)] = 0;
  }
}

void Placement::insert(Sheet& sheet, int team) {
  std::vector<int> members = p_.teams[ix(team)];
  if (members.size() > 1 && random_.below(2)) std::reverse(members.begin(), members.end());
  for (int m : members) insert_member(sheet, m);
  if (members.size() == 1 || holds(sheet, team)) return;
  for (std::size_t i = 1; i < members.size(); ++i) sheet.clear(members[i]);
  if (!holds(sheet, team)) sheet.clear(members[0]);
}

void Placement::insert_member(Sheet& sheet, int m) {
  placed_[ix(m)] = 1;
  Openings open = find_openings(p_, sheet, m, placed_);
  if (!open.any) return;
  for (int tries = 0; tries < 3; ++tries) {
    const Row row = track_.is_ring()
                        ? ring_path(p_, sheet, m, open, track_.ring, track_.place, thorough_, random_)
                        : free_path(p_, sheet, m, open, width_, random_);
    sheet.set_row(m, row.data());
    if (follows(sheet, m, open)) break;
    // A mate stands somewhere this row could not follow: leave those stations out.
    for (int t = p_.from; t < p_.slots; ++t) {
      const StationIndex must = open.must[ix(t)];
      if (must == nowhere || sheet.at(m, t) == must || sheet.visits(m, must) == 0) continue;
      for (int u = p_.from; u < p_.slots; ++u) {
        open.may(u, must) = 0;
        if (open.must[ix(u)] == must) open.must[ix(u)] = nowhere;
      }
    }
    sheet.clear(m);
  }
}

bool Placement::follows(const Sheet& sheet, int m, const Openings& open) const {
  for (int t = p_.from; t < p_.slots; ++t)
    if (const StationIndex must = open.must[ix(t)];
        must != nowhere && sheet.at(m, t) != must && sheet.visits(m, must) > 0)
      return false;
  return true;
}

bool Placement::holds(const Sheet& sheet, int team) const {
  for (int m : p_.teams[ix(team)])
    if (!sheet.pairs_hold(m)) return false;
  return true;
}

}  // namespace floorwheel
