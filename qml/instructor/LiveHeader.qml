// SPDX-License-Identifier: GPL-3.0-or-later
// The head of the page while a class runs: state and seconds, slot and lap, the time strip, who is in step.
import QtQuick
import Floorwheel

Item {
    id: head
    readonly property bool still: ClassTime.held
    Rectangle {
        visible: head.still
        x: 12 * Theme.u
        y: 12 * Theme.u
        width: word.width + 24 * Theme.u
        height: 60 * Theme.u
        color: Theme.heldColour
    }
    Said {
        id: word
        leftAt: head.still ? 24 : 20
        base: 58
        size: 51
        text: Instructor.run.state
        color: head.still ? Theme.ink : Theme.paper
        font.family: Theme.narrow
        font.bold: true
    }
    Said {
        id: seconds
        x: word.x + word.width + 26 * Theme.u
        base: 58
        size: 51
        text: ClassTime.phase === "past-end" ? "" : ClassTime.secondsLeft
        font.family: Theme.narrow
        font.bold: true
    }
    // Beside the state, wherever a long word ends.
    Item {
        id: where
        x: Math.max(216 * Theme.u, seconds.x + seconds.width + 26 * Theme.u)
        width: Math.max(place.width, sheet.width)
        Said { id: place; base: 36; size: 21; font.bold: true; text: Instructor.run.place }
        Said { id: sheet; base: 63; size: 19; color: Theme.mute; text: Instructor.run.sheet }
    }
    TimeStrip {
        x: Math.max(470 * Theme.u, where.x + where.width + 24 * Theme.u)
        y: 16 * Theme.u
        width: 866 * Theme.u - x
        height: 46 * Theme.u
        visible: width > 150 * Theme.u
    }
    Said { rightAt: 1260; base: 36; size: 21; font.bold: true; text: Instructor.flow.screensText }
    Said { rightAt: 1260; base: 63; size: 19; color: Theme.mute; text: Instructor.flow.screensNote }
}
