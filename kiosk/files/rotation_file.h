// SPDX-License-Identifier: GPL-3.0-or-later
// Rotations, slot tables, refusals and audits as JSON, to the letter of the file format; key order is that of
// the format, so that output is byte-equal everywhere.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "kiosk/files/file_error.h"
#include "scheduler/class_spec.h"
#include "scheduler/rotation/audit.h"
#include "scheduler/rotation/change.h"
#include "scheduler/rotation/rotation.h"

namespace floorwheel::files {

std::string to_json(const ClassSpec&, const Plan&, std::optional<long> elapsed_ms = {});
std::string to_json(const ClassSpec&, const SlotTable&, std::optional<long> elapsed_ms = {});
/// "floorwheel-what-if": one row a change; `left` changes were not looked at.
std::string to_json(const WhatIf&, std::optional<long> elapsed_ms = {});
std::string to_json(const Refusal&);
/// `moved` is a number where it was counted, null in a repair audited without the earlier run sheet, and left
/// out elsewhere.
std::string to_json(const Audit&, bool true_cost, bool is_repair);

/// A rotation file as read, before it is held against a class.
struct RotationFile {
  std::string class_name;
  int slots = 0;
  int work_s = 0;
  int change_s = 0;
  Style style = Style::free;
  std::vector<std::string> ring;
  std::vector<RunSheetRow> rows;
  Cost cost;
  bool has_moved = false;
  int at_slot = 0;                // a repair: slots before it are history; else 0
  std::vector<Component> proven;  // as it calls them; empty where it says nothing
};
OrFileError<RotationFile> parse_rotation(std::string_view json, const std::string& file);

/// The rotation by indices of the class; an unknown member or station or a short row is a FileError.
OrFileError<Rotation> rotation_for(const ClassSpec&, const RotationFile&, const std::string& file);

/// The run sheet that a repair starts from. Members the class lacks may stand in it; a station the class
/// lacks is a FileError.
OrFileError<EarlierSheet> earlier_sheet_for(const ClassSpec&, const RotationFile&, const std::string& file);

/// What the header of the file says otherwise than the class: breaches of no numbered rule.
std::vector<Breach> header_breaches(const ClassSpec&, const RotationFile&);
/// The cost stated equals the one recomputed, as far as it was (`moved` may not be known).
bool states_true_cost(const RotationFile&, const Audit&);

}  // namespace floorwheel::files
