// SPDX-License-Identifier: GPL-3.0-or-later
// How often members come: five lines by their mean of visits a week; twice or more is filled and below the line.
pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Shapes
import Floorwheel

Item {
    id: chart
    required property DeskReports reports
    readonly property real pitch: 58 * Theme.u

    DeskText {
        id: head
        size: Theme.desk.head - 2
        font.bold: true
        text: qsTr("How often members come")
    }
    DeskText {
        anchors.top: head.bottom
        anchors.topMargin: 4 * Theme.u
        color: Theme.pmute
        text: qsTr("all members: %1; visits a week, last 4 weeks").arg(chart.reports.memberCount)
    }
    Repeater {
        model: chart.reports.howOften
        Item {
            id: line
            required property int index
            required property string label
            required property int members
            required property real part
            required property bool often
            y: 80 * Theme.u + index * chart.pitch + (often ? 40 * Theme.u : 0)
            width: chart.width
            height: 44 * Theme.u
            DeskText {
                width: 96 * Theme.u
                horizontalAlignment: Text.AlignRight
                anchors.verticalCenter: parent.verticalCenter
                font.bold: true
                text: line.label
            }
            Rectangle {
                id: bar
                x: 112 * Theme.u
                width: Math.max(0, line.part * (chart.width - 112 * Theme.u - 60 * Theme.u))
                height: parent.height
                color: line.often ? Theme.active : Theme.card
                border.width: line.members > 0 ? 3 * Theme.u : 0
                border.color: Theme.active
            }
            DeskText {
                anchors.left: bar.right
                anchors.leftMargin: 12 * Theme.u
                anchors.verticalCenter: parent.verticalCenter
                size: 24
                font.family: Theme.narrow
                font.bold: true
                text: line.members
            }
        }
    }
    Shape {
        y: 80 * Theme.u + 3 * chart.pitch
        width: chart.width
        height: 4 * Theme.u
        ShapePath {
            strokeColor: Theme.ink
            strokeWidth: 2.5 * Theme.u
            strokeStyle: ShapePath.DashLine
            dashPattern: [4, 3]
            startX: 0
            startY: 0
            PathLine { x: chart.width; y: 0 }
        }
    }
    DeskText {
        x: 112 * Theme.u
        y: 80 * Theme.u + 3 * chart.pitch + 6 * Theme.u
        color: Theme.pmute
        text: qsTr("two days a week, as advised")
    }
    DeskText {
        y: 80 * Theme.u + 5 * chart.pitch + 48 * Theme.u
        font.bold: true
        text: qsTr("%1 of %2 come twice a week or more.").arg(chart.reports.oftenCount).arg(chart.reports.memberCount)
    }
}
