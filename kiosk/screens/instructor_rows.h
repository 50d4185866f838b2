// SPDX-License-Identifier: GPL-3.0-or-later
// Rows of a page of large keys: what stands in a place changes, the place does not, so that a check-in that
// arrives while a finger lies on a key does not replace the key.
#pragma once

#include "kiosk/screens/row_model.h"

namespace floorwheel::screens {

inline void show_in_places(RowModel& model, QList<QVariantMap> rows) {
  for (qsizetype i = 0; i < rows.size(); ++i) rows[i].insert(QStringLiteral("key"), QString::number(i));
  model.set_rows(rows);
}

}  // namespace floorwheel::screens
