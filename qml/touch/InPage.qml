// SPDX-License-Identifier: GPL-3.0-or-later
// Checked in and answered: the first place, if the run sheet names it already.
import QtQuick
import Floorwheel

Item {
    id: page
    required property TouchVisit visit
    readonly property TouchCard card: visit.card
    readonly property bool placed: card.next === "station"

    CapText {
        x: 40 * Theme.u
        base: 132
        cap: 56
        text: qsTr("You are in, %1").arg(page.visit.alias)
    }
    ClockText {}
    TouchRule {
        x: 40 * Theme.u
        y: 190 * Theme.u
        width: 1840 * Theme.u
    }
    LetterDisc {
        visible: page.placed
        x: 40 * Theme.u
        y: 360 * Theme.u
        diameter: 240
        letter: page.card.nextLetter
    }
    TouchNote {
        x: (page.placed ? 330 : 40) * Theme.u
        y: 372 * Theme.u
        width: 1400 * Theme.u
        size: 44
        color: Theme.pmute
        text: page.placed ? (page.visit.started ? qsTr("Your next place") : qsTr("Your first place")) : qsTr("Your first place")
    }
    TouchNote {
        x: (page.placed ? 330 : 40) * Theme.u
        y: 440 * Theme.u
        width: 1500 * Theme.u
        size: 72
        font.bold: true
        text: {
            if (page.placed)
                return page.card.nextExercise;
            if (page.card.next === "waits")
                return qsTr("W, the waiting place");
            return page.visit.started ? qsTr("The instructor gives you your place.")
                : qsTr("The wall names it when the class starts.");
        }
    }
    TouchNote {
        x: 40 * Theme.u
        y: 680 * Theme.u
        width: 1500 * Theme.u
        size: 38
        color: page.visit.answerTrouble !== "" ? Theme.ink : Theme.pmute
        font.bold: page.visit.answerTrouble !== ""
        text: {
            if (page.visit.answerTrouble !== "")
                return qsTr("Your answer was not passed on. %1 Tell the instructor yourself.").arg(page.visit.answerTrouble);
            if (!page.visit.answerConfirmed && !HubLink.connected)
                return qsTr("The hub is away. You are noted here and nothing is lost; tell the instructor your answer yourself.");
            return qsTr("The instructor sees your answer.");
        }
    }
    Key {
        x: 40 * Theme.u
        y: 880 * Theme.u
        width: 912 * Theme.u
        height: 181 * Theme.u
        strong: true
        text: qsTr("Done")
        textSize: 60
        onActed: page.visit.done()
    }
    Key {
        visible: page.visit.hasWeek
        x: 969 * Theme.u
        y: 880 * Theme.u
        width: 334 * Theme.u
        height: 181 * Theme.u
        fill: Theme.paper
        text: qsTr("My week")
        textSize: 46
        onActed: page.visit.showWeek()
    }
    LeaveNote {
        x: 1880 * Theme.u - width
        y: 992 * Theme.u
        visit: page.visit
    }
}
