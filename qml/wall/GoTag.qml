// SPDX-License-Identifier: GPL-3.0-or-later
// The pointed tag with the letter of the next place. Filled: go now; outlined: not yet. Its point stays where
// it is, so that it grows towards its alias.
import QtQuick
import QtQuick.Shapes
import Floorwheel

Item {
    id: tag
    required property string letter
    required property real tip
    required property real py
    required property real tagWidth
    required property real tagHeight
    required property int pixels
    required property bool filled
    required property real edge
    property bool growing: false

    property real shownWidth: tagWidth

    x: tip - shownWidth
    y: py
    width: shownWidth
    height: tagHeight
    readonly property real point: Math.min(20, 0.22 * height)

    Behavior on shownWidth {
        enabled: tag.growing
        NumberAnimation { duration: Theme.grow; easing.type: Easing.OutCubic }
    }
    Shape {
        ShapePath {
            strokeColor: Theme.go
            strokeWidth: tag.edge
            joinStyle: ShapePath.RoundJoin
            fillColor: tag.filled ? Theme.go : Theme.ink
            startX: 0
            startY: 0
            PathLine { x: tag.width - tag.point; y: 0 }
            PathLine { x: tag.width; y: tag.height / 2 }
            PathLine { x: tag.width - tag.point; y: tag.height }
            PathLine { x: 0; y: tag.height }
            PathLine { x: tag.point / 2; y: tag.height / 2 }
            PathLine { x: 0; y: 0 }
        }
    }
    Text {
        x: (tag.width - width) / 2
        y: tag.height / 2 + tag.pixels * Theme.capOfEm / 2 - baselineOffset
        text: tag.letter
        textFormat: Text.PlainText
        color: tag.filled ? Theme.ink : Theme.go
        font.family: Theme.narrow
        font.hintingPreference: Font.PreferNoHinting
        font.bold: true
        font.pixelSize: tag.pixels
    }
}
