// SPDX-License-Identifier: GPL-3.0-or-later
// Three trends, each a line over its visits: what one repetition might be, estimated from the sets done by
// Wathan's equation.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: list
    required property TouchWeek week
    readonly property real pitch: 74
    readonly property rect box: Qt.rect(356, 8, 170, 46) // of a line within its row

    CapText {
        id: head
        base: 34
        cap: 33
        text: qsTr("Trends")
    }
    TouchNote {
        anchors.left: head.right
        anchors.leftMargin: 18 * Theme.u
        anchors.baseline: head.baseline
        size: 25
        color: Theme.pmute
        text: qsTr("one repetition, estimated (Wathan)")
    }
    Repeater {
        model: list.week.trends
        Item {
            id: row
            required property int index
            required property string name
            required property string said
            required property var points
            readonly property var drawn: points.map(p => Qt.point((list.box.x + p.x * list.box.width) * Theme.u, (list.box.y + p.y * list.box.height) * Theme.u))
            y: (50 + index * list.pitch) * Theme.u
            width: list.width
            TouchNote {
                size: 26
                font.bold: true
                text: row.name
            }
            TouchNote {
                y: 33 * Theme.u
                size: 25
                color: Theme.pmute
                text: row.said
            }
            Strokes {
                lines: [row.drawn]
                stroke: 4 * Theme.u
                colour: Theme.active
            }
            Repeater {
                model: row.drawn
                Rectangle {
                    required property point modelData
                    x: modelData.x - width / 2
                    y: modelData.y - width / 2
                    width: 11 * Theme.u
                    height: width
                    radius: width / 2
                    color: Theme.ink
                }
            }
        }
    }
    TouchNote {
        visible: list.week.trends.count === 0
        y: 58 * Theme.u
        width: list.width
        size: 29
        color: Theme.pmute
        text: qsTr("A line needs two visits with one exercise.")
    }
}
