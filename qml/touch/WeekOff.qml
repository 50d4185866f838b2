// SPDX-License-Identifier: GPL-3.0-or-later
// No numbers on 'My week': not asked for, or the hub cannot say; and what to do.
import QtQuick
import Floorwheel

Item {
    id: off
    required property TouchWeek week

    TouchNote {
        width: off.width
        size: 50
        font.bold: true
        text: {
            switch (off.week.state) {
            case "asking":
                return qsTr("Asking the hub");
            case "away":
                return qsTr("The hub is away.");
            case "refused":
                return qsTr("Your week cannot be shown now.");
            default:
                return off.week.justOff ? qsTr("Your numbers are no longer shown here.") : qsTr("Your numbers are not shown here.");
            }
        }
    }
    TouchNote {
        y: 96 * Theme.u
        width: off.width
        size: 38
        color: Theme.pmute
        text: {
            switch (off.week.state) {
            case "asking":
                return "";
            case "away":
                return qsTr("Your week comes from it. Nothing you recorded is lost. Try again when it is back.");
            case "refused":
                return off.week.trouble;
            default:
                return qsTr("Everybody can stand before this screen, so it shows sets and loads of earlier visits only if you want it. If you do, ask at the desk or the instructor. You can switch it off here at any time.");
            }
        }
    }
}
