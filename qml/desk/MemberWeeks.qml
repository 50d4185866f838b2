// SPDX-License-Identifier: GPL-3.0-or-later
// Visits by member and ISO week as a table: a filled disc with the number in each week that had one.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Rectangle {
    id: panel
    required property DeskReports reports
    readonly property real weeksAt: 196 * Theme.u
    readonly property real totalAt: width - 20 * Theme.u
    readonly property real pitch: reports.weeks.length > 0 ? (totalAt - 60 * Theme.u - weeksAt) / reports.weeks.length : 0
    radius: 10 * Theme.u
    color: Theme.card
    border.width: 2 * Theme.u
    border.color: Theme.pline

    DeskText {
        id: title
        x: 20 * Theme.u
        y: 42 * Theme.u - baselineOffset
        size: Theme.desk.title
        font.bold: true
        text: qsTr("Visits by member")
    }
    DeskText {
        anchors.left: title.right
        anchors.leftMargin: 24 * Theme.u
        anchors.baseline: title.baseline
        color: Theme.pmute
        text: qsTr("by ISO week")
    }
    Repeater {
        model: panel.reports.weeks
        DeskText {
            required property int index
            required property string modelData
            x: panel.weeksAt + (index + 0.5) * panel.pitch - width / 2
            y: 86 * Theme.u - baselineOffset
            size: Theme.desk.note
            font.bold: true
            text: modelData
        }
    }
    DeskText {
        x: panel.totalAt - width
        y: 86 * Theme.u - baselineOffset
        size: Theme.desk.note
        color: Theme.pmute
        text: qsTr("in all")
    }
    DeskText {
        x: 20 * Theme.u
        y: 130 * Theme.u - baselineOffset
        visible: list.count === 0
        color: Theme.pmute
        text: panel.reports.answered ? qsTr("no visits in these weeks") : qsTr("asking the hub")
    }
    ListView {
        id: list
        readonly property real rowHeight: 38 * Theme.u
        x: 20 * Theme.u
        y: 98 * Theme.u
        width: parent.width - 40 * Theme.u
        height: Math.floor((parent.height - y - 56 * Theme.u) / rowHeight) * rowHeight
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds
        model: panel.reports.memberWeeks
        delegate: Item {
            id: row
            required property string alias
            required property list<string> cells
            required property int total
            width: list.width
            height: list.rowHeight
            DeskText {
                anchors.verticalCenter: parent.verticalCenter
                size: 24
                font.family: Theme.narrow
                font.bold: true
                text: row.alias
            }
            Repeater {
                model: row.cells
                Rectangle {
                    required property int index
                    required property string modelData
                    visible: modelData !== ""
                    x: panel.weeksAt - list.x + (index + 0.5) * panel.pitch - width / 2
                    anchors.verticalCenter: parent.verticalCenter
                    width: 28 * Theme.u
                    height: width
                    radius: width / 2
                    color: Theme.active
                    DeskText {
                        anchors.centerIn: parent
                        size: Theme.desk.note
                        font.bold: true
                        color: Theme.card
                        text: parent.modelData
                    }
                }
            }
            DeskText {
                anchors.right: parent.right
                anchors.verticalCenter: parent.verticalCenter
                font.bold: true
                text: row.total
            }
            Rectangle {
                anchors.bottom: parent.bottom
                width: parent.width
                height: Math.max(1, Math.round(1.5 * Theme.u))
                color: Theme.shade
            }
        }
    }
    DeskText {
        x: 20 * Theme.u
        y: parent.height - 20 * Theme.u - height
        size: Theme.desk.note
        color: Theme.pmute
        text: qsTr("Members with a visit in these weeks, most visits first. Guests are not counted.")
    }
}
