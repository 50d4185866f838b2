// SPDX-License-Identifier: GPL-3.0-or-later
// Everybody expected, by alias; a tick says who is in. Tapping one who is in asks about today again.
import QtQuick
import Floorwheel

Item {
    id: page
    required property TouchVisit visit
    readonly property TouchKeys keys: visit.checkIn.everybody

    CapText {
        x: 40 * Theme.u
        base: 132
        cap: 56
        text: qsTr("Everybody expected")
    }
    TouchNote {
        x: 40 * Theme.u
        y: 172 * Theme.u
        size: 38
        color: Theme.pmute
        text: qsTr("Tap your alias. A tick: is in.")
    }
    ClockText {}
    LeaveNote {
        x: 1880 * Theme.u - width
        y: 186 * Theme.u
        visit: page.visit
    }
    TouchRule {
        x: 40 * Theme.u
        y: 270 * Theme.u
        width: 1840 * Theme.u
    }
    KeyGrid {
        x: 40 * Theme.u
        y: 360 * Theme.u
        keys: page.keys
        columns: 5
        cellWidth: 354
        cellHeight: 107
        onPicked: member => page.visit.arrive(member)
    }
    Key {
        x: 40 * Theme.u
        y: 980 * Theme.u
        width: 354 * Theme.u
        height: 90 * Theme.u
        fill: Theme.paper
        text: qsTr("Back")
        textSize: 38
        onActed: page.visit.back()
    }
    Key {
        visible: page.keys.pages > 1
        x: 1524 * Theme.u
        y: 980 * Theme.u
        width: 356 * Theme.u
        height: 90 * Theme.u
        text: qsTr("More")
        note: qsTr("page %1 of %2").arg(page.keys.page + 1).arg(page.keys.pages)
        textSize: 34
        onActed: page.keys.turn()
    }
}
