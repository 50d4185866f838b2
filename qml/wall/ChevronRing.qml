// SPDX-License-Identifier: GPL-3.0-or-later
// The chevrons of a ring changeover: bright ahead of the hand, thin behind. Once a second all step on by one.
import QtQuick
import Floorwheel

Item {
    id: ring
    required property WallView view

    Item {
        id: turned
        x: 960
        y: 624
        Strokes {
            x: -960
            y: -624
            lines: ring.view.chevronsBehind
            stroke: 5
            colour: Theme.line
        }
        Strokes {
            x: -960
            y: -624
            lines: ring.view.chevronsAhead
            stroke: 8
            colour: ring.view.held ? Theme.heldColour : Theme.go
        }
    }
    NumberAnimation {
        id: step
        target: turned
        property: "rotation"
        from: -5.4
        to: 0
        duration: Theme.chevron
    }
    Connections {
        target: ring.view
        function onChevronsStepped(): void {
            if (!ClassTime.calm)
                step.restart();
        }
    }
}
