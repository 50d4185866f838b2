// SPDX-License-Identifier: GPL-3.0-or-later
// Questions about the programmes in the hub's data folder; fields and answers stand in kiosk/wire/kinds.cpp.
#pragma once

#include "kiosk/hub/command.h"

namespace floorwheel::hub {

AnswerOrPlan programmes(Room&, const Fields&);
AnswerOrPlan programme_check(Room&, const Fields&);

}  // namespace floorwheel::hub
