// SPDX-License-Identifier: GPL-3.0-or-later
// While the class runs, is held, or has run out: who is where, what comes next, and one main key.
import QtQuick
import Floorwheel

PlaitPage {
    id: page
    readonly property string stage: Instructor.flow.stage
    side: [
        Sentences {
            width: parent.width
            title: Instructor.run.member
            lines: Instructor.run.memberLines
        },
        Sentences {
            width: parent.width
            visible: page.stage !== "ended"
            title: qsTr("What comes next")
            lines: Instructor.run.nextLines
        },
        Sentences {
            width: parent.width
            title: qsTr("Sets kept")
            lines: Instructor.run.keptLines
        },
        Sentences {
            width: parent.width
            title: qsTr("What it costs")
            lines: Instructor.run.costLines
        },
        Sentences {
            width: parent.width
            visible: Instructor.run.lastChange !== ""
            title: qsTr("Last change")
            lines: [Instructor.run.lastChange]
            colour: Theme.mute
        }
    ]

    // Running. Hold begins where it always begins.
    BarKey {
        at: 20
        wide: 340
        visible: page.stage === "run"
        strong: true
        fill: Theme.heldColour
        ink: Theme.ink
        text: qsTr("Hold")
        note: qsTr("everybody stays, the clock is still")
        onActed: Instructor.flow.hold()
    }
    BarKey {
        at: 384
        wide: 170
        visible: page.stage === "run"
        text: qsTr("Give them time")
        note: qsTr("%1 s more").arg(Instructor.flow.stepSeconds)
        textSize: 26
        onActed: Instructor.flow.giveTime()
    }
    BarKey {
        at: 578
        wide: 130
        visible: page.stage === "run"
        text: qsTr("Skip")
        note: ClassTime.phase === "work" ? qsTr("ends the work") : qsTr("ends this")
        noteSize: 18
        onActed: Instructor.flow.skip()
    }
    BarKey {
        at: 732
        wide: 140
        visible: page.stage === "run"
        text: qsTr("Change")
        note: qsTr("late, left, closed, swap")
        noteSize: 18
        onActed: Instructor.flow.open("change")
    }
    BarKey {
        at: 896
        visible: page.stage === "run"
        text: qsTr("Training")
        note: qsTr("pain, talks")
        textSize: 25
        noteSize: 18
        onActed: Instructor.training.open()
    }

    // Held. Where Hold was lies only what changes nothing by itself; Resume is at the other end.
    BarKey {
        at: 20
        wide: 186
        visible: page.stage === "held"
        name: qsTr("Change while held")
        text: qsTr("Change")
        note: qsTr("late, left, closed, swap")
        noteSize: 19
        onActed: Instructor.flow.open("change")
    }
    BarKey {
        at: 230
        visible: page.stage === "held"
        text: qsTr("Training")
        note: qsTr("pain, talks")
        textSize: 25
        noteSize: 18
        onActed: Instructor.training.open()
    }
    BarKey {
        at: 384
        wide: 150
        visible: page.stage === "held"
        text: qsTr("Repeat the slot")
        textSize: 26
        onActed: Instructor.flow.repeatSlot()
    }
    BarKey {
        at: 558
        wide: 130
        visible: page.stage === "held"
        text: qsTr("End")
        note: qsTr("the class here")
        noteSize: 17
        onActed: Instructor.flow.open("end")
    }
    BarKey {
        at: 712
        wide: 314
        visible: page.stage === "held"
        strong: true
        text: qsTr("Resume")
        note: Instructor.run.resumeNote
        onActed: Instructor.flow.resume()
    }

    BarKey {
        at: 20
        wide: 190
        visible: page.stage === "ended"
        text: qsTr("Training")
        note: qsTr("pain, progress, talks")
        noteSize: 18
        onActed: Instructor.training.open()
    }
    BarKey {
        at: 582
        wide: 444
        visible: page.stage === "ended"
        strong: true
        text: qsTr("Close the class")
        note: Instructor.run.closeNote
        onActed: Instructor.flow.end()
    }
}
