// SPDX-License-Identifier: GPL-3.0-or-later
// Stop and help: nothing is asked of people at this screen, and nothing can be tapped.
import QtQuick
import Floorwheel

Item {
    required property TouchVisit visit
    Octagon {
        x: 80 * Theme.u
        y: 300 * Theme.u
        width: 420 * Theme.u
    }
    CapText {
        x: 580 * Theme.u
        base: 430
        cap: 110
        text: qsTr("Stop and help")
    }
    TouchNote {
        x: 580 * Theme.u
        y: 490 * Theme.u
        width: 1260 * Theme.u
        size: 52
        text: qsTr("Put the weights down and stay in place. Do what the instructor says, and follow the emergency arrangements of this place.")
    }
    TouchNote {
        x: 580 * Theme.u
        y: 760 * Theme.u
        width: 1260 * Theme.u
        size: 38
        color: Theme.pmute
        text: qsTr("What was recorded is kept. Recording goes on when the instructor says so.")
    }
}
