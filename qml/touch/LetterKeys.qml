// SPDX-License-Identifier: GPL-3.0-or-later
// Our own letter keys, A to Z in seven columns and Back: large, in the order everybody knows. Letters that lead
// nowhere are dead. The four rows are as high as told.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: letters
    property string live: "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
    property real rowHeight: 107
    property bool canGoBack: true
    readonly property real cell: 122
    readonly property real gap: Theme.touch.gap
    signal typed(string letter)
    signal back()
    width: (7 * cell + 6 * gap) * Theme.u
    height: (4 * rowHeight + 3 * gap) * Theme.u

    Repeater {
        model: 26
        Key {
            required property int index
            readonly property string letter: String.fromCharCode(65 + index)
            x: (index % 7) * (letters.cell + letters.gap) * Theme.u
            y: Math.floor(index / 7) * (letters.rowHeight + letters.gap) * Theme.u
            width: letters.cell * Theme.u
            height: letters.rowHeight * Theme.u
            text: letter
            textSize: 46
            bold: enabled
            enabled: letters.live.includes(letter)
            edge: enabled ? Theme.rule : Theme.shade
            onActed: letters.typed(letter)
        }
    }
    Key {
        x: 5 * (letters.cell + letters.gap) * Theme.u
        y: 3 * (letters.rowHeight + letters.gap) * Theme.u
        width: (2 * letters.cell + letters.gap) * Theme.u
        height: letters.rowHeight * Theme.u
        text: qsTr("Back")
        textSize: 34
        fill: Theme.paper
        enabled: letters.canGoBack
        edge: enabled ? Theme.rule : Theme.shade
        onActed: letters.back()
    }
}
