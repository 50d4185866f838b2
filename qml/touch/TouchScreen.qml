// SPDX-License-Identifier: GPL-3.0-or-later
// The touch screen: so far only which class is at hand and what its clock says.
import QtQuick
import Floorwheel

Item {
    id: screen
    CapText {
        x: 40 * Theme.u
        base: 200
        cap: 71
        color: ThisScreen.inRoom ? Theme.paper : Theme.ink
        text: ClassTime.phase + " " + ClassTime.secondsLeft
    }
}
