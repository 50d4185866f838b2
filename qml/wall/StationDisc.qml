// SPDX-License-Identifier: GPL-3.0-or-later
// A station on the rail. Filled: somebody works there; hollow: nobody now; dashed: closed.
import QtQuick
import QtQuick.Shapes
import Floorwheel

Item {
    id: disc
    required property string letter
    required property real px
    required property real py
    required property bool filled
    required property bool closed
    x: px
    y: py

    Rectangle { // halo
        x: -55
        y: -55
        width: 110
        height: 110
        radius: 55
        color: Theme.ink
    }
    Rectangle {
        visible: !disc.closed
        x: -49
        y: -49
        width: 98
        height: 98
        radius: 49
        color: disc.filled ? Theme.paper : Theme.ink
        border.width: 6
        border.color: Theme.paper
    }
    Shape {
        visible: disc.closed
        ShapePath {
            strokeColor: Theme.paper
            strokeWidth: 6
            strokeStyle: ShapePath.DashLine
            dashPattern: [2, 2]
            capStyle: ShapePath.FlatCap
            fillColor: "transparent"
            PathAngleArc {
                radiusX: 46
                radiusY: 46
                startAngle: 0
                sweepAngle: 360
            }
        }
    }
    Text {
        x: -width / 2
        y: 35.5 - baselineOffset
        text: disc.letter
        textFormat: Text.PlainText
        color: disc.filled ? Theme.ink : Theme.paper
        font.family: Theme.narrow
        font.hintingPreference: Font.PreferNoHinting
        font.bold: true
        font.pixelSize: disc.letter.length > 1 ? 61 : 101
    }
}
