// SPDX-License-Identifier: GPL-3.0-or-later
// Dots of the plait at the points of the model, in px of the drawn size.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Repeater {
    id: dots
    property real radius: 2.6
    property color colour: Theme.strand
    Rectangle {
        required property point modelData
        x: (modelData.x - dots.radius) * Theme.u
        y: (modelData.y - dots.radius) * Theme.u
        width: 2 * dots.radius * Theme.u
        height: width
        radius: width / 2
        color: dots.colour
    }
}
