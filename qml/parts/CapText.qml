// SPDX-License-Identifier: GPL-3.0-or-later
// Text set by the height of its capitals, standing on a baseline; both in px of the drawn size. Never shrunk,
// never elided: whoever places it has measured it.
import QtQuick
import Floorwheel

Text {
    property real cap: 43
    property real base: 0
    y: base * Theme.u - baselineOffset
    color: Theme.text
    font.family: Theme.narrow
    font.bold: true
    font.pixelSize: Math.round(cap / Theme.capOfEm * Theme.u)
    textFormat: Text.PlainText
}
