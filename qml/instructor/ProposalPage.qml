// SPDX-License-Identifier: GPL-3.0-or-later
// The proposal before it is published, and the published run sheet before the start.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

PlaitPage {
    id: page
    readonly property bool published: Instructor.flow.stage === "start"
    side: [
        Sentences {
            width: parent.width
            title: Instructor.proposal.refusal !== "" ? qsTr("There is no such class") : Instructor.proposal.progress
            lines: Instructor.proposal.refusal === "" ? [] : [Instructor.proposal.refusal]
        },
        Sentences {
            width: parent.width
            visible: Instructor.proposal.title !== "" && Instructor.proposal.refusal === ""
            title: Instructor.proposal.title
            lines: [Instructor.proposal.order]
        },
        Sentences {
            width: parent.width
            visible: lines.length > 0
            title: qsTr("What it costs")
            lines: Instructor.proposal.cost
        },
        Sentences {
            width: parent.width
            visible: Instructor.proposal.firstProof !== ""
            title: qsTr("Proof")
            lines: [Instructor.proposal.firstProof]
            size: 17
            room: 546 * Theme.u - y
        }
    ]
    Said {
        leftAt: 992
        base: 458
        size: 21
        font.bold: true
        visible: Instructor.proposal.slotRows.count > 0
        text: qsTr("What one more slot buys")
    }
    Repeater {
        model: Instructor.proposal.slotRows
        Rectangle {
            id: row
            required property int index
            required property int slots
            required property string end
            required property string gain
            required property bool shown
            required property bool fits
            readonly property color ink: shown ? Theme.ink : Theme.paper
            readonly property real pitch: Math.min(43, 172 / Math.max(1, Instructor.proposal.slotRows.count))
            x: 986 * Theme.u
            y: (468 + pitch * index) * Theme.u
            width: 276 * Theme.u
            height: (pitch - 3) * Theme.u
            radius: 6 * Theme.u
            color: shown ? Theme.paper : Theme.panel
            Text {
                x: 10 * Theme.u
                anchors.verticalCenter: parent.verticalCenter
                text: row.slots
                color: row.ink
                font.family: Theme.narrow
                font.bold: true
                font.pixelSize: Math.round(24 * Theme.u)
            }
            Text {
                x: 44 * Theme.u
                anchors.verticalCenter: parent.verticalCenter
                text: row.end
                color: row.ink
                font.family: Theme.plain
                font.bold: true
                font.pixelSize: Math.round(18 * Theme.u)
            }
            Text {
                x: 102 * Theme.u
                anchors.verticalCenter: parent.verticalCenter
                text: row.gain
                color: row.shown ? Theme.pmute : Theme.mute
                textFormat: Text.PlainText
                font.family: Theme.narrow
                font.bold: true
                font.pixelSize: Math.round(18 * Theme.u)
            }
        }
    }

    BarKey {
        at: 20
        text: qsTr("Heads")
        note: qsTr("one more")
        onActed: Instructor.flow.open("heads")
    }
    BarKey {
        at: 174
        wide: 150
        text: qsTr("As laid out")
        onActed: Instructor.floor.open()
    }
    BarKey {
        at: 348
        wide: 150
        visible: !page.published
        enabled: Instructor.proposal.slotRows.count > 1
        text: qsTr("Compare")
        note: qsTr("other ends")
        onActed: Instructor.flow.open("compare")
    }
    BarKey {
        at: 522
        text: qsTr("Training")
        note: qsTr("pain, talks")
        textSize: 25
        noteSize: 18
        onActed: Instructor.training.open()
    }
    BarKey {
        at: 676
        wide: 350
        visible: !page.published && Instructor.proposal.ready
        strong: true
        text: qsTr("Publish")
        note: qsTr("run sheet %1, on all walls").arg(Instructor.proposal.version)
        onActed: Instructor.proposal.publish()
    }
    BarKey {
        at: 676
        wide: 350
        visible: page.published
        strong: true
        text: qsTr("Start")
        note: Instructor.proposal.showTime
        onActed: Instructor.flow.start()
    }
}
