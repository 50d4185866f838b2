// SPDX-License-Identifier: GPL-3.0-or-later
// What the auditor's rules and cost components ask of a class and a rotation, looked up once: who is present,
// which exercise somebody works where, which stations are required, what the earlier run sheet said.
// For the auditor only. Members, stations and slots are as in Rotation; slots count from 1.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "scheduler/class_spec.h"
#include "scheduler/rotation/audit.h"

namespace floorwheel::audit_detail {

class Facts {
 public:
  /// Precondition: the rotation has a row for each member, as long as it has slots, with stations of the
  /// class.
  Facts(const ClassSpec&, const Rotation&, int at_slot, const EarlierSheet* before);

  const ClassSpec& spec;
  const Rotation& rotation;
  const EarlierSheet* before;  // null: none given
  const int members;
  const int stations;
  const int slots;       // T
  const int first_slot;  // rules are judged from this slot on; what lies before is history

  [[nodiscard]] StationIndex at(int m, int t) const { return row(m)[index(t - 1)]; }
  [[nodiscard]] bool works(int m, int t) const { return at(m, t) != nowhere; }
  [[nodiscard]] bool present(int m, int t) const { return member(m).present.contains(t); }
  [[nodiscard]] int slots_present(int m) const;
  [[nodiscard]] bool occurs_in_row(StationIndex s, int m) const;
  /// The slots in which m works, ascending, history included.
  [[nodiscard]] std::vector<int> worked_slots(int m) const;

  /// The exercise of m at s by rule 3, or null.
  [[nodiscard]] const Exercise* exercise(int m, StationIndex s) const {
    return exercise_[index(m)][index(s)];
  }
  /// What the cost counts: the exercise of m at s, or the station's own where there is none (history only).
  [[nodiscard]] const Exercise& priced(int m, StationIndex s) const;
  [[nodiscard]] bool works_substitute(int m, StationIndex s) const;
  [[nodiscard]] bool required(int m, StationIndex s) const { return required_[index(m)][index(s)]; }
  [[nodiscard]] int required_count(int m) const;

  /// The row of m in the earlier run sheet, or null.
  [[nodiscard]] const RunSheetRow* earlier_row(int m) const { return earlier_[index(m)]; }
  /// What an earlier row says of slot t: a station's id, "" where it does not work or has ended.
  static std::string_view earlier_station(const RunSheetRow&, int t);

  [[nodiscard]] const MemberSpec& member(int m) const { return spec.members[index(m)]; }
  [[nodiscard]] const StationSpec& station(StationIndex s) const { return spec.stations[index(s)]; }
  [[nodiscard]] std::string_view station_id(StationIndex s) const;  // "" for nowhere
  [[nodiscard]] int member_index(std::string_view id) const;        // -1: no such member

 private:
  static std::size_t index(int i) { return static_cast<std::size_t>(i); }
  [[nodiscard]] const std::vector<StationIndex>& row(int m) const { return rotation.at[index(m)]; }

  std::map<std::string_view, int> member_by_id_;
  std::vector<std::vector<const Exercise*>> exercise_;
  std::vector<std::vector<bool>> required_;
  std::vector<const RunSheetRow*> earlier_;
};

// Rules 1 to 6 and, as rule 0, history; each appends its breaches. In audit_rules.cpp.
void judge_history(const Facts&, std::vector<Breach>&);
void judge_presence(const Facts&, std::vector<Breach>&);
void judge_places_and_equipment(const Facts&, std::vector<Breach>&);
void judge_exercises(const Facts&, std::vector<Breach>&);
void judge_required_and_laps(const Facts&, std::vector<Breach>&);
void judge_pairs(const Facts&, std::vector<Breach>&);
void judge_ring(const Facts&, std::vector<Breach>&);

// The components of the cost. In audit_cost.cpp.
std::int64_t count_missed(const Facts&);
std::int64_t count_uneven(const Facts&);
std::int64_t count_back_to_back(const Facts&);
std::int64_t count_moved(const Facts&);
std::int64_t count_short_rest(const Facts&);
std::int64_t count_idle(const Facts&);
std::int64_t count_assist_overlap(const Facts&);
std::int64_t count_walk_cm(const Facts&);
std::int64_t count_reload_hg(const Facts&);

}  // namespace floorwheel::audit_detail
