// SPDX-License-Identifier: GPL-3.0-or-later
// The way to a running class in four words: done is ticked, the present one has a dot, what comes has a ring.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Row {
    id: way
    property int step: 0
    spacing: 7 * Theme.u
    Repeater {
        model: [qsTr("Class"), qsTr("Heads"), qsTr("Publish"), qsTr("Start")]
        Row {
            id: part
            required property int index
            required property string modelData
            spacing: 7 * Theme.u
            Rectangle {
                visible: part.index > 0
                anchors.verticalCenter: parent.verticalCenter
                width: 16 * Theme.u
                height: 3 * Theme.u
                color: Theme.line
            }
            Item {
                width: 20 * Theme.u
                height: 26 * Theme.u
                anchors.verticalCenter: parent.verticalCenter
                Tick {
                    visible: part.index < way.step
                    anchors.centerIn: parent
                    width: 20 * Theme.u
                }
                Rectangle {
                    visible: part.index >= way.step
                    anchors.centerIn: parent
                    width: 16 * Theme.u
                    height: width
                    radius: width / 2
                    color: part.index === way.step ? Theme.go : "transparent"
                    border.color: part.index === way.step ? Theme.go : Theme.mute
                    border.width: Math.max(1, Math.round(2 * Theme.u))
                }
            }
            Text {
                anchors.verticalCenter: parent.verticalCenter
                text: part.modelData
                color: part.index <= way.step ? Theme.paper : Theme.mute
                textFormat: Text.PlainText
                font.family: Theme.plain
                font.bold: part.index === way.step
                font.pixelSize: Math.round(20 * Theme.u)
            }
        }
    }
}
