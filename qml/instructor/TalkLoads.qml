// SPDX-License-Identifier: GPL-3.0-or-later
// Three exercises as they went: the first and the last load in words, each visit a dot beside them.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Column {
    id: loads
    spacing: 8 * Theme.u
    Sentences {
        width: parent.width
        size: 20
        title: qsTr("Loads of twelve weeks")
        lines: Instructor.talk.ready && Instructor.talk.loads.count === 0 ? [qsTr("Two visits with one exercise are needed.")] : []
    }
    Repeater {
        model: Instructor.talk.loads
        Item {
            id: row
            required property string name
            required property string from
            required property string to
            required property string trend
            required property list<real> points
            width: loads.width
            height: 102 * Theme.u
            Accessible.role: Accessible.StaticText
            Accessible.name: qsTr("%1: %2, %3; %4").arg(name).arg(from).arg(to).arg(trend)
            Said { base: 20; size: 20; font.bold: true; text: row.name }
            Said { base: 45; size: 19; text: row.from }
            Said { base: 69; size: 19; text: row.to }
            Said { base: 93; size: 18; color: Theme.mute; text: row.trend }
            Item {
                objectName: "dots"
                x: 264 * Theme.u
                y: 30 * Theme.u
                width: 132 * Theme.u
                height: 42 * Theme.u
                Rectangle { y: parent.height; width: parent.width; height: Math.max(1, 2 * Theme.u); color: Theme.line }
                Repeater {
                    model: row.points.length / 2
                    Rectangle {
                        required property int index
                        readonly property real size: 8 * Theme.u
                        x: row.points[2 * index] * (132 * Theme.u - size)
                        y: (1 - row.points[2 * index + 1]) * (36 * Theme.u - size)
                        width: size
                        height: size
                        radius: size / 2
                        color: Theme.paper
                    }
                }
            }
        }
    }
}
