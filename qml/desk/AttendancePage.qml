// SPDX-License-Identifier: GPL-3.0-or-later
// Attendance and frequency: visits by ISO week, attendance by class, how often members come, visits by member.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

FocusScope {
    id: page

    DeskReports { id: reports }

    DeskText {
        id: title
        x: 28 * Theme.u
        y: 50 * Theme.u - baselineOffset
        size: Theme.desk.title
        font.bold: true
        text: qsTr("Attendance and frequency")
    }
    DeskText {
        anchors.right: range.left
        anchors.rightMargin: 20 * Theme.u
        anchors.baseline: title.baseline
        color: Theme.pmute
        text: reports.rangeText
    }
    DeskKey {
        id: range
        x: 1184 * Theme.u - width
        y: 18 * Theme.u
        text: reports.weekCount === 12 ? qsTr("Last 4 weeks") : qsTr("12 weeks")
        cap: "W"
        onActed: reports.otherRange()
    }
    DeskText {
        id: barsHead
        x: 28 * Theme.u
        y: 111 * Theme.u - baselineOffset
        size: Theme.desk.head - 2
        font.bold: true
        text: qsTr("Visits by ISO week")
    }
    DeskText {
        anchors.left: barsHead.right
        anchors.leftMargin: 16 * Theme.u
        anchors.baseline: barsHead.baseline
        color: Theme.pmute
        text: reports.weeks.length > 0 ? qsTr("Members' visits; week %1 is not over.").arg(reports.weeks[reports.weeks.length - 1]) : ""
    }
    WeekBars {
        x: 28 * Theme.u
        y: 124 * Theme.u
        width: 1156 * Theme.u
        height: 230 * Theme.u
        model: reports.bars
    }
    AttendanceTable {
        x: 28 * Theme.u
        y: 386 * Theme.u
        width: 620 * Theme.u
        height: 598 * Theme.u
        model: reports.attendance
    }
    HowOften {
        x: 720 * Theme.u
        y: 386 * Theme.u
        width: 464 * Theme.u
        height: 598 * Theme.u
        reports: reports
    }
    MemberWeeks {
        x: 1228 * Theme.u
        y: 24 * Theme.u
        width: 672 * Theme.u
        height: 960 * Theme.u
        reports: reports
    }
}
