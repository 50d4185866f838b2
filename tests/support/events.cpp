// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/events.h"

#include <algorithm>

#include "tests/support/builders.h"

namespace floorwheel::events {

std::string late_leaver_or_closed(tiny::Draw& d, ClassSpec& c, int slots, int at_slot) {
  const int kind = d.below(3);
  if (kind == 0) {
    build::member(c, "late").present.first = at_slot;
    return "late comes";
  }
  if (kind == 1) {
    MemberSpec& m = c.members[static_cast<std::size_t>(d.below(static_cast<int>(c.members.size())))];
    m.present.last = at_slot - 1;
    return m.id + " leaves";
  }
  StationSpec& s = c.stations[static_cast<std::size_t>(d.below(static_cast<int>(c.stations.size())))];
  s.closed.push_back({at_slot, slots});
  return s.id + " closes";
}

Kept history_kept(const ClassSpec& c, const EarlierSheet& before, const Rotation& after, int at_slot) {
  Kept out;
  for (std::size_t m = 0; m < c.members.size(); ++m) {
    const auto row = std::find_if(before.rows.begin(), before.rows.end(),
                                  [&](const RunSheetRow& r) { return r.member == c.members[m].id; });
    for (std::size_t t = 0; t + 1 < static_cast<std::size_t>(at_slot); ++t) {
      const StationIndex s = after.at.at(m).at(t);
      const std::string now = s == nowhere ? "" : c.stations.at(static_cast<std::size_t>(s)).id;
      const bool on_sheet =
          row != before.rows.end() && c.members[m].present.contains(static_cast<int>(t) + 1);
      const std::string was = on_sheet && t < row->stations.size() ? row->stations[t] : "";
      out.entries += on_sheet ? 1 : 0;
      out.altered += now != was ? 1 : 0;
    }
  }
  return out;
}

}  // namespace floorwheel::events
