// SPDX-License-Identifier: GPL-3.0-or-later
// One text of the wall, placed by its left edge and baseline; moves once when the face turns.
import QtQuick
import Floorwheel

Text {
    id: line
    required property string label
    required property real px
    required property real base
    required property int pixels
    required property bool heavy
    required property bool mute
    required property real spacing
    property bool moves: false

    x: px
    y: base - baselineOffset
    text: label
    textFormat: Text.PlainText
    color: mute ? Theme.mute : Theme.paper
    font.family: Theme.narrow
    font.hintingPreference: Font.PreferNoHinting
    font.bold: heavy
    font.pixelSize: pixels
    font.letterSpacing: spacing
    Behavior on x {
        enabled: line.moves
        NumberAnimation { id: alongX; duration: Theme.turn; easing.type: Easing.InOutCubic }
    }
    Behavior on y {
        enabled: line.moves
        NumberAnimation { id: alongY; duration: Theme.turn; easing.type: Easing.InOutCubic }
    }
}
