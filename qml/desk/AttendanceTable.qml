// SPDX-License-Identifier: GPL-3.0-or-later
// Attendance by class: date, class, who was expected, who was here. A class counts once it has been closed.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: table
    property alias model: list.model
    readonly property real nameAt: 132 * Theme.u
    readonly property real expectedAt: width - 90 * Theme.u
    readonly property real hereAt: width

    DeskText {
        id: head
        size: Theme.desk.head - 2
        font.bold: true
        text: qsTr("Attendance by class")
    }
    DeskText {
        y: 74 * Theme.u - baselineOffset
        color: Theme.pmute
        size: Theme.desk.note
        text: qsTr("date")
    }
    DeskText {
        x: table.nameAt
        y: 74 * Theme.u - baselineOffset
        color: Theme.pmute
        size: Theme.desk.note
        text: qsTr("class")
    }
    DeskText {
        x: table.expectedAt - width
        y: 74 * Theme.u - baselineOffset
        color: Theme.pmute
        size: Theme.desk.note
        text: qsTr("expected")
    }
    DeskText {
        x: table.hereAt - width
        y: 74 * Theme.u - baselineOffset
        color: Theme.pmute
        size: Theme.desk.note
        text: qsTr("here")
    }
    DeskText {
        y: 118 * Theme.u - baselineOffset
        visible: list.count === 0
        color: Theme.pmute
        text: qsTr("no class has been closed yet")
    }
    ListView {
        id: list
        readonly property real rowHeight: 42 * Theme.u
        y: 84 * Theme.u
        width: parent.width
        height: parent.height - y
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds
        delegate: Item {
            id: row
            required property string date
            required property string name
            required property int expected
            required property int here
            width: list.width
            height: Math.max(list.rowHeight, nameText.implicitHeight + 12 * Theme.u)
            DeskText {
                anchors.verticalCenter: parent.verticalCenter
                text: Date.fromLocaleString(Qt.locale("C"), row.date, "yyyy-MM-dd").toLocaleDateString(Qt.locale(), "d MMM yyyy")
            }
            DeskText {
                id: nameText
                x: table.nameAt
                width: table.expectedAt - x - 80 * Theme.u
                anchors.verticalCenter: parent.verticalCenter
                font.bold: true
                wrapMode: Text.Wrap
                text: row.name
            }
            DeskText {
                x: table.expectedAt - width
                anchors.verticalCenter: parent.verticalCenter
                text: row.expected
            }
            DeskText {
                x: table.hereAt - width
                anchors.verticalCenter: parent.verticalCenter
                font.bold: true
                text: row.here
            }
            Rectangle {
                anchors.bottom: parent.bottom
                width: parent.width
                height: Math.max(1, Math.round(1.5 * Theme.u))
                color: Theme.shade
            }
        }
    }
}
