// SPDX-License-Identifier: GPL-3.0-or-later
// A text of the desk: PT Sans on paper, never elided.
import QtQuick
import Floorwheel

Text {
    property real size: Theme.desk.row
    color: Theme.ink
    textFormat: Text.PlainText
    font.family: Theme.plain
    font.pixelSize: Math.round(size * Theme.u)
}
