// SPDX-License-Identifier: GPL-3.0-or-later
// The ring of seats: one dot a person expected, filled once the person is in; the count in the middle.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: ring
    property int here: 0
    property int expected: 0
    readonly property real radius: 128 * Theme.u
    // Dots touch no neighbour, however many there are.
    readonly property real dot: Math.min(15 * Theme.u, expected > 1 ? 0.36 * 2 * Math.PI * radius / expected : 15 * Theme.u)
    width: 290 * Theme.u
    height: width

    Rectangle {
        anchors.centerIn: parent
        width: 2 * ring.radius
        height: width
        radius: ring.radius
        color: "transparent"
        border.width: Math.max(1, Math.round(2 * Theme.u))
        border.color: Theme.pline
    }
    Repeater {
        model: Math.min(ring.expected, 200)
        Rectangle {
            required property int index
            readonly property real angle: 2 * Math.PI * (index + 0.5) / ring.expected
            x: ring.width / 2 + ring.radius * Math.sin(angle) - width / 2
            y: ring.height / 2 - ring.radius * Math.cos(angle) - height / 2
            width: 2 * ring.dot
            height: width
            radius: ring.dot
            color: index < ring.here ? Theme.ink : Theme.paper
            border.width: Math.max(1, Math.round(ring.dot / 5))
            border.color: Theme.ink
        }
    }
    Text {
        anchors.horizontalCenter: parent.horizontalCenter
        y: 152 * Theme.u - baselineOffset
        text: ring.here
        textFormat: Text.PlainText
        color: Theme.ink
        font.family: Theme.narrow
        font.bold: true
        font.pixelSize: Math.round(86 * Theme.u)
    }
    TouchNote {
        anchors.horizontalCenter: parent.horizontalCenter
        y: 196 * Theme.u - baselineOffset
        size: 28
        text: qsTr("of %1 are in").arg(ring.expected)
    }
}
