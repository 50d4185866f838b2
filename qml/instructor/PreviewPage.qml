// SPDX-License-Identifier: GPL-3.0-or-later
// What a change would do, before it is done: the ways out at the left, the plait in sky, who, what, why.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

PlaitPage {
    id: page
    roster: false
    side: [
        Sentences {
            width: parent.width
            title: Instructor.change.refusal !== "" ? qsTr("This cannot be done") : Instructor.change.progress
            lines: Instructor.change.refusal === "" ? [] : [Instructor.change.refusal]
        },
        Column {
            width: parent.width
            visible: Instructor.change.whoTitle !== ""
            Sentences { width: parent.width; title: Instructor.change.whoTitle; size: 19 }
            Repeater {
                model: Instructor.change.who
                Item {
                    id: who
                    required property string slot
                    required property string names
                    width: parent.width
                    height: names_.height + 2 * Theme.u
                    Text {
                        text: who.slot
                        color: Theme.heldColour
                        textFormat: Text.PlainText
                        font.family: Theme.narrow
                        font.bold: true
                        font.pixelSize: Math.round(19 * Theme.u)
                    }
                    Text {
                        id: names_
                        x: 30 * Theme.u
                        width: parent.width - x
                        wrapMode: Text.WordWrap
                        text: who.names
                        color: Theme.paper
                        textFormat: Text.PlainText
                        font.family: Theme.narrow
                        font.bold: true
                        font.pixelSize: Math.round(19 * Theme.u)
                    }
                }
            }
        },
        Sentences {
            width: parent.width
            visible: lines.length > 0
            title: qsTr("What it costs")
            lines: Instructor.change.cost
            size: 17
        },
        Sentences {
            width: parent.width
            visible: lines.length > 0
            title: qsTr("Proof")
            lines: Instructor.change.proof
            size: 17
            room: 546 * Theme.u - y
        }
    ]
    Said {
        leftAt: 20
        base: 112
        size: 22
        width: 310 * Theme.u
        wrapMode: Text.WordWrap
        font.bold: true
        text: Instructor.change.heading
    }
    Repeater {
        model: Instructor.change.choices
        Key {
            id: way
            required property int index
            required property string title
            required property string people
            required property string cost
            required property bool chosen
            x: 20 * Theme.u
            y: (130 + 154 * index) * Theme.u
            width: 284 * Theme.u
            height: 130 * Theme.u
            edge: chosen ? Theme.heldColour : Theme.line
            name: title
            onActed: Instructor.change.choose(index)
            Rectangle {
                anchors.fill: parent
                visible: way.chosen
                radius: way.radius
                color: "transparent"
                border.color: Theme.heldColour
                border.width: 6 * Theme.u
            }
            Column {
                anchors.centerIn: parent
                width: parent.width - 24 * Theme.u
                Text {
                    width: parent.width
                    horizontalAlignment: Text.AlignHCenter
                    wrapMode: Text.WordWrap
                    text: way.title
                    color: way.inkNow
                    textFormat: Text.PlainText
                    font.family: Theme.plain
                    font.bold: true
                    font.pixelSize: Math.round(24 * Theme.u)
                }
                Text {
                    width: parent.width
                    horizontalAlignment: Text.AlignHCenter
                    text: way.people
                    color: way.inkNow
                    textFormat: Text.PlainText
                    font.family: Theme.plain
                    font.pixelSize: Math.round(19 * Theme.u)
                }
                Text {
                    width: parent.width
                    horizontalAlignment: Text.AlignHCenter
                    visible: text !== ""
                    text: way.cost
                    color: way.inkNow
                    textFormat: Text.PlainText
                    font.family: Theme.plain
                    font.pixelSize: Math.round(19 * Theme.u)
                }
            }
        }
    }
    Sentences {
        x: 20 * Theme.u
        y: (122 + 154 * Instructor.change.choices.count + 12) * Theme.u
        width: 300 * Theme.u
        title: qsTr("Nothing is changed yet.")
        lines: [Instructor.change.stays]
        colour: Theme.mute
    }
    BarKey {
        at: 20
        wide: 190
        visible: Instructor.flow.stage === "run"
        text: qsTr("Hold")
        note: qsTr("the class")
        onActed: Instructor.flow.hold()
    }
    BarKey {
        at: 234
        wide: 190
        text: qsTr("Leave as it is")
        onActed: Instructor.change.leave()
    }
    BarKey {
        at: 448
        wide: 578
        visible: Instructor.change.ready
        strong: true
        text: qsTr("Do it")
        note: Instructor.change.doNote
        onActed: Instructor.change.doIt()
    }
}
