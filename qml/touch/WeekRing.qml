// SPDX-License-Identifier: GPL-3.0-or-later
// The dose ring of this week: everything where touch_ring says, each sector with its word and number.
pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Shapes
import Floorwheel

Item {
    id: ring
    required property TouchWeek week
    readonly property real pitch: week.rowHeight
    readonly property point centre: Qt.point(640, 552)

    Repeater {
        model: ring.week.sectors
        Item {
            id: group
            required property real from
            required property real sweep
            required property int band
            required property string word
            required property string said
            required property bool atRight
            required property real rowY
            required property real x1
            required property real y1
            required property real x2
            required property real y2
            readonly property real wordSize: Math.min(32, 0.42 * ring.pitch)
            readonly property real saidSize: Math.min(26, 0.36 * ring.pitch)
            Accessible.role: Accessible.StaticText
            Accessible.name: word + ": " + said

            WeekSector {
                x: (ring.centre.x - outer) * Theme.u
                y: (ring.centre.y - outer) * Theme.u
                from: group.from
                sweep: group.sweep
                band: group.band
            }
            Shape { // from the words to the sector
                ShapePath {
                    strokeColor: Theme.pmute
                    strokeWidth: 2 * Theme.u
                    fillColor: "transparent"
                    startX: group.x1 * Theme.u
                    startY: group.y1 * Theme.u
                    PathLine {
                        x: group.x2 * Theme.u
                        y: group.y2 * Theme.u
                    }
                }
            }
            Rectangle {
                x: (group.x1 - 1.5) * Theme.u
                y: (group.rowY - ring.pitch / 2 + 5) * Theme.u
                width: 3 * Theme.u
                height: (ring.pitch - 10) * Theme.u
                color: Theme.pmute
            }
            TouchNote {
                id: wordText
                x: (group.atRight ? group.x1 + 14 : group.x1 - 14) * Theme.u - (group.atRight ? 0 : width)
                y: group.rowY * Theme.u - (height + saidText.height) / 2
                size: group.wordSize
                font.bold: true
                text: group.word
            }
            TouchNote {
                id: saidText
                x: (group.atRight ? group.x1 + 14 : group.x1 - 14) * Theme.u - (group.atRight ? 0 : width)
                anchors.top: wordText.bottom
                size: group.saidSize
                color: Theme.pmute
                text: group.said
            }
        }
    }
    CapText {
        x: ring.centre.x * Theme.u - width / 2
        base: ring.centre.y + 4
        cap: 62
        text: ring.week.workingSets
    }
    TouchNote {
        x: ring.centre.x * Theme.u - width / 2
        y: (ring.centre.y + 26) * Theme.u
        size: 27
        color: Theme.pmute
        text: ring.week.workingSets === 1 ? qsTr("working set") : qsTr("working sets")
    }
}
