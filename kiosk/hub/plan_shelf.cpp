// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/plan_shelf.h"

#include "kiosk/store/uuid.h"

namespace floorwheel::hub {

void PlanShelf::keep(PlanRequest request, PlanResult result) {
  if (find(request)) return;
  entries_.push_front(
      {.id = store::text_of(store::make_uuid()), .request = std::move(request), .result = std::move(result)});
  if (entries_.size() > most) entries_.pop_back();
}

const PlanShelf::Entry* PlanShelf::find(const PlanRequest& request) const {
  for (const Entry& e : entries_)
    if (e.request == request) return &e;
  return nullptr;
}

const PlanShelf::Entry* PlanShelf::find(const std::string& id) const {
  for (const Entry& e : entries_)
    if (e.id == id) return &e;
  return nullptr;
}

}  // namespace floorwheel::hub
