// SPDX-License-Identifier: GPL-3.0-or-later
// Questions about training; their fields and answers stand in kiosk/wire/kinds.cpp.
#pragma once

#include "kiosk/hub/command.h"

namespace floorwheel::hub {

AnswerOrPlan dose_of_week(Room&, const Fields&);
AnswerOrPlan member_page(Room&, const Fields&);
AnswerOrPlan floor_stalls(Room&, const Fields&);
AnswerOrPlan talk_sheet_of(Room&, const Fields&);
AnswerOrPlan members_new(Room&, const Fields&);

}  // namespace floorwheel::hub
