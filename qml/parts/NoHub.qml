// SPDX-License-Identifier: GPL-3.0-or-later
// A screen that has not found its hub yet: where it looks, that it connects by itself, what it keeps.
import QtQuick
import Floorwheel

Rectangle {
    color: Theme.ground
    Column {
        anchors.verticalCenter: parent.verticalCenter
        x: 80 * Theme.u
        width: parent.width - 160 * Theme.u
        spacing: 28 * Theme.u
        Text {
            text: qsTr("No hub yet")
            textFormat: Text.PlainText
            color: Theme.text
            font.family: Theme.narrow
            font.bold: true
            font.pixelSize: Math.round(110 * Theme.u)
        }
        Text {
            width: parent.width
            wrapMode: Text.WordWrap
            text: qsTr("This screen looks for it at %1 and connects by itself.").arg(HubLink.url)
            textFormat: Text.PlainText
            color: Theme.text
            font.family: Theme.plain
            font.pixelSize: Math.round(44 * Theme.u)
        }
        Text {
            width: parent.width
            wrapMode: Text.WordWrap
            text: qsTr("Start it with: floorwheel hub")
            textFormat: Text.PlainText
            color: Theme.quiet
            font.family: Theme.plain
            font.pixelSize: Math.round(36 * Theme.u)
        }
        Text {
            width: parent.width
            wrapMode: Text.WordWrap
            visible: HubLink.waiting > 0
            text: HubLink.waiting === 1 ? qsTr("Outbox: 1 waits for the hub, nothing is lost") : qsTr("Outbox: %1 wait for the hub, nothing is lost").arg(HubLink.waiting)
            textFormat: Text.PlainText
            color: Theme.text
            font.family: Theme.plain
            font.pixelSize: Math.round(36 * Theme.u)
        }
    }
}
