// SPDX-License-Identifier: GPL-3.0-or-later
// One piece of the rail: behind the hand a plain line, ahead of it sleepers or beads. Their marks are counted
// from the gate, so they stand still while the hand passes; a piece that the hand is not on never changes.
import QtQuick
import QtQuick.Shapes
import Floorwheel

Shape {
    id: piece
    property real from
    property real to
    property real hand
    property bool beads: false
    property color tone: Theme.active

    readonly property real at: Math.min(Math.max(hand, from), to)
    readonly property real stroke: beads ? 18 : 30
    readonly property real mark: beads ? 18 : 7
    readonly property real space: beads ? 18 : 8.2
    readonly property real before: (360 - to) * Math.PI / 180 * 394 // from the gate back to this piece

    ShapePath { // run
        strokeColor: piece.at > piece.from ? Theme.line : "transparent"
        strokeWidth: 8
        capStyle: ShapePath.FlatCap
        fillColor: "transparent"
        PathAngleArc {
            centerX: 960
            centerY: 624
            radiusX: 394
            radiusY: 394
            startAngle: piece.from - 90
            sweepAngle: piece.at - piece.from
        }
    }
    ShapePath { // left to run, from the far end back to the hand
        strokeColor: piece.at < piece.to ? piece.tone : "transparent"
        strokeWidth: piece.stroke
        strokeStyle: ShapePath.DashLine
        dashPattern: [piece.mark / piece.stroke, piece.space / piece.stroke]
        dashOffset: (piece.before - piece.space / 2) / piece.stroke
        capStyle: ShapePath.FlatCap
        fillColor: "transparent"
        PathAngleArc {
            centerX: 960
            centerY: 624
            radiusX: 394
            radiusY: 394
            startAngle: piece.to - 90
            sweepAngle: piece.at - piece.to
        }
    }
}
