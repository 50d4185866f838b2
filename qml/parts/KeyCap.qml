// SPDX-License-Identifier: GPL-3.0-or-later
// The small picture of a keyboard key beside what it does.
import QtQuick
import Floorwheel

Rectangle {
    property alias text: label.text
    width: Math.max(label.implicitWidth + 14 * Theme.u, height)
    height: 26 * Theme.u
    radius: 5 * Theme.u
    color: Theme.card
    border.width: Math.max(1, Math.round(2 * Theme.u))
    border.color: Theme.pline
    Text {
        id: label
        anchors.centerIn: parent
        color: Theme.ink
        textFormat: Text.PlainText
        font.family: Theme.caption
        font.bold: true
        font.pixelSize: Math.round(Theme.desk.cap * Theme.u)
    }
}
