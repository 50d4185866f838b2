// SPDX-License-Identifier: GPL-3.0-or-later
// A text of the instructor's screen: its place by left or right edge and baseline, in px of the drawn size.
import QtQuick
import Floorwheel

Text {
    property real leftAt: 0
    property real rightAt: -1
    property real base: 0
    property real size: Theme.instructor.row
    x: (rightAt >= 0 ? rightAt * Theme.u - width : leftAt * Theme.u)
    y: base * Theme.u - baselineOffset
    color: Theme.paper
    textFormat: Text.PlainText
    font.family: Theme.plain
    font.pixelSize: Math.round(size * Theme.u)
}
