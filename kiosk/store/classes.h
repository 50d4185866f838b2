// SPDX-License-Identifier: GPL-3.0-or-later
// Classes with their problem as the file gave it, who has a seat, who is here, run sheets and the pulse.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kiosk/store/sqlite.h"
#include "scheduler/class_spec.h"

namespace floorwheel::store {

/// When something happened, for reports: Unix time and the hub's offset of local time then.
struct CivilTime {
  std::int64_t ms = 0;
  int utc_offset_s = 0;
};

void add_class(Database&, const Uuid&, const ClassSpec&);
/// The class as its file said, with the words that are still kept; a member whose words were erased shows
/// its id.
std::optional<ClassSpec> find_class(Database&, const Uuid&);

struct ClassLine {
  Uuid id;
  std::string name;
  std::string start;  // RFC 3339 as the file says, or ""
  bool opened = false;
  bool ended = false;
  int expected = 0;
  int here = 0;
};
/// Every class: not yet ended ones first, by start, then by order of adding.
std::vector<ClassLine> all_classes(Database&);

void mark_opened(Database&, const Uuid&, CivilTime);
void mark_ended(Database&, const Uuid&, std::int64_t civil_ms);

void keep_seat(Database&, const Uuid& class_id, const std::string& member, bool guest, bool expected);
void drop_seat(Database&, const Uuid& class_id, const std::string& member);
void keep_check_in(Database&, const Uuid& class_id, const std::string& member, std::int64_t seq, CivilTime);
void drop_check_in(Database&, const Uuid& class_id, const std::string& member);

void keep_run_sheet(Database&, const Uuid& class_id, int version, std::int64_t seq, int at_slot, int slots);

struct Pulse {
  Uuid class_id;
  std::string boot_id;
  double speed = 1.0;
  std::int64_t elapsed_ms = 0;
  std::int64_t civil_ms = 0;
};
void keep_pulse(Database&, const Pulse&);
void drop_pulse(Database&);
std::optional<Pulse> find_pulse(Database&);

}  // namespace floorwheel::store
