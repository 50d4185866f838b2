// SPDX-License-Identifier: GPL-3.0-or-later
// What has changed on the floor? Each answer leads to a preview; nothing is done here but repeat.
import QtQuick
import Floorwheel

Item {
    id: page
    anchors.fill: parent
    Said { leftAt: 20; base: 122; size: 30; font.bold: true; text: qsTr("What has changed?") }

    component Deed: Key {
        property int column: 0
        property int line: 0
        x: (20 + 316 * column) * Theme.u
        y: (150 + 234 * line) * Theme.u
        width: 292 * Theme.u
        height: 210 * Theme.u
        textSize: 30
    }
    Deed { text: qsTr("Came late"); note: qsTr("a member or a guest"); onActed: Instructor.change.late() }
    Deed { column: 1; text: qsTr("Left early"); note: qsTr("who goes now"); onActed: Instructor.change.left() }
    Deed { column: 2; text: qsTr("Station closed"); note: qsTr("nobody can work there"); onActed: Instructor.change.close() }
    Deed {
        column: 3
        enabled: Instructor.change.anyClosed
        text: qsTr("Used again")
        note: enabled ? qsTr("a closed station") : qsTr("no station is closed")
        onActed: Instructor.change.reopen()
    }
    Deed { line: 1; text: qsTr("Swap two"); note: qsTr("stations that changed places"); onActed: Instructor.change.swap() }
    Deed { column: 1; line: 1; text: qsTr("Other exercise"); note: qsTr("at one station"); onActed: Instructor.change.exercise() }
    Deed {
        column: 2
        line: 1
        text: qsTr("Repeat the slot")
        note: Instructor.run.repeatNote
        onActed: Instructor.flow.repeatSlot()
    }
    Deed { column: 3; line: 1; text: qsTr("End"); note: qsTr("the class here"); onActed: Instructor.flow.open("end") }

    BarKey {
        at: 20
        wide: 340
        visible: Instructor.flow.stage === "run"
        strong: true
        fill: Theme.heldColour
        ink: Theme.ink
        text: qsTr("Hold")
        note: qsTr("everybody stays, the clock is still")
        onActed: Instructor.flow.hold()
    }
    BarKey {
        at: 732
        wide: 294
        text: qsTr("Leave as it is")
        onActed: Instructor.flow.leave()
    }
}
