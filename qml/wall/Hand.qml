// SPDX-License-Identifier: GPL-3.0-or-later
// A part of the pointer of the present slot, turned with the hand: the tip lies on the rail under the discs,
// the heel inside it above everything, the clamp holds the heel while the class is held.
import QtQuick
import QtQuick.Shapes
import Floorwheel

Shape {
    id: hand
    required property WallView view
    property alias fill: shape.fillColor
    property alias stroke: shape.strokeColor
    property alias edge: shape.strokeWidth
    /// Poly-line as for a hand that points up from the middle of the wheel; closed by repeating its start.
    property alias points: shape.points

    x: 960
    y: 624
    rotation: view.hand
    transformOrigin: Item.TopLeft
    visible: view.pointing
    Behavior on rotation {
        enabled: hand.view.inShow && hand.view.moves
        RotationAnimation {
            duration: Theme.turn
            direction: RotationAnimation.Shortest
            easing.type: Easing.InOutCubic
        }
    }
    ShapePath {
        id: shape
        property var points: []
        strokeWidth: 6
        joinStyle: ShapePath.MiterJoin
        capStyle: ShapePath.FlatCap
        PathMultiline { paths: shape.points }
    }
}
