// SPDX-License-Identifier: GPL-3.0-or-later
// No load is planned for this person here: the loads that stand at the station, the lightest first.
import QtQuick
import Floorwheel

Item {
    id: choice
    required property TouchVisit visit
    readonly property TouchCard card: visit.card
    TouchNote {
        y: -52 * Theme.u
        size: 36
        font.bold: true
        text: qsTr("Which load did you use? The lightest stands first.")
    }
    KeyGrid {
        keys: choice.card.loads
        columns: 5
        cellWidth: 207
        cellHeight: 95
        onPicked: hg => choice.card.chooseLoad(hg)
    }
    Key {
        visible: choice.card.loads.pages > 1
        x: 897 * Theme.u
        y: 448 * Theme.u
        width: 206 * Theme.u
        height: 95 * Theme.u
        text: qsTr("More loads")
        textSize: 34
        onActed: choice.card.loads.turn()
    }
}
