// SPDX-License-Identifier: GPL-3.0-or-later
// The chevrons of a ring changeover: bright ahead of the hand, thin behind. Once a second all step on by one.
// Each gap is an item of its own, so that a step repaints the ring and not what it encloses.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: ring
    required property WallView view
    property real behind: 0 // degrees still to go of the present step
    /// In parts of 0.9 degrees, 20 a second: more frames show nothing more and cost three times as much.
    readonly property real shown: Math.round(behind / 0.9) * 0.9

    Repeater {
        model: ring.view.chevronsSmall.length // always there: made in the first frame of a changeover they would delay it
        Item {
            id: gap
            required property int index
            x: 960
            y: 624
            rotation: -ring.shown
            Strokes {
                x: -960
                y: -624
                lines: ring.view.chevronsBehind[gap.index] ?? []
                stroke: 5
                colour: Theme.line
            }
            Strokes {
                x: -960
                y: -624
                lines: ring.view.chevronsAhead[gap.index] ?? []
                stroke: 8
                colour: ring.view.held ? Theme.heldColour : Theme.go
            }
        }
    }
    NumberAnimation {
        id: step
        target: ring
        property: "behind"
        from: 5.4
        to: 0
        duration: Theme.chevron
    }
    Connections {
        target: ring.view
        function onChevronsStepped(): void {
            step.restart();
        }
    }
}
