// SPDX-License-Identifier: GPL-3.0-or-later
// Looks at every entry a member could have; mates decide where the member must or may not be.
#include "scheduler/rotation/openings.h"

#include <algorithm>

namespace floorwheel {
namespace {

class Finder {
 public:
  Finder(const Problem& p, const Sheet& sheet, int m, const std::vector<std::uint8_t>& placed)
      : p_(p), sheet_(sheet), m_(m), placed_(placed), banned_(ix(p.stations), 0) {
    out_.may = Grid<std::uint8_t>(p.slots, p.stations, 0);
    out_.must.assign(ix(p.slots), nowhere);
  }

  Openings find() {
    const int begin = std::max(p_.from, p_.first[ix(m_)]);
    for (int t = begin; t <= p_.last[ix(m_)]; ++t)
      for (int s : p_.required[ix(m_)])
        if (may(s, t)) out_.may(t, s) = out_.any = true;
    if (!p_.mates[ix(m_)].empty())
      for (int t = begin; t <= p_.last[ix(m_)]; ++t) follow(t);
    for (int s = 0; s < p_.stations; ++s)
      if (banned_[ix(s)])
        for (int t = begin; t <= p_.last[ix(m_)]; ++t) {
          out_.may(t, s) = 0;
          if (out_.must[ix(t)] == s) out_.must[ix(t)] = nowhere;
        }
    return std::move(out_);
  }

 private:
  bool may(int s, int t) const {
    const int room = sheet_.room(s, t);
    if (room < 1) return false;
    for (int foe : p_.foes[ix(m_)])
      if (sheet_.at(foe, t) == s) return false;
    if (p_.mates[ix(m_)].empty()) return true;
    int followers = 1;
    for (int other : p_.teams[ix(p_.team_of[ix(m_)])])
      if (other != m_ && !placed_[ix(other)] && p_.present(other, t) && p_.work(other, s).required)
        ++followers;
    if (p_.places(s, t) >= followers && room < followers) return false;
    for (int mate : p_.mates[ix(m_)]) {
      if (!p_.present(mate, t)) continue;
      if (!placed_[ix(mate)]) {
        if (p_.laps == 1 && sheet_.visits(mate, s) > 0) return false;
        continue;
      }
      const StationIndex there = sheet_.at(mate, t);
      if (there == nowhere ? sheet_.visits(mate, s) > 0 : there != s) return false;
    }
    return true;
  }

  /// A placed mate works in slot t: this member works there too, or never at that station.
  void follow(int t) {
    for (int mate : p_.mates[ix(m_)]) {
      if (!placed_[ix(mate)] || !p_.present(mate, t)) continue;
      const StationIndex there = sheet_.at(mate, t);
      if (there == nowhere) continue;
      if (out_.may(t, there) && (out_.must[ix(t)] == nowhere || out_.must[ix(t)] == there))
        out_.must[ix(t)] = there;
      else
        banned_[ix(there)] = 1;
    }
  }

  const Problem& p_;
  const Sheet& sheet_;
  const int m_;
  const std::vector<std::uint8_t>& placed_;
  std::vector<std::uint8_t> banned_;
  Openings out_;
};

}  // namespace

Openings find_openings(const Problem& p, const Sheet& sheet, int m, const std::vector<std::uint8_t>& placed) {
  return Finder(p, sheet, m, placed).find();
}

}  // namespace floorwheel
