// SPDX-License-Identifier: GPL-3.0-or-later
// Sentences for an instructor about slots and changes of a run sheet: short, in the words of the floor.
#pragma once

#include <string>
#include <vector>

#include "kiosk/wire/hall.h"
#include "scheduler/rotation/rotation.h"

namespace floorwheel::hub {

/// What this number of slots buys over the one before (null: the shortest shown).
std::string gain_of(const SlotRow*, const SlotRow&);

/// Who changes in which slot.
struct SlotChange {
  int slot = 0;
  std::vector<std::string> members;
};
std::vector<SlotChange> changes_between(const wire::RunSheet& before, const wire::RunSheet& after,
                                        int from_slot);

/// The preview's sentences: what is done and when, who changes, what it costs now and then.
std::vector<std::string> sentences_of(const wire::ClassView& before, const wire::ClassView& after,
                                      const wire::RunSheet& sheet, const std::string& what, int from_slot);

/// "Robin K. comes late, from slot 4 on": what a change is, for the run sheet's own words.
std::string late_sentence(const std::string& alias, int from_slot);
std::string leave_sentence(const std::string& alias, int last_slot);

}  // namespace floorwheel::hub
