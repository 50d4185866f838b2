// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/new_members.h"

#include <algorithm>
#include <tuple>

#include "kiosk/store/reports.h"
#include "scheduler/training/first_visits.h"

namespace floorwheel::hub {
namespace json = boost::json;
namespace {

/// In the class at hand.
struct Place {
  bool here = false;
  bool expected = false;
};

Place place_of(const wire::ClassView* c, const std::string& member) {
  const wire::MemberView* m = c == nullptr ? nullptr : wire::find_member(*c, member);
  return m == nullptr ? Place{} : Place{m->here, m->expected};
}

}  // namespace

json::array new_members(Room& room) {
  const wire::ClassView* c = wire::current_class(room.hall);
  struct Row {
    store::VisitCount count;
    Place place;
    training::FirstVisit visit;
  };
  std::vector<Row> rows;
  for (store::VisitCount& count : store::visit_counts(room.database, training::first_visits)) {
    const Place place = place_of(c, count.member);
    if (count.visits == 0 && !place.here && !place.expected) continue;
    if (const auto visit = training::first_visit(count.visits, place.here))
      rows.push_back({std::move(count), place, *visit});
  }
  std::ranges::sort(rows, [](const Row& a, const Row& b) {
    // A later day comes first; "" for never comes last.
    return std::tie(b.place.here, b.place.expected, b.count.last_day, a.count.shown_as, a.count.member) <
           std::tie(a.place.here, a.place.expected, a.count.last_day, b.count.shown_as, b.count.member);
  });
  json::array out;
  for (const Row& r : rows)
    out.push_back({{"member", r.count.member},
                   {"shown_as", r.count.shown_as},
                   {"visits", r.count.visits},
                   {"visit", r.visit.number},
                   {"here", r.place.here},
                   {"expected", r.place.expected},
                   {"last_day", r.count.last_day.empty() ? json::value() : json::value(r.count.last_day)},
                   {"look_at", json::array(r.visit.look_at.begin(), r.visit.look_at.end())}});
  return out;
}

}  // namespace floorwheel::hub
