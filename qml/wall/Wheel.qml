// SPDX-License-Identifier: GPL-3.0-or-later
// The wheel: face, rail, gate, tip, discs, waiting place, clock, heel, clamp, in this order from below.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: wheel
    required property WallView view

    Rectangle { // face
        x: 960 - 394
        y: 624 - 394
        width: 788
        height: 788
        radius: 394
        color: Theme.face
    }
    Rail {
        anchors.fill: parent
        view: wheel.view
    }
    StrokeSet { // ring: which way it goes on, while people work
        visible: wheel.view.smallChevrons
        lists: wheel.view.chevronsSmall
        stroke: 4
        colour: Theme.mute
    }
    Rectangle { // gate
        x: 957
        y: 200
        width: 6
        height: 60
        radius: 3
        color: Theme.paper
    }
    Hand { // tip: a narrow kite, from rail - 62 to rail + 60
        view: wheel.view
        fill: Theme.paper
        stroke: Theme.ink
        edge: 3
        points: [[Qt.point(0, -332), Qt.point(15, -390), Qt.point(0, -454), Qt.point(-15, -390), Qt.point(0, -332), Qt.point(15, -390)]]
    }
    Repeater {
        model: wheel.view.discs
        StationDisc {}
    }
    Rectangle { // waiting place
        visible: wheel.view.plate
        x: 541
        y: 963
        width: 98
        height: 98
        color: Theme.ink
        border.width: 6
        border.color: Theme.paper
        Text {
            anchors.horizontalCenter: parent.horizontalCenter
            y: 49 + 35.5 - baselineOffset
            text: qsTr("W", "letter of the waiting place")
            textFormat: Text.PlainText
            color: Theme.paper
            font.family: Theme.narrow
            font.hintingPreference: Font.PreferNoHinting
            font.bold: true
            font.pixelSize: 101
        }
    }
    Repeater {
        model: wheel.view.middle
        WallLine {}
    }
    Hand { // the heel's edge: half of it is outside, the heel covers the rest
        view: wheel.view
        fill: Theme.ink
        stroke: Theme.ink
        edge: 12
        points: [[Qt.point(0, -339), Qt.point(29, -301), Qt.point(-29, -301), Qt.point(0, -339), Qt.point(29, -301)]]
    }
    Hand { // heel: its point at rail - 55, its base at rail - 93
        view: wheel.view
        fill: Theme.paper
        stroke: "transparent"
        points: [[Qt.point(0, -339), Qt.point(29, -301), Qt.point(-29, -301)]]
    }
    Hand { // clamp: two bars from rail - 102 to rail - 52 at 7.6 degrees on either side
        visible: wheel.view.held && wheel.view.pointing
        view: wheel.view
        fill: "transparent"
        stroke: Theme.heldColour
        edge: 18
        points: [[Qt.point(38.62, -289.43), Qt.point(45.23, -339)], [Qt.point(-38.62, -289.43), Qt.point(-45.23, -339)]]
    }
}
