// SPDX-License-Identifier: GPL-3.0-or-later
// The octagon of stop and help: its edge is vermilion, its middle as told.
import QtQuick
import QtQuick.Shapes
import Floorwheel

Shape {
    id: octagon
    property color fill: "transparent"
    property color edge: Theme.alarm
    property real edgeWidth: width * 0.17
    width: 60 * Theme.u
    height: width
    // Corners of the middle of the edge: half the edge inside the item.
    readonly property real inset: edgeWidth / 2
    readonly property real cut: (width - edgeWidth) * 0.2929
    ShapePath {
        strokeColor: octagon.edge
        strokeWidth: octagon.edgeWidth
        joinStyle: ShapePath.MiterJoin
        fillColor: octagon.fill
        startX: octagon.inset + octagon.cut
        startY: octagon.inset
        PathLine { x: octagon.width - octagon.inset - octagon.cut; y: octagon.inset }
        PathLine { x: octagon.width - octagon.inset; y: octagon.inset + octagon.cut }
        PathLine { x: octagon.width - octagon.inset; y: octagon.height - octagon.inset - octagon.cut }
        PathLine { x: octagon.width - octagon.inset - octagon.cut; y: octagon.height - octagon.inset }
        PathLine { x: octagon.inset + octagon.cut; y: octagon.height - octagon.inset }
        PathLine { x: octagon.inset; y: octagon.height - octagon.inset - octagon.cut }
        PathLine { x: octagon.inset; y: octagon.inset + octagon.cut }
        PathLine { x: octagon.inset + octagon.cut; y: octagon.inset }
    }
}
