// SPDX-License-Identifier: GPL-3.0-or-later
// The question about today. One answer is enough; it goes to the instructor alone.
import QtQuick
import Floorwheel

Item {
    id: page
    required property TouchVisit visit

    LetterDisc {
        x: 40 * Theme.u
        y: 58 * Theme.u
        diameter: 104
        cap: 46
        letter: page.visit.checkIn.here
    }
    CapText {
        x: 176 * Theme.u
        base: 100
        cap: 48
        text: qsTr("You are in, %1").arg(page.visit.alias)
    }
    TouchNote {
        x: 176 * Theme.u
        y: 118 * Theme.u
        size: 36
        color: Theme.pmute
        text: page.visit.checkIn.times === "" ? page.visit.checkIn.className
            : qsTr("%1, %2").arg(page.visit.checkIn.className).arg(page.visit.checkIn.times)
    }
    ClockText { base: 100 }
    TouchRule {
        x: 40 * Theme.u
        y: 195 * Theme.u
        width: 1840 * Theme.u
    }
    TouchNote {
        x: 40 * Theme.u
        y: 212 * Theme.u
        size: 66
        font.bold: true
        text: qsTr("How is it today?")
    }
    TouchNote {
        x: 40 * Theme.u
        y: 300 * Theme.u
        size: 34
        color: Theme.pmute
        text: qsTr("One answer. Only the instructor sees it, and decides; neither the wall nor the desk shows it.")
    }

    AnswerKey {
        x: 40 * Theme.u
        y: 372 * Theme.u
        title: qsTr("Fine")
        line: qsTr("Stations and loads as planned.")
        onActed: page.visit.answer("fine")
    }
    AnswerKey {
        x: 969 * Theme.u
        y: 372 * Theme.u
        title: qsTr("Take it easy")
        line: qsTr("No higher loads today, and two more in reserve than planned.")
        onActed: page.visit.answer("take_it_easy")
    }
    AnswerKey {
        x: 40 * Theme.u
        y: 609 * Theme.u
        title: qsTr("Something hurts")
        line: qsTr("You show where. Stations that load it are changed or left out today.")
        onActed: page.visit.askWhere()
    }
    AnswerKey {
        x: 969 * Theme.u
        y: 609 * Theme.u
        title: qsTr("I’d rather tell the instructor")
        line: qsTr("Nothing about it is kept here. The instructor sees only that you want a word first.")
        onActed: page.visit.answer("wants_a_word")
    }

    TouchNote {
        x: 40 * Theme.u
        y: 852 * Theme.u
        width: 1840 * Theme.u
        size: 35
        font.bold: true
        text: qsTr("Pain in the chest, dizziness or a doubt: do not train, tell the instructor now. This screen gives no medical advice.")
    }
    TouchNote {
        x: 40 * Theme.u
        y: 906 * Theme.u
        width: 1840 * Theme.u
        size: 33
        color: Theme.pmute
        text: qsTr("Your answer is for today only. You can change it here until the class starts, and tell the instructor at any time.")
    }
    Key {
        visible: page.visit.kept.undoable
        x: 40 * Theme.u
        y: 971 * Theme.u
        width: 440 * Theme.u
        height: 90 * Theme.u
        fill: Theme.paper
        text: qsTr("I am not %1").arg(page.visit.alias)
        textSize: 34
        onActed: page.visit.notMe()
    }
    LeaveNote {
        x: 1880 * Theme.u - width
        y: 992 * Theme.u
        visit: page.visit
    }
}
