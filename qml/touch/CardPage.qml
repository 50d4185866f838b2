// SPDX-License-Identifier: GPL-3.0-or-later
// The hand card of one person, with those who stand beside in the list at the left.
import QtQuick
import Floorwheel

Item {
    id: page
    required property TouchVisit visit
    readonly property TouchCard card: visit.card

    TimeHeader { visit: page.visit }
    TouchNote {
        x: 40 * Theme.u
        y: 158 * Theme.u
        size: 58
        font.bold: true
        text: qsTr("Who are you?")
    }
    TouchNote {
        x: 40 * Theme.u
        y: 244 * Theme.u
        width: 676 * Theme.u
        size: 34
        color: Theme.pmute
        text: qsTr("Not %1? Tap your own alias.").arg(page.card.alias)
    }
    KeyGrid {
        id: list
        x: 40 * Theme.u
        y: 360 * Theme.u
        keys: page.visit.beside
        columns: 2
        cellWidth: 330
        cellHeight: 95
        chosen: page.visit.member
        onPicked: member => page.visit.openCard(member)
    }
    Key {
        x: list.x + list.cellX(11)
        y: list.y + list.cellY(11)
        width: list.cellWidth * Theme.u
        height: list.cellHeight * Theme.u
        fill: Theme.paper
        text: qsTr("All others")
        textSize: 36
        onActed: page.visit.done()
    }
    Rectangle {
        x: 739 * Theme.u
        y: 174 * Theme.u
        width: 3 * Theme.u
        height: 884 * Theme.u
        color: Theme.pline
    }

    LetterDisc {
        visible: page.card.hasSet
        x: 774 * Theme.u
        y: 168 * Theme.u
        diameter: 96
        letter: page.card.letter
    }
    CapText {
        x: (page.card.hasSet ? 897 : 774) * Theme.u
        base: 222
        cap: 50
        text: page.card.alias
    }
    TouchNote {
        x: (page.card.hasSet ? 897 : 774) * Theme.u
        y: 238 * Theme.u
        size: 34
        color: Theme.pmute
        text: page.card.hasSet ? qsTr("%1 · set %2 of %3 · slot %4").arg(page.card.exercise).arg(page.card.set).arg(page.card.sets).arg(page.card.slot)
            : qsTr("Nothing to record yet.")
    }
    NextPlace {
        visible: !page.card.loadAsked
        x: 774 * Theme.u
        y: 296 * Theme.u
        size: 34
        font.bold: true
        card: page.card
    }
    TouchNote {
        visible: page.card.mark !== "" && !page.card.loadAsked
        x: 1880 * Theme.u - width
        y: 296 * Theme.u
        size: 34
        text: page.card.mark === "kept" ? qsTr("Kept already: you can mend it") : qsTr("Kept as not done: you can mend it")
    }
    LeaveNote {
        x: 1880 * Theme.u - width
        y: 170 * Theme.u
        size: 30
        visit: page.visit
    }

    HandCard {
        visible: page.card.hasSet && !page.card.loadAsked
        x: 774 * Theme.u
        y: 360 * Theme.u
        visit: page.visit
    }
    LoadChoice {
        visible: page.card.loadAsked
        x: 774 * Theme.u
        y: 360 * Theme.u
        visit: page.visit
    }
    CardSideKeys {
        x: (page.card.loadAsked ? 774 : 1351) * Theme.u
        y: (page.card.loadAsked ? 808 : 360) * Theme.u
        visit: page.visit
    }
    TouchRule {
        x: 774 * Theme.u
        y: 930 * Theme.u
        width: 1106 * Theme.u
    }
    KeptLine {
        x: 774 * Theme.u
        y: 956 * Theme.u
        width: 1106 * Theme.u
        visit: page.visit
    }
}
