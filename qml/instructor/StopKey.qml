// SPDX-License-Identifier: GPL-3.0-or-later
// Stop and help: always here, always one press. While stopped the same key ends it.
import QtQuick
import Floorwheel

BarKey {
    id: stop
    readonly property bool ends: Instructor.flow.canBeOver
    readonly property string words: ends ? qsTr("It is over") : qsTr("Stop and help")
    at: 1050
    wide: 210
    name: words
    fill: Theme.paper
    ink: Theme.ink
    edge: Theme.paper
    onActed: ends ? Instructor.flow.over() : Instructor.flow.stop()
    Octagon {
        x: 14 * Theme.u
        anchors.verticalCenter: parent.verticalCenter
    }
    Text {
        x: 88 * Theme.u
        width: 116 * Theme.u
        anchors.verticalCenter: parent.verticalCenter
        text: stop.ends ? stop.words : qsTr("Stop\nand help")
        wrapMode: Text.WordWrap
        color: stop.inkNow
        textFormat: Text.PlainText
        font.family: Theme.plain
        font.bold: true
        font.pixelSize: Math.round(27 * Theme.u)
    }
}
