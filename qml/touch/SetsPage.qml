// SPDX-License-Identifier: GPL-3.0-or-later
// All sets a person has begun today, the latest first: a missed one is recorded, a kept one mended.
import QtQuick
import Floorwheel

Item {
    id: page
    required property TouchVisit visit
    readonly property TouchKeys keys: visit.card.others

    TimeHeader { visit: page.visit }
    TouchNote {
        x: 40 * Theme.u
        y: 160 * Theme.u
        size: 58
        font.bold: true
        text: qsTr("%1: which set?").arg(page.visit.alias)
    }
    TouchNote {
        x: 40 * Theme.u
        y: 250 * Theme.u
        size: 34
        color: Theme.pmute
        text: qsTr("A tick: kept. A bar: kept as not done.")
    }
    LeaveNote {
        x: 1880 * Theme.u - width
        y: 250 * Theme.u
        visit: page.visit
    }
    KeyGrid {
        x: 40 * Theme.u
        y: 360 * Theme.u
        keys: page.keys
        columns: 3
        cellWidth: 602
        cellHeight: 95
        size: 40
        onPicked: slot => page.visit.chooseSet(slot)
    }
    Key {
        x: 40 * Theme.u
        y: 960 * Theme.u
        width: 354 * Theme.u
        height: 95 * Theme.u
        fill: Theme.paper
        text: qsTr("Back")
        textSize: 38
        onActed: page.visit.back()
    }
    Key {
        visible: page.keys.pages > 1
        x: 1524 * Theme.u
        y: 960 * Theme.u
        width: 356 * Theme.u
        height: 95 * Theme.u
        text: qsTr("Earlier sets")
        note: qsTr("page %1 of %2").arg(page.keys.page + 1).arg(page.keys.pages)
        textSize: 34
        onActed: page.keys.turn()
    }
}
