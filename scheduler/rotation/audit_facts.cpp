// SPDX-License-Identifier: GPL-3.0-or-later
// The look-ups of the auditor, and "the exercise of m at s" as the rotation model gives it under "Given".
#include "scheduler/rotation/audit_facts.h"

#include <algorithm>

namespace floorwheel {
namespace {

bool names(const std::vector<std::string>& list, const std::string& id) {
  return std::find(list.begin(), list.end(), id) != list.end();
}

/// "A member may do an exercise that stands in allowed_exercises; otherwise one that is not excluded, has no
/// excluded feature and loads no excluded group, be it primary or assisting."
bool may_do(const MemberSpec& m, const Exercise& e) {
  if (names(m.allowed_exercises, e.id)) return true;
  if (names(m.excluded_exercises, e.id)) return false;
  if (m.excluded_features.meets(e.features)) return false;
  return !m.excluded_groups.meets(e.primary) && !m.excluded_groups.meets(e.assisting);
}

}  // namespace

const Exercise* audited_exercise(const ClassSpec& c, int member, StationIndex station) {
  const MemberSpec& m = c.members.at(static_cast<std::size_t>(member));
  const StationSpec& s = c.stations.at(static_cast<std::size_t>(station));
  const Exercise& own = c.exercises.at(s.exercise);
  if (may_do(m, own)) return &own;
  for (const std::string& id : s.substitutes) {
    const Exercise& substitute = c.exercises.at(id);
    if (may_do(m, substitute)) return &substitute;
  }
  return nullptr;
}

namespace audit_detail {

Facts::Facts(const ClassSpec& c, const Rotation& r, int at_slot, const EarlierSheet* earlier_sheet)
    : spec(c),
      rotation(r),
      before(earlier_sheet),
      members(static_cast<int>(c.members.size())),
      stations(static_cast<int>(c.stations.size())),
      slots(r.slots),
      first_slot(std::max(1, at_slot)) {
  std::map<std::string_view, const RunSheetRow*> rows;
  if (before != nullptr)
    for (const RunSheetRow& row : before->rows) rows.emplace(row.member, &row);

  for (int m = 0; m < members; ++m) {
    const MemberSpec& who = member(m);
    member_by_id_.emplace(who.id, m);
    exercise_.emplace_back();
    required_.emplace_back();
    for (StationIndex s = 0; s < stations; ++s) {
      const Exercise* e = audited_exercise(c, m, s);
      exercise_.back().push_back(e);
      // A station without an exercise drops out of a list; whether the list was explicit matters to whoever
      // refuses a class, not to the rotation.
      const bool listed = !who.required || names(*who.required, station(s).id);
      required_.back().push_back(listed && e != nullptr);
    }
    const auto found = rows.find(who.id);
    earlier_.push_back(found == rows.end() ? nullptr : found->second);
  }
}

int Facts::slots_present(int m) const {
  int count = 0;
  for (int t = 1; t <= slots; ++t) count += present(m, t) ? 1 : 0;
  return count;
}

bool Facts::occurs_in_row(StationIndex s, int m) const {
  return std::find(row(m).begin(), row(m).end(), s) != row(m).end();
}

std::vector<int> Facts::worked_slots(int m) const {
  std::vector<int> worked;
  for (int t = 1; t <= slots; ++t)
    if (works(m, t)) worked.push_back(t);
  return worked;
}

const Exercise& Facts::priced(int m, StationIndex s) const {
  const Exercise* given = exercise(m, s);
  return given != nullptr ? *given : spec.exercises.at(station(s).exercise);
}

bool Facts::works_substitute(int m, StationIndex s) const { return priced(m, s).id != station(s).exercise; }

int Facts::required_count(int m) const {
  const auto& list = required_[index(m)];
  return static_cast<int>(std::count(list.begin(), list.end(), true));
}

std::string_view Facts::earlier_station(const RunSheetRow& row, int t) {
  return index(t) <= row.stations.size() ? std::string_view(row.stations[index(t - 1)]) : std::string_view();
}

std::string_view Facts::station_id(StationIndex s) const {
  return s == nowhere ? std::string_view() : std::string_view(station(s).id);
}

int Facts::member_index(std::string_view id) const {
  const auto found = member_by_id_.find(id);
  return found == member_by_id_.end() ? -1 : found->second;
}

}  // namespace audit_detail
}  // namespace floorwheel
