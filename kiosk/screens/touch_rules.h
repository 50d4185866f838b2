// SPDX-License-Identifier: GPL-3.0-or-later
// What the touch screen shows and asks, decided from the class alone: which class is at hand, which set a
// member records now, what was planned for it, where the member goes next. Pure functions over plain values,
// so that every rule is tested without a window. Only the class's own plan is used, nothing of last time.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kiosk/wire/hall.h"

namespace floorwheel::screens::touch {

/// The class opened last; after its end the one ended last today, as recording stays open all day. Null:
/// none.
const wire::ClassView* class_at_hand(const wire::Hall&, std::int64_t civil_now_ms, int utc_offset_s);

/// What people do at the screen now: nothing, check in, record, or nothing but help.
enum class Stage : std::uint8_t { none, check_in, record, stopped };
Stage stage_of(const wire::ClassView*, const wire::Moment&);

/// The slot being worked, or in a change or a break the one just ended; 0 before the first, T past the last.
int slot_begun(const wire::ClassView&, const wire::Moment&);
/// True while `slot_begun` is still being worked.
bool at_work(const wire::ClassView&, const wire::Moment&);

/// One set as the class plans it.
struct PlannedSet {
  std::string member;
  std::string station;
  std::string letter;
  std::string exercise;
  std::string exercise_name;
  int slot = 0;
  int set = 1;  // this member's set at this station, of `sets`
  int sets = 1;
  std::optional<int> load_hg;   // none: body weight, or no load is planned
  std::vector<int> offers_hg;   // ascending; empty: no load line
  bool may_go_without = false;  // a substitute: perhaps it needs no load
  int reps = 0;                 // seconds where hold
  int rir = 0;
  bool hold = false;
  friend bool operator==(const PlannedSet&, const PlannedSet&) = default;
};
/// None where the member does not work in that slot.
std::optional<PlannedSet> planned_set(const wire::Hall&, const wire::ClassView&, std::string_view member,
                                      int slot);

/// The slots in which a member works by the latest run sheet, up to `last`, in order.
std::vector<int> worked_slots(const wire::ClassView&, std::string_view member, int last);

/// The set a member records when tapping the alias: that of the slot just ended; while the next is worked
/// and that one is kept already, the one being worked. None: nothing to record yet.
/// `kept` says whether a slot of this member is recorded (the outbox counts).
template <class Kept>
std::optional<int> slot_to_record(const wire::ClassView& c, const wire::Moment& m, std::string_view member,
                                  const Kept& kept) {
  const int begun = slot_begun(c, m);
  const std::vector<int> worked = worked_slots(c, member, begun);
  if (worked.empty()) return {};
  const bool now = at_work(c, m) && worked.back() == begun;
  if (!now || worked.size() == 1) return worked.back();
  const int ended = worked[worked.size() - 2];
  return kept(ended) ? worked.back() : ended;
}

/// Where a member goes after the present slot.
struct NextPlace {
  enum class What : std::uint8_t { unknown, station, waits, nothing_more };
  What what = What::unknown;  // unknown: no run sheet names this member
  std::string letter;
  std::string exercise_name;
  int slot = 0;
  friend bool operator==(const NextPlace&, const NextPlace&) = default;
};
NextPlace next_place(const wire::Hall&, const wire::ClassView&, const wire::Moment&, std::string_view member);

/// After this slot everybody who works goes one place on in the ring, and nobody with work left waits.
bool moves_one_on(const wire::ClassView&, int slot);

/// Station ids in the order people are sorted by: along the ring, else as the floor lists them.
std::vector<std::string> station_order(const wire::ClassView&);

/// The next load up (+1) or down (-1) that stands there; the same where there is none.
int step_load(const std::vector<int>& offers_hg, int load_hg, int direction);

}  // namespace floorwheel::screens::touch
