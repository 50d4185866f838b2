// SPDX-License-Identifier: GPL-3.0-or-later
// What else can be said of a set: not done, it hurts, or another set is meant; and the way to the own week. In two
// rows beside the plan, in one row below the choice of a load.
import QtQuick
import Floorwheel

Item {
    id: side
    required property TouchVisit visit
    readonly property bool oneRow: visit.card.loadAsked

    Key {
        visible: side.visit.card.hasSet
        width: 334 * Theme.u
        height: 89 * Theme.u
        fill: Theme.paper
        text: qsTr("Did not do this set")
        textSize: 34
        onActed: side.visit.didNot()
    }
    Key {
        x: (side.oneRow ? 351 : 0) * Theme.u
        y: (side.oneRow ? 0 : 106) * Theme.u
        width: 282 * Theme.u
        height: 89 * Theme.u
        fill: Theme.paper
        text: qsTr("Something hurts")
        textSize: 34
        onActed: side.visit.askWhere()
    }
    Key {
        visible: side.visit.card.others.count > 0
        x: (side.oneRow ? 650 : 299) * Theme.u
        y: (side.oneRow ? 0 : 106) * Theme.u
        width: 230 * Theme.u
        height: 89 * Theme.u
        fill: Theme.paper
        text: qsTr("Other sets")
        textSize: 34
        onActed: side.visit.showSets()
    }
    Key {
        visible: side.visit.hasWeek
        x: (side.oneRow ? 897 : 351) * Theme.u
        width: (side.oneRow ? 209 : 178) * Theme.u
        height: 89 * Theme.u
        fill: Theme.paper
        text: qsTr("My week")
        textSize: 34
        onActed: side.visit.showWeek()
    }
}
