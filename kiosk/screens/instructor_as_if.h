// SPDX-License-Identifier: GPL-3.0-or-later
// A class as it would be with a run sheet that is only proposed: the sheet is folded into a copy of the hall
// by the very function that folds a published one, so that a preview can show nothing else than what comes.
#pragma once

#include <QJsonObject>
#include <optional>

#include "kiosk/wire/hall.h"

namespace floorwheel::screens {

/// `answer` is that of `proposal` or `preview`: {sheet, words, ...}. Nothing if it holds no sheet.
std::optional<wire::ClassView> as_if(const wire::Hall& hall, const std::string& class_id,
                                     const QJsonObject& answer);

}  // namespace floorwheel::screens
