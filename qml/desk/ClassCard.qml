// SPDX-License-Identifier: GPL-3.0-or-later
// One class of the list: its time and name, a bead for each person, the numbers in words.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Rectangle {
    id: card
    required property string key
    required property string time
    required property string name
    required property string standing
    required property string line
    required property list<string> beads
    property bool chosen: false
    signal acted()
    width: 501 * Theme.u
    height: Math.max(dots.y + dots.height, standingText.y + standingText.height) + 16 * Theme.u
    radius: Theme.desk.radius * Theme.u
    color: area.pressed ? Theme.shade : Theme.card
    border.width: (chosen ? 5 : 2) * Theme.u
    border.color: chosen ? Theme.active : Theme.pline

    Accessible.role: Accessible.ListItem
    Accessible.name: time === "" ? name : time + " " + name
    Accessible.description: line
    Accessible.selectable: true
    Accessible.selected: chosen
    Accessible.onPressAction: card.acted()

    DeskText {
        id: clock
        x: 20 * Theme.u
        y: 52 * Theme.u - baselineOffset
        text: card.time
        size: 31
        font.family: Theme.narrow
        font.bold: true
    }
    DeskText {
        id: nameText
        x: card.time === "" ? clock.x : 106 * Theme.u
        y: 50 * Theme.u - baselineOffset
        width: card.width - x - 20 * Theme.u
        text: card.name
        size: 26
        font.family: Theme.narrow
        font.bold: true
        wrapMode: Text.Wrap
        lineHeight: 0.9
    }
    Flow {
        id: dots
        x: 20 * Theme.u
        y: nameText.y + nameText.height + 8 * Theme.u
        width: 252 * Theme.u
        spacing: 6 * Theme.u
        Repeater {
            model: card.beads
            Rectangle {
                required property string modelData
                readonly property bool here: modelData === "here"
                width: 15 * Theme.u
                height: width
                radius: width / 2
                color: here ? Theme.ink : "transparent"
                border.width: Math.max(2, Math.round(3 * Theme.u))
                border.color: Theme.ink
            }
        }
    }
    DeskText {
        id: lineText
        x: 296 * Theme.u
        y: dots.y + 15 * Theme.u - baselineOffset
        text: card.line
        font.bold: true
    }
    DeskText {
        id: standingText
        x: 296 * Theme.u
        y: lineText.y + 26 * Theme.u
        text: card.standing
        color: Theme.pmute
    }
    MouseArea {
        id: area
        anchors.fill: parent
        onClicked: card.acted()
    }
}
