// SPDX-License-Identifier: GPL-3.0-or-later
// The wall: the floor's map with the present slot as its hand. Everything is drawn in units of 1920 x 1080 and
// scaled once; what stands where is the view's to say. Later children lie above earlier ones.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: screen

    property alias view: view

    WallView { id: view }

    Item {
        id: room
        width: 1920
        height: 1080
        anchors.centerIn: parent
        scale: Theme.u

        Item {
            anchors.fill: parent
            visible: !view.stopped

            Wheel {
                anchors.fill: parent
                view: view
            }
            StrokeSet { // brackets and leaders
                lists: view.lines
                stroke: 4
                colour: Theme.line
            }
            Strokes { // of the station in turn
                lines: view.shownLine
                stroke: 10
                colour: Theme.go
            }
            StrokeSet { // from an alias to its tag
                lists: view.dots
                stroke: 5
                colour: Theme.line
                dashes: [0.02, 3.38]
            }
            Repeater {
                model: view.tags
                GoTag {
                    growing: view.grows
                }
            }
            Repeater {
                model: view.texts
                WallLine {
                    moves: view.moves
                }
            }
            Rectangle {
                visible: view.held
                x: Math.round(view.headlineX - 56)
                y: 4
                width: Math.round(view.headlineWidth + 112)
                height: 176
                color: Theme.heldColour
            }
            Text {
                x: view.headlineX
                y: 164 - baselineOffset
                text: view.headline
                textFormat: Text.PlainText
                color: view.held ? Theme.ink : Theme.paper
                font.family: Theme.narrow
                font.hintingPreference: Font.PreferNoHinting
                font.bold: true
                font.pixelSize: Math.round(Theme.wall.word / Theme.capOfEm)
                font.letterSpacing: view.headlineTracking
                font.wordSpacing: view.headlineSpace
                Accessible.role: Accessible.Heading
                Accessible.name: text
            }
        }
        StopAndHelp {
            anchors.fill: parent
            visible: view.stopped
            view: view
        }
    }
}
