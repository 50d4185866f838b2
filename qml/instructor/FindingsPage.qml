// SPDX-License-Identifier: GPL-3.0-or-later
// What the programme check finds, the grave first: word, place, what stands there, what is wanted, what would
// mend it, and who says so. No finding is no praise.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: page
    anchors.fill: parent

    Said { id: title; leftAt: 20; base: 114; size: 27; font.bold: true; text: Instructor.programmes.title }
    Said { rightAt: 1260; base: 114; size: 20; color: Theme.mute; text: Instructor.programmes.summary }
    Said {
        leftAt: 20
        base: 164
        size: 22
        width: 1240 * Theme.u
        wrapMode: Text.WrapAtWordBoundaryOrAnywhere
        text: Instructor.programmes.error
    }
    Repeater {
        model: Instructor.programmes.findings
        Rectangle {
            id: row
            required property int index
            required property var model
            x: 20 * Theme.u
            y: (130 + 166 * index) * Theme.u
            width: 1240 * Theme.u
            height: 158 * Theme.u
            radius: Theme.instructor.radius * Theme.u
            color: Theme.panel
            Accessible.role: Accessible.StaticText
            Accessible.name: qsTr("%1, %2: %3").arg(model.severity).arg(model.place).arg(model.found)
            Rectangle { // a bar at the edge beside the word
                width: 8 * Theme.u
                height: parent.height
                visible: row.model.grave
                color: Theme.paper
            }
            Column {
                x: 20 * Theme.u
                y: 10 * Theme.u
                width: 262 * Theme.u
                spacing: 4 * Theme.u
                Cell { text: row.model.severity; font.bold: true; font.pixelSize: Math.round(24 * Theme.u) }
                Cell { text: row.model.place; font.pixelSize: Math.round(20 * Theme.u); maximumLineCount: 3 }
            }
            Column {
                x: 300 * Theme.u
                y: 8 * Theme.u
                width: 926 * Theme.u
                spacing: 2 * Theme.u
                Fact { word: qsTr("Found"); said: row.model.found; bold: true }
                Fact { word: qsTr("Wanted"); said: row.model.wanted }
                Fact { word: qsTr("Mend"); said: row.model.mend }
                Fact { word: qsTr("Source"); said: row.model.source; colour: Theme.mute }
            }
        }
    }
    Said {
        leftAt: 20
        base: 648
        size: 17
        text: qsTr("These rules are no medical advice. Stop on pain; what a licensed professional advises comes first.")
    }
    BesideBar {
        note: qsTr("to the list")
        onWentBack: Instructor.programmes.open()
    }
    BarKey {
        at: 368
        wide: 200
        text: qsTr("Check again")
        note: qsTr("the file as it is now")
        textSize: 26
        noteSize: 18
        onActed: Instructor.programmes.again()
    }
    BarKey {
        at: 816
        wide: 210
        visible: Instructor.programmes.pages > 1
        text: qsTr("Next findings")
        note: Instructor.programmes.pageText
        onActed: Instructor.programmes.nextPage()
    }

    component Cell: Text {
        width: parent ? (parent as Item).width : 0
        wrapMode: Text.WordWrap
        elide: Text.ElideRight
        color: Theme.paper
        textFormat: Text.PlainText
        font.family: Theme.plain
    }
    component Fact: Item {
        id: fact
        property string word
        property string said
        property bool bold: false
        property color colour: Theme.paper
        width: parent ? (parent as Item).width : 0
        height: text.height
        Cell { width: 84 * Theme.u; text: fact.word; color: Theme.mute; font.pixelSize: Math.round(18 * Theme.u) }
        Cell {
            id: text
            x: 88 * Theme.u
            width: fact.width - x
            maximumLineCount: 2
            lineHeight: 0.9
            text: fact.said
            color: fact.colour
            font.bold: fact.bold
            font.pixelSize: Math.round(18 * Theme.u)
        }
    }
}
