// SPDX-License-Identifier: GPL-3.0-or-later
// A picture of a window as PNG, and its text twin beside it: FILE.png and FILE.txt, the latter with every
// visible text, one a line: x, y, width, height (px), letter size (px), colour, family, text, by tabs.
#pragma once

#include <QString>

class QQuickWindow;

namespace floorwheel::screens {

/// Writes both whole or neither (temporary file, then rename). Returns what is wrong, or "".
QString save_picture(QQuickWindow&, const QString& file);
QString text_twin_name(const QString& file);

}  // namespace floorwheel::screens
