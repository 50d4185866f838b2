// SPDX-License-Identifier: GPL-3.0-or-later
// The hall: what a screen knows, folded from the journal rows of its audience. One fold for hub and screens:
// a restart or a reconnection is the same path as the first connection. A plain value, compared in tests.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "kiosk/wire/row.h"
#include "kiosk/wire/timeline.h"
#include "scheduler/rotation/rotation.h"

namespace floorwheel::wire {

struct StationView {
  std::string id;
  std::string letter;
  std::string exercise;  // id
  std::string exercise_name;
  int capacity = 1;
  int x_cm = 0;
  int y_cm = 0;
  std::vector<int> offers_hg;  // ascending; empty: no load
  int reps = 0;                // planned repetitions (seconds where hold)
  int rir = 0;
  bool hold = false;
  bool closed_now = false;        // closed by a person, until opened again
  std::vector<SlotRange> closed;  // as the class file or a closure says
  friend bool operator==(const StationView&, const StationView&) = default;
};

/// What a member answered about today; the instructor's audience alone.
struct TodayAnswer {
  std::string answer;  // fine | take_it_easy | hurts | wants_a_word
  std::string spot;    // muscle group id where it hurts; else ""
  friend bool operator==(const TodayAnswer&, const TodayAnswer&) = default;
};

struct MemberView {
  std::string id;
  std::string shown_as;
  Level level = Level::novice;
  bool guest = false;
  bool expected = false;
  bool here = false;
  std::int64_t here_at_ms = 0;                       // Unix time of the check-in
  SlotRange present;                                 // a late arrival's first slot, a leaver's last
  std::map<std::string, int, std::less<>> loads_hg;  // planned loads by station (touch, instructor)
  std::map<std::string, std::string, std::less<>>
      exercises;                   // station -> exercise id worked, where a substitute (touch, instructor)
  std::vector<std::string> notes;  // 'together with Ana P.', 'overhead left out': instructor alone
  std::optional<TodayAnswer> today;
  friend bool operator==(const MemberView&, const MemberView&) = default;
};

struct RunSheet {
  int version = 0;  // 0: none published yet
  int at_slot = 0;  // a repair: the first slot it may change
  Style style = Style::ring;
  std::vector<std::string> ring;
  Timing timing;
  std::vector<RunSheetRow> rows;
  // the instructor's audience alone:
  Cost cost;
  Cost bound;
  int proven = 0;
  std::vector<std::string> reasons;
  friend bool operator==(const RunSheet&, const RunSheet&) = default;
};

struct SetRecord {
  std::string id;  // UUID of the record that now counts for this member and slot
  std::string member;
  std::string station;
  std::string exercise;
  int slot = 0;
  bool done = true;
  std::optional<int> load_hg;
  int reps = 0;
  std::optional<int> rir;
  friend bool operator==(const SetRecord&, const SetRecord&) = default;
};

struct ClassView {
  std::string id;  // UUID
  std::string name;
  std::string start;  // RFC 3339 as the file says, or ""
  int length_s = 0;   // 0: not said
  bool open = false;  // chosen: check-in is open
  bool heads_counted = false;
  Timing timing;  // as asked; slots 0 where the file leaves T open
  std::vector<StationView> stations;
  std::vector<MemberView> members;  // expected, walk-ins and guests, in order of joining
  RunSheet sheet;                   // the latest published
  ClassClock clock;
  std::map<std::pair<std::string, int>, SetRecord> records;  // by member and slot
  std::string last_change;  // sentence for the instructor: what the latest run sheet changed
  friend bool operator==(const ClassView&, const ClassView&) = default;
};

struct Hall {
  std::int64_t reached = 0;  // the highest journal number folded or skipped
  std::map<std::string, ClassView> classes;
  std::string current;                                // the class opened last and not ended; "" if none
  std::map<std::string, std::string> exercise_names;  // id -> name, of all exercises any class names
  std::set<std::string, std::less<>> pages_shown;     // members whose own week the touch screen may show
  friend bool operator==(const Hall&, const Hall&) = default;
};

/// Folds one row. Rows at or below `reached` change nothing. An unknown kind only moves `reached`.
void fold(Hall&, const Row&);

const ClassView* current_class(const Hall&);
const StationView* find_station(const ClassView&, std::string_view id);
const MemberView* find_member(const ClassView&, std::string_view id);
/// The station id of a member in a slot by the latest sheet, "" where the member waits or is not in it.
std::string station_of(const ClassView&, std::string_view member, int slot);

}  // namespace floorwheel::wire
