// SPDX-License-Identifier: GPL-3.0-or-later
// Where this person goes next, in words.
import QtQuick
import Floorwheel

TouchNote {
    required property TouchCard card
    text: {
        switch (card.next) {
        case "station":
            return qsTr("Next: %1, %2").arg(card.nextLetter).arg(card.nextExercise);
        case "waits":
            return qsTr("Next: W, the waiting place");
        case "nothing more":
            return qsTr("Next: nothing more in this class");
        default:
            return "";
        }
    }
}
