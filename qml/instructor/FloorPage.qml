// SPDX-License-Identifier: GPL-3.0-or-later
// As laid out: the stations round the page as round the room; tap one and say what is different.
pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Shapes
import Floorwheel

Item {
    id: page
    anchors.fill: parent
    Said { leftAt: 20; base: 116; size: 27; font.bold: true; text: qsTr("As laid out: tap a station") }
    Repeater {
        model: Instructor.floor.stations
        Key {
            id: station
            required property var model
            x: (20 + 154 * model.column) * Theme.u
            y: (140 + 154 * model.line) * Theme.u
            width: 130 * Theme.u
            height: 130 * Theme.u
            fill: model.chosen ? Theme.paper : model.closed ? Theme.ink : Theme.panel
            ink: model.chosen ? Theme.ink : Theme.paper
            edge: model.chosen ? Theme.paper : model.closed ? "transparent" : Theme.line
            name: qsTr("Station %1").arg(model.letter)
            note: qsTr("%1, %2").arg(model.text).arg(model.note)
            onActed: Instructor.floor.choose(model.id)
            Shape {
                anchors.fill: parent
                visible: station.model.closed
                ShapePath {
                    strokeColor: station.inkNow
                    strokeWidth: 2 * Theme.u
                    strokeStyle: ShapePath.DashLine
                    dashPattern: [5, 4]
                    fillColor: "transparent"
                    startX: 1
                    startY: 1
                    PathLine { x: station.width - 1; y: 1 }
                    PathLine { x: station.width - 1; y: station.height - 1 }
                    PathLine { x: 1; y: station.height - 1 }
                    PathLine { x: 1; y: 1 }
                }
            }
            LetterDisc {
                anchors.horizontalCenter: parent.horizontalCenter
                y: 8 * Theme.u
                diameter: 48
                letter: station.model.letter
                closed: station.model.closed
                fill: station.inkNow
                ink: station.faceNow
            }
            Text {
                x: 4 * Theme.u
                y: 58 * Theme.u
                width: parent.width - 8 * Theme.u
                horizontalAlignment: Text.AlignHCenter
                wrapMode: Text.WordWrap
                lineHeight: 0.8
                text: station.model.text
                color: station.inkNow
                textFormat: Text.PlainText
                font.family: Theme.narrow
                font.bold: true
                font.pixelSize: Math.round(20 * Theme.u)
            }
            Text {
                anchors.horizontalCenter: parent.horizontalCenter
                y: 102 * Theme.u
                text: station.model.note
                color: station.model.chosen || station.pressed ? station.inkNow : Theme.mute
                textFormat: Text.PlainText
                font.family: Theme.plain
                font.pixelSize: Math.round(17 * Theme.u)
            }
        }
    }
    Column {
        x: 174 * Theme.u
        y: 312 * Theme.u
        width: 438 * Theme.u
        spacing: 10 * Theme.u
        Text {
            width: parent.width
            horizontalAlignment: Text.AlignHCenter
            text: Instructor.floor.heading
            color: Theme.paper
            textFormat: Text.PlainText
            font.family: Theme.plain
            font.bold: true
            font.pixelSize: Math.round(26 * Theme.u)
        }
        Text {
            width: parent.width
            horizontalAlignment: Text.AlignHCenter
            wrapMode: Text.WordWrap
            text: Instructor.floor.told
            color: Theme.mute
            textFormat: Text.PlainText
            font.family: Theme.plain
            font.pixelSize: Math.round(19 * Theme.u)
        }
    }
    Rectangle { x: 807 * Theme.u; y: 98 * Theme.u; width: 2 * Theme.u; height: 538 * Theme.u; color: Theme.line }
    LetterDisc { x: 832 * Theme.u; y: 100 * Theme.u; diameter: 56; letter: Instructor.floor.letter; closed: Instructor.floor.closed }
    Said { leftAt: 906; base: 124; size: 30; font.bold: true; text: Instructor.floor.name }
    Said { leftAt: 906; base: 154; size: 20; color: Theme.mute; text: Instructor.floor.note }

    component Deed: Key {
        property int column: 0
        property int line: 0
        x: (830 + 227 * column) * Theme.u
        y: (180 + 154 * line) * Theme.u
        width: 203 * Theme.u
        height: 130 * Theme.u
        textSize: 26
        noteSize: 19
    }
    Deed {
        text: qsTr("Set exercise")
        note: qsTr("what stands here")
        onActed: Instructor.floor.setExercise()
    }
    Deed {
        column: 1
        text: qsTr("Swap")
        note: qsTr("with another station")
        onActed: Instructor.floor.swap()
    }
    Deed {
        line: 1
        text: Instructor.floor.closed ? qsTr("Open") : qsTr("Close")
        note: Instructor.floor.closed ? qsTr("people go there again") : qsTr("nobody goes there")
        onActed: Instructor.floor.toggle()
    }
    Deed {
        column: 1
        line: 1
        text: qsTr("Add")
        note: qsTr("a station after %1").arg(Instructor.floor.letter)
        onActed: Instructor.floor.add()
    }
    Sentences {
        x: 830 * Theme.u
        y: 484 * Theme.u
        width: 430 * Theme.u
        title: qsTr("What it would do")
        lines: [Instructor.floor.effect]
        size: 19
    }
    BarKey {
        at: 20
        wide: 160
        text: qsTr("Undo last")
        enabled: Instructor.floor.canUndo
        onActed: Instructor.floor.undo()
    }
    BarKey {
        at: 204
        wide: 150
        text: qsTr("As in the file")
        onActed: Instructor.floor.asInFile()
    }
    BarKey {
        at: 378
        wide: 160
        visible: Instructor.floor.pages > 1
        text: qsTr("Next stations")
        note: Instructor.floor.pageText
        textSize: 26
        noteSize: 18
        onActed: Instructor.floor.nextPage()
    }
    BarKey {
        at: 562
        wide: 464
        strong: true
        text: qsTr("The floor is right")
        note: qsTr("next: the proposal")
        onActed: Instructor.floor.right()
    }
}
