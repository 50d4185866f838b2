// SPDX-License-Identifier: GPL-3.0-or-later
// Ending the class before its time: the second, deliberate press.
import QtQuick
import Floorwheel

Item {
    id: page
    anchors.fill: parent
    Said { leftAt: 20; base: 130; size: 36; font.bold: true; text: qsTr("End the class here?") }
    Column {
        x: 20 * Theme.u
        y: 170 * Theme.u
        width: 900 * Theme.u
        spacing: 16 * Theme.u
        Sentences {
            width: parent.width
            size: 24
            title: Instructor.run.place
            lines: [Instructor.run.closeNote, Instructor.run.sheet]
        }
        Sentences {
            width: parent.width
            size: 24
            lines: [qsTr("All screens show that the class is over. It counts as given, with the sets kept so far; late records can still be kept today. An ended class cannot be resumed.")]
        }
    }
    BarKey {
        at: 20
        wide: 340
        text: qsTr("Leave as it is")
        onActed: Instructor.flow.leave()
    }
    BarKey {
        at: 712
        wide: 314
        strong: true
        text: qsTr("End the class")
        note: qsTr("for everybody")
        onActed: Instructor.flow.end()
    }
}
