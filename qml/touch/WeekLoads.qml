// SPDX-License-Identifier: GPL-3.0-or-later
// The next loads, a page of three: exercise, load, and why in one sentence.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: list
    required property TouchWeek week
    readonly property real pitch: 146

    CapText {
        base: 34
        cap: 33
        text: qsTr("Next loads")
    }
    Repeater {
        model: list.week.loads
        Item {
            id: row
            required property int index
            required property string name
            required property string load
            required property string reason
            y: (54 + index * list.pitch) * Theme.u
            width: list.width
            TouchNote {
                size: 29
                font.bold: true
                text: row.name
            }
            CapText {
                base: 70
                cap: 25
                text: row.load
            }
            TouchNote {
                y: 79 * Theme.u
                width: row.width
                size: 25
                lineHeight: 0.9
                color: Theme.pmute
                text: row.reason
            }
        }
    }
    TouchNote {
        visible: list.week.loads.count === 0
        y: 58 * Theme.u
        width: list.width
        size: 29
        color: Theme.pmute
        text: qsTr("None yet. The first sets that you record make the first suggestion.")
    }
}
