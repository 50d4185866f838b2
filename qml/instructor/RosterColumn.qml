// SPDX-License-Identifier: GPL-3.0-or-later
// Who is in the class and what is to be known of them; rows are only read, two keys step through them.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: column
    Said { leftAt: 20; base: 112; size: 21; font.bold: true; text: Instructor.roster.heading }
    Repeater {
        model: Instructor.roster.rows
        Rectangle {
            id: row
            required property int index
            required property string name
            required property string note
            required property string follows
            required property bool chosen
            readonly property color ink: chosen ? Theme.ink : Theme.paper
            x: 20 * Theme.u
            y: (124 + 63 * index) * Theme.u
            width: 284 * Theme.u
            height: Theme.instructor.readRow * Theme.u
            radius: 6 * Theme.u
            color: chosen ? Theme.paper : Theme.panel
            Accessible.role: Accessible.StaticText
            Accessible.name: qsTr("%1: %2 %3").arg(name).arg(note).arg(follows)
            Text {
                x: 12 * Theme.u
                width: 112 * Theme.u
                anchors.verticalCenter: parent.verticalCenter
                text: row.name
                wrapMode: Text.WrapAtWordBoundaryOrAnywhere
                lineHeight: 0.85
                color: row.ink
                textFormat: Text.PlainText
                font.family: Theme.narrow
                font.bold: true
                font.pixelSize: Math.round(25 * Theme.u)
            }
            Column {
                x: 128 * Theme.u
                width: 152 * Theme.u
                anchors.verticalCenter: parent.verticalCenter
                Text {
                    width: parent.width
                    visible: text !== ""
                    text: row.note
                    wrapMode: Text.WordWrap
                    lineHeight: 0.9
                    color: row.ink
                    textFormat: Text.PlainText
                    font.family: Theme.narrow
                    font.bold: true
                    font.pixelSize: Math.round(20 * Theme.u)
                }
                Text {
                    width: parent.width
                    visible: text !== ""
                    text: row.follows
                    wrapMode: Text.WordWrap
                    lineHeight: 0.9
                    color: row.chosen ? Theme.pmute : Theme.mute
                    textFormat: Text.PlainText
                    font.family: Theme.plain
                    font.pixelSize: Math.round(18 * Theme.u)
                }
            }
        }
    }
    Key {
        id: up
        x: 20 * Theme.u
        y: 506 * Theme.u
        width: 130 * Theme.u
        height: 130 * Theme.u
        name: qsTr("Up the roster")
        onActed: Instructor.roster.up()
        Triangle { anchors.centerIn: parent; width: 76 * Theme.u; height: 52 * Theme.u; turn: 180; colour: up.inkNow }
    }
    Key {
        id: down
        x: 174 * Theme.u
        y: 506 * Theme.u
        width: 130 * Theme.u
        height: 130 * Theme.u
        name: qsTr("Down the roster")
        onActed: Instructor.roster.down()
        Triangle { anchors.centerIn: parent; width: 76 * Theme.u; height: 52 * Theme.u; colour: down.inkNow }
    }
}
