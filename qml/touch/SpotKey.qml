// SPDX-License-Identifier: GPL-3.0-or-later
// One spot: a key with the group's word and a leader to where it lies on the figure.
import QtQuick
import QtQuick.Shapes
import Floorwheel

Item {
    id: spot
    required property TouchVisit visit
    property string group
    property string word
    /// Where the spot lies, from this item's upper left corner, in px of the drawn size.
    property point at
    width: 262 * Theme.u
    height: 95 * Theme.u

    // The leader leaves the key at the edge nearest to the spot.
    readonly property real fromX: at.x < 0 ? 0 : Math.min(at.x, 262)
    readonly property real fromY: at.x < 0 || at.x > 262 ? 47 : (at.y < 0 ? 0 : 95)
    Shape {
        ShapePath {
            strokeColor: Theme.pmute
            strokeWidth: Math.max(1, 2 * Theme.u)
            fillColor: "transparent"
            startX: spot.fromX * Theme.u
            startY: spot.fromY * Theme.u
            PathLine { x: spot.at.x * Theme.u; y: spot.at.y * Theme.u }
        }
    }
    Rectangle {
        x: spot.at.x * Theme.u - width / 2
        y: spot.at.y * Theme.u - height / 2
        width: 20 * Theme.u
        height: width
        radius: width / 2
        color: Theme.ink
    }
    Key {
        anchors.fill: parent
        text: spot.word
        textSize: 32
        onActed: spot.visit.hurtsAt(spot.group)
    }
}
