// SPDX-License-Identifier: GPL-3.0-or-later
// The front desk: today's classes with who is here, and attendance with frequency. Mouse and keys.
import QtQuick
import Floorwheel

FocusScope {
    id: screen
    property int page: 0 // 0 today, 1 attendance

    Rectangle {
        anchors.fill: parent
        color: Theme.paper
    }
    Rectangle {
        id: header
        width: parent.width
        height: 72 * Theme.u
        color: Theme.ink
        Row {
            x: 14 * Theme.u
            height: parent.height
            DeskTab {
                text: qsTr("Today")
                cap: "1"
                chosen: screen.page === 0
                onActed: screen.page = 0
            }
            DeskTab {
                text: qsTr("Attendance")
                cap: "2"
                chosen: screen.page === 1
                onActed: screen.page = 1
            }
        }
        DeskText {
            anchors.right: parent.right
            anchors.rightMargin: 28 * Theme.u
            anchors.verticalCenter: parent.verticalCenter
            size: Theme.desk.head
            color: Theme.paper
            font.family: Theme.narrow
            font.bold: true
            text: ClassTime.clockText
        }
    }
    TodayPage {
        y: header.height
        width: parent.width
        height: parent.height - header.height
        visible: screen.page === 0
        enabled: visible
        focus: visible
    }
    AttendancePage {
        y: header.height
        width: parent.width
        height: parent.height - header.height
        visible: screen.page === 1
        enabled: visible
        focus: visible
    }
}
