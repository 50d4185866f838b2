// SPDX-License-Identifier: GPL-3.0-or-later
// No class is open: nothing can be done here, and who opens one.
import QtQuick
import Floorwheel

Item {
    required property TouchVisit visit
    ClockText {}
    CapText {
        x: 40 * Theme.u
        base: 132
        cap: 56
        text: qsTr("No class is open")
    }
    TouchNote {
        x: 40 * Theme.u
        y: 190 * Theme.u
        width: 1500 * Theme.u
        size: 38
        color: Theme.pmute
        text: qsTr("Check-in opens here as soon as the instructor chooses a class.")
    }
    OnItsOwn {
        x: 40 * Theme.u
        y: 270 * Theme.u
        font.pixelSize: Math.round(34 * Theme.u)
    }
}
