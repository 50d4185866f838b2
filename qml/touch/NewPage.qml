// SPDX-License-Identifier: GPL-3.0-or-later
// Somebody without a booking chooses an alias on our own keys and takes a seat.
import QtQuick
import Floorwheel

Item {
    id: page
    required property TouchVisit visit
    readonly property TouchCheckIn info: visit.checkIn
    readonly property real keysTop: 446
    readonly property real row: 107
    readonly property real pitch: row + Theme.touch.gap

    CapText {
        x: 40 * Theme.u
        base: 110
        cap: 50
        text: qsTr("I am new here")
    }
    TouchNote {
        x: 40 * Theme.u
        y: 138 * Theme.u
        width: 1500 * Theme.u
        size: 36
        color: Theme.pmute
        text: qsTr("Choose an alias, such as a first name and a letter. The wall shows it, so it need not be your name.")
    }
    ClockText { base: 110 }
    Rectangle {
        x: 40 * Theme.u
        y: 216 * Theme.u
        width: 1840 * Theme.u
        height: 150 * Theme.u
        radius: Theme.touch.radius * Theme.u
        color: Theme.ink
        CapText {
            x: 40 * Theme.u
            base: 110
            cap: 71
            color: Theme.paper
            text: page.info.draft === "" ? "…" : page.info.draft
        }
        TouchNote {
            anchors.right: parent.right
            anchors.rightMargin: 40 * Theme.u
            anchors.verticalCenter: parent.verticalCenter
            size: 30
            color: Theme.mute
            text: qsTr("as the wall shows it")
        }
    }

    LetterKeys {
        x: 40 * Theme.u
        y: page.keysTop * Theme.u
        rowHeight: page.row
        canGoBack: page.info.draft !== ""
        onTyped: letter => page.info.typeDraft(letter)
        onBack: page.info.backDraft()
    }
    Key {
        x: 40 * Theme.u
        y: (page.keysTop + 4 * page.pitch) * Theme.u
        width: 539 * Theme.u
        height: page.row * Theme.u
        text: qsTr("Space")
        textSize: 34
        onActed: page.info.typeDraft(" ")
    }
    Key {
        x: 596 * Theme.u
        y: (page.keysTop + 4 * page.pitch) * Theme.u
        width: 191 * Theme.u
        height: page.row * Theme.u
        text: "."
        name: qsTr("Full stop")
        textSize: 46
        onActed: page.info.typeDraft(".")
    }
    Key {
        x: 804 * Theme.u
        y: (page.keysTop + 4 * page.pitch) * Theme.u
        width: 192 * Theme.u
        height: page.row * Theme.u
        text: "-"
        name: qsTr("Hyphen")
        textSize: 46
        onActed: page.info.typeDraft("-")
    }

    TouchNote {
        x: 1060 * Theme.u
        y: page.keysTop * Theme.u
        width: 819 * Theme.u
        size: 38
        font.bold: page.visit.newTrouble !== ""
        text: {
            if (page.visit.newKnown !== "")
                return qsTr("Somebody who came before has this alias. Is that you?");
            if (page.visit.newTrouble !== "")
                return qsTr("That did not work. %1 Tell the instructor.").arg(page.visit.newTrouble);
            if (page.visit.newWaits)
                return qsTr("One moment …");
            switch (page.info.draftTrouble) {
            case "taken":
                return qsTr("Somebody in this class has this alias: add a letter.");
            case "wide":
                return qsTr("Too wide for the wall: about nine letters fit.");
            case "empty":
                return qsTr("You take a seat as a beginner; the instructor can change what you do. Tell the instructor what you must not do.");
            default:
                return qsTr("Good. Tell the instructor that you are here for the first time.");
            }
        }
    }
    Key {
        x: 1060 * Theme.u
        y: (page.keysTop + 2 * page.pitch) * Theme.u
        width: 819 * Theme.u
        height: (2 * page.row + Theme.touch.gap) * Theme.u
        strong: enabled
        enabled: page.info.draftTrouble === "" && !page.visit.newWaits
        text: page.visit.newKnown !== "" ? qsTr("That is me") : qsTr("Take this alias")
        textSize: 52
        onActed: page.visit.newKnown !== "" ? page.visit.thatIsMe() : page.visit.takeAlias()
    }
    Key {
        x: 1060 * Theme.u
        y: (page.keysTop + 4 * page.pitch) * Theme.u
        width: 401 * Theme.u
        height: page.row * Theme.u
        fill: Theme.paper
        text: qsTr("Leave")
        textSize: 38
        onActed: page.visit.back()
    }
    LeaveNote {
        x: 1478 * Theme.u
        y: (page.keysTop + 4 * page.pitch + 12) * Theme.u
        width: 401 * Theme.u
        size: 30
        visit: page.visit
    }
}
