// SPDX-License-Identifier: GPL-3.0-or-later
// One of the four answers about today: a word and what follows from it.
import QtQuick
import Floorwheel

Key {
    id: key
    property string title
    property string line
    name: title
    note: line
    width: 912 * Theme.u
    height: 220 * Theme.u
    TouchNote {
        x: 36 * Theme.u
        y: 24 * Theme.u
        size: 58
        font.bold: true
        color: key.inkNow
        text: key.title
    }
    TouchNote {
        x: 36 * Theme.u
        y: 104 * Theme.u
        width: 700 * Theme.u
        size: 35
        color: key.pressed ? key.inkNow : Theme.pmute
        text: key.line
    }
}
