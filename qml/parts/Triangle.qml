// SPDX-License-Identifier: GPL-3.0-or-later
// A filled triangle pointing down, up, left or right (turned by `turn` degrees from down).
import QtQuick
import QtQuick.Shapes
import Floorwheel

Shape {
    id: triangle
    property color colour: Theme.text
    property real turn: 0
    width: 24 * Theme.u
    height: width * 0.8
    rotation: turn
    ShapePath {
        strokeColor: "transparent"
        fillColor: triangle.colour
        startX: 0
        startY: 0
        PathLine { x: triangle.width; y: 0 }
        PathLine { x: triangle.width / 2; y: triangle.height }
        PathLine { x: 0; y: 0 }
    }
}
