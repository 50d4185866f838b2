// SPDX-License-Identifier: GPL-3.0-or-later
// Plain text of the touch screen: its letters' size in px of the drawn size; wraps where a width is given.
import QtQuick
import Floorwheel

Text {
    property real size: 34
    color: Theme.ink
    wrapMode: Text.WordWrap
    textFormat: Text.PlainText
    font.family: Theme.plain
    font.pixelSize: Math.round(size * Theme.u)
}
