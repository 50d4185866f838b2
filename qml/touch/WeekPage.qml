// SPDX-License-Identifier: GPL-3.0-or-later
// 'My week': the dose ring, next loads and trends of one member who has asked for them; else how to ask.
import QtQuick
import Floorwheel

Item {
    id: page
    required property TouchVisit visit
    readonly property TouchWeek week: visit.week
    readonly property bool numbers: week.state === "shown"

    CapText {
        x: 40 * Theme.u
        base: 86
        cap: 50
        text: page.week.alias
    }
    TouchNote {
        x: 40 * Theme.u
        y: 100 * Theme.u
        size: 31
        color: Theme.pmute
        text: page.numbers ? qsTr("My week, ISO week %1").arg(page.week.week) : qsTr("My week")
    }
    LeaveNote {
        x: 1880 * Theme.u - width
        y: 100 * Theme.u
        size: 31
        visit: page.visit
    }
    TouchRule {
        x: 40 * Theme.u
        y: 146 * Theme.u
        width: 1840 * Theme.u
    }

    Item {
        visible: page.numbers
        CapText {
            id: head
            x: 40 * Theme.u
            base: 192
            cap: 33
            text: qsTr("Dose ring")
        }
        TouchNote {
            anchors.left: head.right
            anchors.leftMargin: 24 * Theme.u
            anchors.baseline: head.baseline
            size: 27
            color: Theme.pmute
            text: qsTr("working sets since Monday, by muscle group")
        }
        WeekRing { week: page.week }
        TouchNote {
            x: 40 * Theme.u
            y: 900 * Theme.u
            size: 25
            color: Theme.pmute
            text: qsTr("From the inside: under 3, 3 to 9, 10 to 15, over 15 sets. A set counts for each group it aims at.")
        }
        Rectangle {
            x: 1308 * Theme.u
            y: 164 * Theme.u
            width: 3 * Theme.u
            height: 770 * Theme.u
            color: Theme.pline
        }
        WeekLoads {
            x: 1340 * Theme.u
            y: 156 * Theme.u
            width: 540 * Theme.u
            week: page.week
        }
        WeekTrends {
            x: 1340 * Theme.u
            y: 658 * Theme.u
            width: 540 * Theme.u
            week: page.week
        }
    }
    WeekOff {
        visible: !page.numbers
        x: 40 * Theme.u
        y: 380 * Theme.u
        width: 1500 * Theme.u
        week: page.week
    }
    TouchNote {
        x: 40 * Theme.u
        y: 931 * Theme.u
        width: 1840 * Theme.u
        size: 25
        font.bold: page.week.trouble !== "" && page.numbers
        text: page.week.trouble !== "" && page.numbers ? qsTr("Still shown: %1").arg(page.week.trouble)
            : qsTr("Not medical advice: stop on pain, ask the instructor, follow the advice of a licensed professional.")
    }

    Key {
        visible: page.numbers
        x: 40 * Theme.u
        y: 978 * Theme.u
        width: 560 * Theme.u
        height: 90 * Theme.u
        fill: Theme.paper
        text: qsTr("Do not show my numbers here")
        textSize: 34
        onActed: page.week.dontShow()
    }
    Key {
        visible: page.numbers && page.week.pages > 1
        x: 617 * Theme.u
        y: 978 * Theme.u
        width: 320 * Theme.u
        height: 90 * Theme.u
        text: qsTr("Other loads")
        note: qsTr("page %1 of %2").arg(page.week.page + 1).arg(page.week.pages)
        textSize: 32
        onActed: page.week.turn()
    }
    Key {
        x: 954 * Theme.u
        y: 978 * Theme.u
        width: 340 * Theme.u
        height: 90 * Theme.u
        fill: Theme.paper
        text: qsTr("Back")
        textSize: 38
        onActed: page.visit.back()
    }
    Key {
        x: 1340 * Theme.u
        y: 978 * Theme.u
        width: 540 * Theme.u
        height: 90 * Theme.u
        strong: true
        text: qsTr("Done")
        textSize: 46
        onActed: page.visit.done()
    }
}
