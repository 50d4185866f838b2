// SPDX-License-Identifier: GPL-3.0-or-later
// Poly-lines of one width and colour, drawn as one shape.
import QtQuick
import QtQuick.Shapes

Shape {
    id: strokes
    property var lines
    property real stroke: 4
    property color colour
    property list<real> dashes
    ShapePath {
        strokeColor: strokes.colour
        strokeWidth: strokes.stroke
        strokeStyle: strokes.dashes.length > 0 ? ShapePath.DashLine : ShapePath.SolidLine
        dashPattern: strokes.dashes.length > 0 ? strokes.dashes : [4, 2]
        fillColor: "transparent"
        capStyle: ShapePath.RoundCap
        joinStyle: ShapePath.RoundJoin
        PathMultiline { paths: strokes.lines }
    }
}
