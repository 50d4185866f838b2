// SPDX-License-Identifier: GPL-3.0-or-later
// Many poly-lines of one width and colour, each list of them a shape of its own: the software renderer repaints
// a shape by its bounding box, and one round everything would repaint the whole wall at each step of the hand.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: all
    property var lists: []
    property real stroke: 4
    property color colour
    property list<real> dashes

    Repeater {
        model: all.lists.length
        Strokes {
            required property int index
            lines: all.lists[index] ?? []
            stroke: all.stroke
            colour: all.colour
            dashes: all.dashes
        }
    }
}
