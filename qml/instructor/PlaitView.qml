// SPDX-License-Identifier: GPL-3.0-or-later
// The plait drawn: everything where plait_layout says. Nothing in it is tapped, and a second's tick leaves it.
pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Shapes
import Floorwheel

Item {
    id: view
    Accessible.role: Accessible.Graphic
    Accessible.name: Instructor.plait.description

    Rectangle { // slots gone
        x: Instructor.plait.gone.x * Theme.u
        y: Instructor.plait.gone.y * Theme.u
        width: Instructor.plait.gone.width * Theme.u
        height: Instructor.plait.gone.height * Theme.u
        color: Theme.panel
    }
    Repeater {
        model: Instructor.plait.letters
        Item {
            id: row
            required property var modelData
            readonly property bool waiting: modelData.waiting
            Rectangle {
                x: 366 * Theme.u
                y: row.modelData.y * Theme.u
                width: (Instructor.plait.rowRight - 366) * Theme.u
                height: Math.max(1, Math.round(1.2 * Theme.u))
                color: Theme.bed
            }
            LetterDisc {
                visible: !row.waiting
                x: 344 * Theme.u - width / 2
                y: row.modelData.y * Theme.u - height / 2
                diameter: 28
                letter: row.modelData.letter
            }
            Rectangle {
                visible: row.waiting
                x: 330 * Theme.u
                y: row.modelData.y * Theme.u - height / 2
                width: 28 * Theme.u
                height: width
                color: Theme.paper
                Text {
                    anchors.centerIn: parent
                    text: row.modelData.letter
                    color: Theme.ink
                    font.family: Theme.narrow
                    font.bold: true
                    font.pixelSize: Math.round(24 * Theme.u)
                }
            }
        }
    }
    Repeater {
        model: Instructor.plait.numbers
        Said {
            required property var modelData
            x: modelData.x * Theme.u - width / 2
            base: 122
            size: 20
            text: modelData.slot
            color: modelData.present ? Theme.go : Theme.paper
            font.family: Theme.narrow
            font.bold: true
        }
    }
    Repeater { // between laps
        model: Instructor.plait.laps
        Column {
            required property real modelData
            x: modelData * Theme.u - 1
            y: 104 * Theme.u
            spacing: 5 * Theme.u
            Repeater {
                model: 54
                Rectangle { width: 2 * Theme.u; height: 5 * Theme.u; color: Theme.line }
            }
        }
    }
    Shape {
        anchors.fill: parent
        ShapePath {
            scale: Qt.size(Theme.u, Theme.u)
            strokeColor: Theme.strand
            strokeWidth: 1.6 * Theme.u
            fillColor: "transparent"
            PathMultiline { paths: Instructor.plait.greyLines }
        }
        ShapePath {
            scale: Qt.size(Theme.u, Theme.u)
            strokeColor: Theme.heldColour
            strokeWidth: 3 * Theme.u
            fillColor: "transparent"
            PathMultiline { paths: Instructor.plait.skyLines }
        }
        ShapePath {
            scale: Qt.size(Theme.u, Theme.u)
            strokeColor: Theme.go
            strokeWidth: 4 * Theme.u
            fillColor: "transparent"
            PathMultiline { paths: Instructor.plait.yellowLines }
        }
    }
    PlaitDots { model: Instructor.plait.greyDots }
    PlaitDots { model: Instructor.plait.skipped; radius: 1.2; colour: Theme.heldColour }
    PlaitDots { model: Instructor.plait.skyDots; radius: 4; colour: Theme.heldColour }
    PlaitDots { model: Instructor.plait.yellowDots; radius: 5.5; colour: Theme.go }
    Repeater {
        model: Instructor.plait.closed
        Rectangle {
            id: shut
            required property rect modelData
            x: modelData.x * Theme.u
            y: modelData.y * Theme.u
            width: modelData.width * Theme.u
            height: modelData.height * Theme.u
            radius: 5 * Theme.u
            color: Theme.ink
            border.color: Theme.paper
            border.width: Math.max(2, Math.round(3 * Theme.u))
            Text {
                anchors.centerIn: parent
                visible: shut.width > 70 * Theme.u
                text: qsTr("closed")
                color: Theme.paper
                textFormat: Text.PlainText
                font.family: Theme.plain
                font.bold: true
                font.pixelSize: Math.round(Math.min(20, shut.modelData.height - 8) * Theme.u)
            }
        }
    }
    Rectangle { // the present slot
        visible: Instructor.plait.present.width > 0
        x: Instructor.plait.present.x * Theme.u
        y: Instructor.plait.present.y * Theme.u
        width: Instructor.plait.present.width * Theme.u
        height: Instructor.plait.present.height * Theme.u
        radius: 4 * Theme.u
        color: "transparent"
        border.color: Theme.go
        border.width: Math.round(3 * Theme.u)
    }
}
