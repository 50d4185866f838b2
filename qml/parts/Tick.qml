// SPDX-License-Identifier: GPL-3.0-or-later
// A tick as a shape; no typeface has to have it.
import QtQuick
import QtQuick.Shapes
import Floorwheel

Shape {
    id: tick
    property color colour: Theme.text
    width: 40 * Theme.u
    height: width * 0.85
    ShapePath {
        strokeColor: tick.colour
        strokeWidth: tick.width * 0.15
        fillColor: "transparent"
        capStyle: ShapePath.RoundCap
        joinStyle: ShapePath.RoundJoin
        startX: tick.width * 0.10
        startY: tick.height * 0.58
        PathLine { x: tick.width * 0.36; y: tick.height * 0.88 }
        PathLine { x: tick.width * 0.90; y: tick.height * 0.12 }
    }
}
