// SPDX-License-Identifier: GPL-3.0-or-later
// At rest during and after the class: whose set? Everybody of the class stands here, so that a planned set takes
// two taps for anybody.
import QtQuick
import Floorwheel

Item {
    id: page
    required property TouchVisit visit

    TimeHeader { visit: page.visit }
    TouchNote {
        x: 40 * Theme.u
        y: 160 * Theme.u
        size: 66
        font.bold: true
        text: qsTr("Who are you?")
    }
    TouchNote {
        x: 40 * Theme.u
        y: 256 * Theme.u
        size: 36
        color: Theme.pmute
        text: {
            if (page.visit.ended)
                return qsTr("All sets of today can still be recorded and mended.");
            if (page.visit.working && page.visit.slotEnded < ClassTime.slot)
                return qsTr("Slot %1 can still be recorded, and whoever has finished slot %2.").arg(page.visit.slotEnded).arg(ClassTime.slot);
            return page.visit.working ? qsTr("Slot %1: whoever has finished.").arg(page.visit.slotEnded)
                : qsTr("Just finished slot %1, station by station").arg(page.visit.slotEnded);
        }
    }
    TouchNote {
        x: 1880 * Theme.u - width
        y: 256 * Theme.u
        size: 36
        color: Theme.pmute
        text: qsTr("A tick: this set is kept")
    }
    KeyGrid {
        id: grid
        x: 40 * Theme.u
        y: 360 * Theme.u
        keys: page.visit.people
        columns: 5
        cellWidth: 354
        cellHeight: 95
        size: 48
        onPicked: member => page.visit.openCard(member)
    }
    Key {
        visible: page.visit.people.pages > 1
        x: grid.x + grid.cellX(24)
        y: grid.y + grid.cellY(24)
        width: grid.cellWidth * Theme.u
        height: grid.cellHeight * Theme.u
        fill: Theme.paper
        text: qsTr("All others")
        textSize: 36
        onActed: page.visit.people.turn()
    }
    TouchRule {
        x: 40 * Theme.u
        y: 930 * Theme.u
        width: 1840 * Theme.u
    }
    Key {
        visible: !page.visit.ended
        x: 40 * Theme.u
        y: 956 * Theme.u
        width: 354 * Theme.u
        height: 97 * Theme.u
        fill: Theme.paper
        text: qsTr("I come late")
        textSize: 36
        onActed: page.visit.lateHere()
    }
    KeptLine {
        x: 782 * Theme.u
        y: 956 * Theme.u
        width: 1098 * Theme.u
        visit: page.visit
    }
}
