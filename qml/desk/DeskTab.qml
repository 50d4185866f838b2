// SPDX-License-Identifier: GPL-3.0-or-later
// One tab of the header: the chosen one lies on paper like its page.
import QtQuick
import Floorwheel

Item {
    id: tab
    property string text
    property string cap
    property bool chosen: false
    signal acted()
    width: row.implicitWidth + 28 * Theme.u
    height: parent ? parent.height : 0

    activeFocusOnTab: true
    Accessible.role: Accessible.PageTab
    Accessible.name: text
    Accessible.focusable: true
    Accessible.selectable: true
    Accessible.selected: chosen
    Accessible.onPressAction: tab.acted()
    Keys.onReturnPressed: tab.acted()
    Keys.onSpacePressed: tab.acted()

    Rectangle {
        anchors.fill: parent
        color: tab.chosen || area.pressed ? Theme.paper : Theme.ink
    }
    Rectangle {
        anchors.fill: parent
        anchors.margins: 4 * Theme.u
        visible: tab.activeFocus
        color: "transparent"
        border.width: Math.max(2, Math.round(3 * Theme.u))
        border.color: tab.chosen ? Theme.active : Theme.paper
    }
    Row {
        id: row
        anchors.centerIn: parent
        spacing: 16 * Theme.u
        DeskText {
            anchors.verticalCenter: parent.verticalCenter
            size: Theme.desk.head
            font.bold: true
            text: tab.text
            color: tab.chosen || area.pressed ? Theme.ink : Theme.paper
        }
        KeyCap {
            anchors.verticalCenter: parent.verticalCenter
            text: tab.cap
        }
    }
    MouseArea {
        id: area
        anchors.fill: parent
        onClicked: tab.acted()
    }
    Shortcut {
        sequence: tab.cap
        onActivated: tab.acted()
    }
}
