// SPDX-License-Identifier: GPL-3.0-or-later
// The thin line between parts of a page.
import QtQuick
import Floorwheel

Rectangle {
    height: Math.max(1, Math.round(2 * Theme.u))
    color: Theme.pline
}
