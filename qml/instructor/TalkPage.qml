// SPDX-License-Identifier: GPL-3.0-or-later
// One page for a talk with a member: what was done, done of planned, loads, the goal in their words, what was
// agreed. Written where nobody waits: not while the class runs.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: page
    readonly property bool calm: Instructor.flow.stage !== "run"
    anchors.fill: parent

    Said { id: who; leftAt: 20; base: 120; size: 36; font.family: Theme.narrow; font.bold: true; text: Instructor.talk.alias }
    Said { x: who.x + who.width + (Instructor.talk.alias === "" ? 0 : 20 * Theme.u); base: 119; size: 21; color: Theme.mute; text: Instructor.talk.about }

    Column {
        x: 20 * Theme.u
        y: 138 * Theme.u
        width: 404 * Theme.u
        spacing: 14 * Theme.u
        Sentences {
            width: parent.width
            size: 20
            title: qsTr("What was done")
            lines: Instructor.talk.done
        }
        TalkLoads { width: parent.width }
    }
    TalkDose {
        x: 450 * Theme.u
        y: 138 * Theme.u
        width: 384 * Theme.u
    }
    Column {
        x: 862 * Theme.u
        y: 138 * Theme.u
        width: 398 * Theme.u
        spacing: 20 * Theme.u
        Words { title: qsTr("Goal, in their own words"); words: Instructor.talk.goal; note: Instructor.talk.goalNote }
        Words { title: qsTr("What we agreed"); words: Instructor.talk.agreed; note: Instructor.talk.agreedNote }
    }
    Said {
        leftAt: 20
        base: 648
        size: 17
        text: qsTr("Suggestions, no medical advice. On pain: stop. What a licensed professional advises comes first.")
    }

    BesideBar {
        note: qsTr("to the list")
        onWentBack: Instructor.talk.back()
    }
    BarKey {
        at: 368
        wide: 320
        enabled: page.calm && Instructor.talk.ready
        text: qsTr("Write the goal")
        note: page.calm ? qsTr("in their own words") : qsTr("not while the class runs")
        onActed: Instructor.talk.writeGoal()
    }
    BarKey {
        at: 712
        wide: 314
        enabled: page.calm && Instructor.talk.ready
        text: qsTr("Write what we agreed")
        textSize: 26
        note: page.calm ? "" : qsTr("not while the class runs")
        onActed: Instructor.talk.writeAgreed()
    }

    component Words: Column {
        id: block
        property string title
        property string words
        property string note
        width: parent ? (parent as Item).width : 0
        spacing: 4 * Theme.u
        Sentences { width: parent.width; size: 20; title: block.title; lines: block.words === "" ? [] : [block.words] }
        Text {
            width: parent.width
            text: block.note
            color: Theme.mute
            textFormat: Text.PlainText
            font.family: Theme.plain
            font.pixelSize: Math.round(18 * Theme.u)
        }
    }
}
