// SPDX-License-Identifier: GPL-3.0-or-later
// At rest before the class: who is in, and two ways to find yourself. During the class: for those who come late.
import QtQuick
import Floorwheel

Item {
    id: page
    required property TouchVisit visit
    readonly property TouchCheckIn info: visit.checkIn
    readonly property real keysTop: 446
    readonly property real row: 107
    readonly property real pitch: row + Theme.touch.gap

    SeatRing {
        x: 51 * Theme.u
        y: 38 * Theme.u
        here: page.info.here
        expected: page.info.expected
    }
    CapText {
        x: 391 * Theme.u
        base: 132
        cap: 58
        text: page.info.className
    }
    TouchNote {
        x: 391 * Theme.u
        y: 168 * Theme.u
        size: 38
        color: Theme.pmute
        readonly property string stations: page.info.stations === 1 ? qsTr("one station") : qsTr("%1 stations").arg(page.info.stations)
        text: page.info.times === "" ? stations : qsTr("%1 · %2").arg(page.info.times).arg(stations)
    }
    TouchNote {
        x: 391 * Theme.u
        y: 248 * Theme.u
        size: 40
        text: {
            if (page.visit.started)
                return qsTr("The class has begun. The instructor gives you your first place.");
            if (page.info.minutesToStart === 1)
                return qsTr("Starts in one minute.");
            if (page.info.minutesToStart >= 0 && page.info.minutesToStart <= 90)
                return qsTr("Starts in %1 minutes.").arg(page.info.minutesToStart);
            return qsTr("Check in; the instructor starts the class.");
        }
    }
    ClockText {}
    OnItsOwn {
        x: 1880 * Theme.u - width
        y: 176 * Theme.u
        font.pixelSize: Math.round(30 * Theme.u)
    }
    TouchRule {
        x: 40 * Theme.u
        y: 350 * Theme.u
        width: 1840 * Theme.u
    }

    TouchNote {
        x: 40 * Theme.u
        y: 374 * Theme.u
        size: 42
        font.bold: true
        text: page.info.prefix === "" ? qsTr("1 The first letters of your name") : qsTr("1 Your name begins with %1").arg(page.info.prefix)
    }
    LetterKeys {
        x: 40 * Theme.u
        y: page.keysTop * Theme.u
        rowHeight: page.row
        live: page.info.liveLetters
        canGoBack: page.info.prefix !== ""
        onTyped: letter => page.info.type(letter)
        onBack: page.info.back()
    }
    Key {
        x: 40 * Theme.u
        y: (page.keysTop + 4 * page.pitch) * Theme.u
        width: 400 * Theme.u
        height: page.row * Theme.u
        strong: true
        text: qsTr("I am new here")
        textSize: 40
        onActed: page.visit.newHere()
    }
    Key {
        visible: page.visit.page === "arrive" && page.visit.started && page.visit.stage === "record"
        x: 457 * Theme.u
        y: (page.keysTop + 4 * page.pitch) * Theme.u
        width: 539 * Theme.u
        height: page.row * Theme.u
        fill: Theme.paper
        text: qsTr("Back to recording")
        textSize: 34
        onActed: page.visit.done()
    }
    KeptLine {
        visible: shown && page.visit.stage === "check-in"
        x: 457 * Theme.u
        y: (page.keysTop + 4 * page.pitch + 5) * Theme.u
        width: 539 * Theme.u
        keyWidth: 200
        visit: page.visit
    }

    TouchNote {
        x: 1060 * Theme.u
        y: 374 * Theme.u
        size: 42
        font.bold: true
        text: qsTr("2 or tap your alias")
    }
    TouchNote {
        x: 1880 * Theme.u - width
        y: 386 * Theme.u
        size: 30
        color: Theme.pmute
        text: qsTr("as the wall shows it")
    }
    KeyGrid {
        x: 1060 * Theme.u
        y: page.keysTop * Theme.u
        keys: page.info.arrivals
        columns: 2
        cellWidth: 401
        cellHeight: page.row
        onPicked: member => page.visit.arrive(member)
    }
    TouchNote {
        visible: page.info.arrivals.count === 0
        x: 1060 * Theme.u
        y: (page.keysTop + 20) * Theme.u
        width: 820 * Theme.u
        size: 38
        color: Theme.pmute
        text: page.info.prefix === "" ? qsTr("Everybody expected is in.") : qsTr("Nobody expected is called so.")
    }
    Key {
        x: 1060 * Theme.u
        y: (page.keysTop + 4 * page.pitch) * Theme.u
        width: 819 * Theme.u
        height: page.row * Theme.u
        fill: Theme.paper
        text: qsTr("Show everybody expected")
        textSize: 38
        onActed: page.visit.showEverybody()
    }
}
