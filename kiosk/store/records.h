// SPDX-License-Identifier: GPL-3.0-or-later
// Set records: appended, never changed. A correction is a new record that names the one it corrects.
#pragma once

#include <optional>

#include "kiosk/store/classes.h"
#include "kiosk/wire/hall.h"

namespace floorwheel::store {

struct KeptRecord {
  Uuid id;
  Uuid class_id;
  wire::SetRecord set;  // `set.id` is the text of `id`
  std::optional<Uuid> corrects;
};

void add_record(Database&, const KeptRecord&, std::int64_t seq, CivilTime);
std::optional<KeptRecord> find_record(Database&, const Uuid&);
/// Whether a later record corrects this one.
bool is_corrected(Database&, const Uuid&);

}  // namespace floorwheel::store
