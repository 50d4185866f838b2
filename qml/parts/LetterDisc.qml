// SPDX-License-Identifier: GPL-3.0-or-later
// A station's round sign. Filled: somebody works there; hollow: nobody now; dashed and hollow: closed.
import QtQuick
import QtQuick.Shapes
import Floorwheel

Item {
    id: disc
    property string letter
    property real diameter: 64 // px of the drawn size
    property bool hollow: false
    property bool closed: false
    property color fill: Theme.text
    property color ink: Theme.ground
    property real cap: diameter * 0.66
    width: diameter * Theme.u
    height: width

    Rectangle {
        anchors.fill: parent
        visible: !disc.closed
        radius: width / 2
        color: disc.hollow ? "transparent" : disc.fill
        border.width: disc.hollow ? Math.max(2, Math.round(disc.diameter * 0.06 * Theme.u)) : 0
        border.color: disc.fill
    }
    Shape {
        anchors.fill: parent
        visible: disc.closed
        ShapePath {
            readonly property real w: Math.max(2, disc.diameter * 0.06 * Theme.u)
            strokeColor: disc.fill
            strokeWidth: w
            strokeStyle: ShapePath.DashLine
            dashPattern: [2, 2]
            fillColor: "transparent"
            startX: disc.width - w / 2
            startY: disc.height / 2
            PathAngleArc {
                centerX: disc.width / 2
                centerY: disc.height / 2
                radiusX: disc.width / 2 - 2 * Theme.u
                radiusY: radiusX
                startAngle: 0
                sweepAngle: 360
            }
        }
    }
    Text {
        // Middle of the capital, not of the line, on the middle of the disc.
        anchors.horizontalCenter: parent.horizontalCenter
        y: parent.height / 2 + disc.cap * Theme.u / 2 - baselineOffset
        text: disc.letter
        textFormat: Text.PlainText
        color: disc.hollow || disc.closed ? disc.fill : disc.ink
        font.family: Theme.narrow
        font.bold: true
        font.pixelSize: Math.round(disc.cap / Theme.capOfEm * Theme.u)
    }
}
