// SPDX-License-Identifier: GPL-3.0-or-later
// The three columns of most pages: at the left the roster or what takes its place, the plait, and at the right
// what is to be read; only the right one differs by default.
import QtQuick
import Floorwheel

Item {
    id: page
    property alias side: column.data
    property bool roster: true
    anchors.fill: parent
    RosterColumn {
        anchors.fill: parent
        visible: page.roster
    }
    PlaitView { anchors.fill: parent }
    Rectangle {
        x: 977 * Theme.u
        y: 96 * Theme.u
        width: Math.max(1, 2 * Theme.u)
        height: 540 * Theme.u
        color: Theme.line
    }
    Column {
        id: column
        x: 992 * Theme.u
        y: 94 * Theme.u
        width: 270 * Theme.u
        spacing: 14 * Theme.u
    }
}
