// SPDX-License-Identifier: GPL-3.0-or-later
// What was said in talks between instructor and member: a goal in the member's own words, what was agreed.
// It lies in the journal's words alone (kind `talk.note`), so erasing a member's words erases it. The latest
// of each stands; earlier ones stay in the journal.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "kiosk/store/sqlite.h"

namespace floorwheel::store {

struct SaidWords {
  std::string text;  // "": nothing stands
  std::int64_t civil_ms = 0;
};
struct TalkWords {
  SaidWords goal;
  SaidWords agreed;
};
TalkWords talk_words(Database&, const std::string& member);

/// The classes a member checked in to from one local day to another ("2026-03-05", both counted), in order of
/// check-in. Each is a visit.
std::vector<Uuid> classes_between(Database&, const std::string& member, const std::string& from,
                                  const std::string& to);

}  // namespace floorwheel::store
