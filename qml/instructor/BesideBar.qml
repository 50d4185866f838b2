// SPDX-License-Identifier: GPL-3.0-or-later
// The bar's left end on pages that lie beside a class: Hold where it always begins while the class runs, then
// the way back. In a class that was started nothing else lies where Hold was, so that a second press changes
// nothing.
import QtQuick
import Floorwheel

Item {
    id: bar
    property string text: qsTr("Back")
    property string note
    signal wentBack()

    BarKey {
        at: 20
        wide: 150
        visible: Instructor.flow.stage === "run"
        fill: Theme.heldColour
        ink: Theme.ink
        edge: Theme.heldColour
        text: qsTr("Hold")
        note: qsTr("the class")
        onActed: Instructor.flow.hold()
    }
    BarKey {
        at: Instructor.flow.live ? 194 : 20
        wide: 150
        text: bar.text
        note: bar.note
        textSize: 26
        onActed: bar.wentBack()
    }
}
