// SPDX-License-Identifier: GPL-3.0-or-later
// A page of keys from a list, row by row; a key stays where it is while others change beside it.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: grid
    required property TouchKeys keys
    property int columns: 2
    property real cellWidth: 300
    property real cellHeight: 95
    property string chosen
    property real size: 44
    signal picked(string key)

    /// Where the cell of an index lies.
    function cellX(index: int): real {
        return (index % columns) * (cellWidth + Theme.touch.gap) * Theme.u;
    }
    function cellY(index: int): real {
        return Math.floor(index / columns) * (cellHeight + Theme.touch.gap) * Theme.u;
    }

    Repeater {
        model: grid.keys
        Item {
            id: cell
            required property int index
            required property string key
            required property string label
            required property string letter
            required property string mark
            x: grid.cellX(index)
            y: grid.cellY(index)
            width: grid.cellWidth * Theme.u
            height: grid.cellHeight * Theme.u
            PersonKey {
                anchors.fill: parent
                label: cell.label
                letter: cell.letter
                mark: cell.mark
                size: grid.size
                strong: grid.chosen !== "" && grid.chosen === cell.key
                onActed: grid.picked(cell.key)
            }
        }
    }
}
