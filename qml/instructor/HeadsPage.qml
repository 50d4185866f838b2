// SPDX-License-Identifier: GPL-3.0-or-later
// Counting heads: tap everybody who is here, say how many more.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: page
    anchors.fill: parent
    Said { leftAt: 20; base: 122; size: 30; font.bold: true; text: qsTr("Tap everybody who is here") }
    Said { rightAt: 1260; base: 122; size: 23; text: Instructor.heads.summary }
    Repeater {
        model: Instructor.heads.names
        Key {
            id: head
            required property int index
            required property string member
            required name
            required property bool here
            required property string visit
            x: (20 + 210 * (index % 6)) * Theme.u
            y: (158 + 154 * Math.floor(index / 6)) * Theme.u
            width: 186 * Theme.u
            height: 130 * Theme.u
            fill: here ? Theme.paper : Theme.panel
            ink: here ? Theme.ink : Theme.paper
            edge: here ? Theme.paper : Theme.line
            readonly property string now: here ? qsTr("here") : qsTr("expected")
            note: visit === "" ? now : qsTr("%1, %2").arg(now).arg(visit)
            onActed: Instructor.heads.tap(member)
            Text {
                width: parent.width - 12 * Theme.u
                x: 6 * Theme.u
                y: (implicitHeight > 60 * Theme.u ? 8 : 26) * Theme.u
                horizontalAlignment: Text.AlignHCenter
                wrapMode: Text.WrapAtWordBoundaryOrAnywhere
                lineHeight: 0.85
                text: head.name
                color: head.inkNow
                textFormat: Text.PlainText
                font.family: Theme.narrow
                font.bold: true
                font.pixelSize: Math.round(34 * Theme.u)
            }
            Row {
                anchors.horizontalCenter: parent.horizontalCenter
                y: 82 * Theme.u
                spacing: 10 * Theme.u
                Tick { visible: head.here; width: (head.visit === "" ? 32 : 24) * Theme.u; colour: head.inkNow }
                Text {
                    text: head.note
                    color: head.here ? head.inkNow : Theme.mute
                    textFormat: Text.PlainText
                    font.family: Theme.plain
                    font.bold: head.here
                    font.pixelSize: Math.round((head.visit === "" ? 21 : 18) * Theme.u)
                }
            }
        }
    }
    BarKey {
        id: fewer
        at: 20
        name: qsTr("Fewer guests")
        enabled: Instructor.heads.guests > 0
        onActed: Instructor.heads.fewerGuests()
        Rectangle { anchors.centerIn: parent; width: 44 * Theme.u; height: 10 * Theme.u; color: fewer.enabled ? fewer.inkNow : Theme.line }
    }
    Item {
        x: 150 * Theme.u
        y: 660 * Theme.u
        width: 168 * Theme.u
        height: 130 * Theme.u
        Said { x: (parent.width - width) / 2; base: 58; size: 25; font.bold: true; text: qsTr("and %1 more").arg(Instructor.heads.guests) }
        Said { x: (parent.width - width) / 2; base: 90; size: 19; color: Theme.mute; text: qsTr("guests") }
    }
    BarKey {
        id: more
        at: 318
        name: qsTr("More guests")
        onActed: Instructor.heads.moreGuests()
        Rectangle { anchors.centerIn: parent; width: 44 * Theme.u; height: 10 * Theme.u; color: more.inkNow }
        Rectangle { anchors.centerIn: parent; width: 10 * Theme.u; height: 44 * Theme.u; color: more.inkNow }
    }
    BarKey {
        at: 472
        wide: 140
        visible: Instructor.heads.pages > 1
        text: qsTr("Next names")
        note: Instructor.heads.pageText
        textSize: 26
        noteSize: 18
        onActed: Instructor.heads.nextPage()
    }
    BarKey {
        at: 472
        wide: 140
        visible: Instructor.flow.stage !== "heads" && Instructor.heads.pages === 1
        text: qsTr("Leave as it is")
        textSize: 25
        onActed: Instructor.flow.leave()
    }
    BarKey {
        at: 472
        wide: 140
        visible: Instructor.flow.stage === "heads" && Instructor.heads.pages === 1
        text: qsTr("Training")
        note: qsTr("pain, progress, talks")
        textSize: 25
        noteSize: 18
        onActed: Instructor.training.open()
    }
    BarKey {
        at: 636
        wide: 390
        strong: enabled
        enabled: Instructor.heads.total > 0
        text: Instructor.heads.mainText
        note: qsTr("show the proposal")
        onActed: Instructor.heads.count()
    }
}
