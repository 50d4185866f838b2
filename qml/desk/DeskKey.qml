// SPDX-License-Identifier: GPL-3.0-or-later
// A key of the desk: what it does, and the keyboard key that does the same.
import QtQuick
import Floorwheel

Key {
    id: key
    property string cap
    readonly property real pad: 14 * Theme.u
    width: row.implicitWidth + 2 * pad
    height: 50 * Theme.u
    radius: Theme.desk.radius * Theme.u
    fill: Theme.paper

    Row {
        id: row
        x: key.pad
        anchors.verticalCenter: parent.verticalCenter
        spacing: 16 * Theme.u
        DeskText {
            anchors.verticalCenter: parent.verticalCenter
            text: key.text
            font.bold: true
            color: key.enabled ? key.inkNow : Theme.pmute
        }
        KeyCap {
            anchors.verticalCenter: parent.verticalCenter
            visible: key.cap !== ""
            text: key.cap
        }
    }
    Shortcut {
        enabled: key.enabled && key.visible && key.cap !== ""
        sequence: key.cap
        autoRepeat: false
        onActivated: key.act()
    }
}
