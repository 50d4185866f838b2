// SPDX-License-Identifier: GPL-3.0-or-later
// The last check-ins with an undo of the latest, and what the desk does not see.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Rectangle {
    id: panel
    required property DeskToday today
    radius: 10 * Theme.u
    color: Theme.card
    border.width: 2 * Theme.u
    border.color: Theme.pline

    DeskText {
        x: 20 * Theme.u
        y: 42 * Theme.u - baselineOffset
        size: Theme.desk.head
        font.bold: true
        text: qsTr("Last check-ins")
    }
    Column {
        x: 20 * Theme.u
        y: 60 * Theme.u
        width: parent.width - 40 * Theme.u
        Repeater {
            model: panel.today.last
            Item {
                required property string alias
                required property string time
                width: parent.width
                height: 36 * Theme.u
                DeskText {
                    anchors.verticalCenter: parent.verticalCenter
                    color: Theme.pmute
                    text: parent.time
                }
                DeskText {
                    x: 78 * Theme.u
                    anchors.verticalCenter: parent.verticalCenter
                    size: 24
                    font.family: Theme.narrow
                    font.bold: true
                    text: parent.alias
                }
            }
        }
    }
    DeskText {
        x: 20 * Theme.u
        y: 92 * Theme.u - baselineOffset
        visible: panel.today.last.count === 0
        color: Theme.pmute
        text: qsTr("nobody yet")
    }
    DeskKey {
        anchors.right: parent.right
        anchors.rightMargin: 20 * Theme.u
        y: 60 * Theme.u
        visible: panel.today.last.count > 0
        enabled: visible && panel.today.canSeat
        text: qsTr("Undo the latest")
        cap: "Z"
        onActed: panel.today.undo(panel.today.last.keyAt(0))
    }
    DeskText {
        x: 20 * Theme.u
        anchors.bottom: parent.bottom
        anchors.bottomMargin: 20 * Theme.u
        width: parent.width - 40 * Theme.u
        wrapMode: Text.Wrap
        color: Theme.pmute
        text: qsTr("Answers about today, pairs and what is left out go to the instructor alone. The desk does not see them, nor does the wall.")
    }
}
