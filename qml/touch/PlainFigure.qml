// SPDX-License-Identifier: GPL-3.0-or-later
// A plain standing figure of our own, drawn 300 by 560: head, trunk, limbs, no likeness of anybody. It shows where
// a spot lies; what is tapped are the keys beside it. The back has a line down its middle.
import QtQuick
import QtQuick.Shapes
import Floorwheel

Item {
    id: figure
    property bool back: false
    width: 300 * Theme.u
    height: 560 * Theme.u

    component Limb: Rectangle {
        color: Theme.shade
        border.width: Math.max(1, Math.round(3 * Theme.u))
        border.color: Theme.pline
        radius: width / 2
        antialiasing: true
    }

    Limb { // arms
        x: 44 * Theme.u
        y: 98 * Theme.u
        width: 44 * Theme.u
        height: 232 * Theme.u
        rotation: 8
    }
    Limb {
        x: 212 * Theme.u
        y: 98 * Theme.u
        width: 44 * Theme.u
        height: 232 * Theme.u
        rotation: -8
    }
    Limb { // legs
        x: 94 * Theme.u
        y: 300 * Theme.u
        width: 56 * Theme.u
        height: 250 * Theme.u
        rotation: 2
    }
    Limb {
        x: 150 * Theme.u
        y: 300 * Theme.u
        width: 56 * Theme.u
        height: 250 * Theme.u
        rotation: -2
    }
    Limb { // neck and head
        x: 130 * Theme.u
        y: 60 * Theme.u
        width: 40 * Theme.u
        height: 60 * Theme.u
    }
    Limb {
        x: 115 * Theme.u
        y: 2 * Theme.u
        width: 70 * Theme.u
        height: 76 * Theme.u
    }
    Shape { // trunk
        anchors.fill: parent
        ShapePath {
            strokeColor: Theme.pline
            strokeWidth: Math.max(1, 3 * Theme.u)
            fillColor: Theme.shade
            joinStyle: ShapePath.RoundJoin
            startX: 84 * Theme.u
            startY: 98 * Theme.u
            PathLine { x: 216 * Theme.u; y: 98 * Theme.u }
            PathQuad { x: 226 * Theme.u; y: 122 * Theme.u; controlX: 232 * Theme.u; controlY: 102 * Theme.u }
            PathLine { x: 200 * Theme.u; y: 252 * Theme.u }
            PathLine { x: 208 * Theme.u; y: 330 * Theme.u }
            PathQuad { x: 92 * Theme.u; y: 330 * Theme.u; controlX: 150 * Theme.u; controlY: 372 * Theme.u }
            PathLine { x: 100 * Theme.u; y: 252 * Theme.u }
            PathLine { x: 74 * Theme.u; y: 122 * Theme.u }
            PathQuad { x: 84 * Theme.u; y: 98 * Theme.u; controlX: 68 * Theme.u; controlY: 102 * Theme.u }
        }
        ShapePath {
            strokeColor: figure.back ? Theme.pline : "transparent"
            strokeWidth: Math.max(1, 3 * Theme.u)
            fillColor: "transparent"
            startX: 150 * Theme.u
            startY: 104 * Theme.u
            PathLine { x: 150 * Theme.u; y: 300 * Theme.u }
        }
    }
}
