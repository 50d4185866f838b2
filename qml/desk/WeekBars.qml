// SPDX-License-Identifier: GPL-3.0-or-later
// Visits by ISO week as bars: a solid one a week gone by, a dashed one for the week that is not over. The number
// stands above, so no axis is needed.
pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Shapes
import Floorwheel

Item {
    id: chart
    property alias model: bars.model
    readonly property real pitch: bars.count > 0 ? width / bars.count : 0
    readonly property real high: height - 70 * Theme.u
    readonly property real foot: height - 34 * Theme.u

    Repeater {
        id: bars
        Item {
            id: bar
            required property int index
            required property string week
            required property int visits
            required property real part
            required property bool running
            readonly property real barHeight: Math.max(visits > 0 ? 3 * Theme.u : 0, part * chart.high)
            readonly property real barWidth: Math.min(70 * Theme.u, chart.pitch * 0.72)
            x: index * chart.pitch
            width: chart.pitch
            height: chart.height
            Rectangle {
                visible: !bar.running
                anchors.horizontalCenter: parent.horizontalCenter
                y: chart.foot - height
                width: bar.barWidth
                height: bar.barHeight
                color: Theme.active
            }
            Shape {
                visible: bar.running && bar.visits > 0
                anchors.horizontalCenter: parent.horizontalCenter
                y: chart.foot - height
                width: bar.barWidth
                height: bar.barHeight
                ShapePath {
                    strokeColor: Theme.active
                    strokeWidth: 3 * Theme.u
                    strokeStyle: ShapePath.DashLine
                    dashPattern: [2, 2]
                    fillColor: Theme.card
                    startX: 1.5 * Theme.u
                    startY: bar.barHeight
                    PathLine { x: 1.5 * Theme.u; y: 1.5 * Theme.u }
                    PathLine { x: bar.barWidth - 1.5 * Theme.u; y: 1.5 * Theme.u }
                    PathLine { x: bar.barWidth - 1.5 * Theme.u; y: bar.barHeight }
                }
            }
            DeskText {
                anchors.horizontalCenter: parent.horizontalCenter
                y: chart.foot - bar.barHeight - height - 2 * Theme.u
                text: bar.visits
                size: 22
                font.family: Theme.narrow
                font.bold: true
            }
            DeskText {
                anchors.horizontalCenter: parent.horizontalCenter
                y: chart.foot + 6 * Theme.u
                text: bar.week
            }
        }
    }
    Rectangle {
        y: chart.foot
        width: parent.width
        height: 2 * Theme.u
        color: Theme.ink
    }
}
