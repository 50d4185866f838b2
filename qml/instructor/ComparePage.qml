// SPDX-License-Identifier: GPL-3.0-or-later
// What one more slot buys, as keys: another row shows its proposal, and nothing is published by it.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: page
    anchors.fill: parent
    Said { leftAt: 20; base: 120; size: 30; font.bold: true; text: qsTr("What one more slot buys") }
    Repeater {
        model: Instructor.proposal.slotRows
        Key {
            id: row
            required property int index
            required property int slots
            required property string end
            required property string gain
            required property bool shown
            required property bool fits
            x: (20 + 210 * index) * Theme.u
            y: 144 * Theme.u
            width: 186 * Theme.u
            height: 150 * Theme.u
            fill: shown ? Theme.paper : Theme.panel
            ink: shown ? Theme.ink : Theme.paper
            edge: shown ? Theme.paper : Theme.line
            text: qsTr("%1 slots").arg(slots)
            note: shown ? qsTr("to %1, shown below").arg(end) : qsTr("to %1, %2").arg(end).arg(gain)
            noteSize: 18
            onActed: Instructor.proposal.choose(slots)
        }
    }
    Column {
        x: 20 * Theme.u
        y: 320 * Theme.u
        width: 400 * Theme.u
        spacing: 12 * Theme.u
        Sentences {
            width: parent.width
            title: Instructor.proposal.progress !== "" ? Instructor.proposal.progress : Instructor.proposal.title
            lines: Instructor.proposal.progress !== "" ? [] : [Instructor.proposal.order]
            size: 20
        }
        Sentences {
            width: parent.width
            title: qsTr("What it costs")
            lines: Instructor.proposal.cost
            size: 20
        }
    }
    Sentences {
        x: 460 * Theme.u
        y: 320 * Theme.u
        width: 800 * Theme.u
        title: qsTr("Proof")
        lines: Instructor.proposal.proof
        size: 18
    }
    BarKey {
        at: 692
        wide: 334
        visible: Instructor.proposal.ready
        strong: true
        text: qsTr("Take %1 slots").arg(Instructor.proposal.slotCount)
        note: qsTr("back to the proposal")
        onActed: Instructor.flow.leave()
    }
}
