// SPDX-License-Identifier: GPL-3.0-or-later
// After 'Something hurts': stop, and to the instructor. No cause is named and no advice given.
import QtQuick
import Floorwheel

Item {
    id: page
    required property TouchVisit visit

    CapText {
        x: 40 * Theme.u
        base: 150
        cap: 72
        text: qsTr("Stop, and go to the instructor")
    }
    ClockText { base: 100 }
    TouchRule {
        x: 40 * Theme.u
        y: 200 * Theme.u
        width: 1840 * Theme.u
    }
    TouchNote {
        x: 40 * Theme.u
        y: 240 * Theme.u
        width: 1840 * Theme.u
        size: 46
        font.bold: true
        text: {
            if (page.visit.answerTrouble !== "")
                return qsTr("Nobody has been told. %1 Tell the instructor yourself, %2.").arg(page.visit.answerTrouble).arg(page.visit.alias);
            if (page.visit.answerConfirmed)
                return qsTr("The instructor’s screen says so now, %1; no other screen does.").arg(page.visit.alias);
            return HubLink.connected ? qsTr("It is being passed on, %1.").arg(page.visit.alias)
                : qsTr("The hub is away and nobody has been told yet. Tell the instructor yourself, %1.").arg(page.visit.alias);
        }
    }
    Column {
        x: 40 * Theme.u
        y: 400 * Theme.u
        width: 1840 * Theme.u
        spacing: 34 * Theme.u
        Repeater {
            model: [
                qsTr("Pain, dizziness or a doubt stops the work. Do not test whether it goes away."),
                qsTr("The instructor decides with you whether and how you go on. This screen names no cause and gives no medical advice; for that there is licensed practice."),
                qsTr("Pain in the chest, trouble to breathe, feeling faint: say so loudly at once. The emergency arrangements of this place hold.")
            ]
            TouchNote {
                required property string modelData
                width: 1840 * Theme.u
                size: 44
                text: modelData
            }
        }
    }
    Key {
        x: 40 * Theme.u
        y: 900 * Theme.u
        width: 912 * Theme.u
        height: 161 * Theme.u
        strong: true
        text: qsTr("I go to the instructor")
        textSize: 52
        onActed: page.visit.done()
    }
    Key {
        x: 969 * Theme.u
        y: 900 * Theme.u
        width: 354 * Theme.u
        height: 161 * Theme.u
        fill: Theme.paper
        text: qsTr("Another spot")
        textSize: 38
        onActed: page.visit.askWhere()
    }
    LeaveNote {
        x: 1880 * Theme.u - width
        y: 992 * Theme.u
        visit: page.visit
    }
}
